// A server in a process of its own, to be killed: prints its address, then serves until then.
import { serve } from '../dist/src/index.js'

const serving = await serve({ dataDir: process.argv[2], port: 0, site: null, version: 'test' })
process.stdout.write(`${serving.url}\n`)
process.on('SIGTERM', () => void serving.close().then(() => process.exit(0)))
