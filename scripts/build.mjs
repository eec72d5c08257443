// Builds the packages: TypeScript to dist, then the script of the page and the command, bundled into one file each.
import { commandBundle } from '../packages/cli/bundle.mjs'
import { pageBundle } from '../packages/page/bundle.mjs'
import { tool } from './setup.mjs'

const code = tool('tsc', ['-b', 'packages/cli'])
if (code !== 0) process.exit(code)

const { build } = await import('vite')
await build(pageBundle)
await build(commandBundle)
