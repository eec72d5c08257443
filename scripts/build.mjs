// Builds the packages: TypeScript to dist, then the script of the page, the app and the command.
import { join } from 'node:path'
import { compressSite, serviceBundle, siteBundle, siteFiles } from '../packages/app/bundle.mjs'
import { commandBundle, keepCompiled } from '../packages/cli/bundle.mjs'
import { pageBundle } from '../packages/page/bundle.mjs'
import { root, tool } from './setup.mjs'

const code = tool('tsc', ['-b', 'packages/cli'])
if (code !== 0) process.exit(code)

const { build } = await import('vite')
await build(pageBundle)
await build(siteBundle)
await build(serviceBundle(siteFiles()))
compressSite()
await build(commandBundle)
keepCompiled(join(root, 'examples', 'saltmarsh-panel.piece.json'))
