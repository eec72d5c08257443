// npm start: sets up what is missing, then opens the app with the examples and says its address.
import { spawn } from 'node:child_process'
import { join } from 'node:path'
import { ensureBuild, ensurePackages, root } from './setup.mjs'

ensurePackages()
console.error('building ...')
if (ensureBuild() !== 0) {
  console.error('the build failed; what it said stands above')
  process.exit(2)
}

const command = join(root, 'packages', 'cli', 'bin', 'castwright.mjs')
// Photos are megabytes each. glibc gives memory back to the system from one megabyte on, instead of from what it met
// last (mallopt(3), M_TRIM_THRESHOLD); other systems do not know the word.
const env = { MALLOC_TRIM_THRESHOLD_: '1048576', ...process.env }
const app = spawn(process.execPath, [command, 'serve', ...process.argv.slice(2)], { stdio: 'inherit', env })
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => app.kill(signal))
app.on('exit', code => process.exit(code ?? 1))
// npm ends its shell, and the shell does not hand it on: where what started this is gone, the app goes too.
const { ppid } = process
setInterval(() => process.ppid !== ppid && app.kill('SIGTERM'), 500).unref()
