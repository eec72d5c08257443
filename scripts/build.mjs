// Builds the packages: TypeScript to dist, then the script of the page, bundled into one text.

import { tool } from './setup.mjs'

const code = tool('tsc', ['-b', 'packages/cli'])
if (code !== 0) process.exit(code)
