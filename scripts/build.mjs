// Builds the packages: TypeScript to dist, then the script of the page, bundled into one text.
import { pageBundle } from '../packages/page/bundle.mjs'
import { tool } from './setup.mjs'

const code = tool('tsc', ['-b', 'packages/cli'])
if (code !== 0) process.exit(code)

const { build } = await import('vite')
await build(pageBundle)
