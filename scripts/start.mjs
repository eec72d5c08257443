// npm start: sets up what is missing, plans an example, writes its page and says where it lies.
import { spawnSync } from 'node:child_process'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { ensureBuild, ensurePackages, root } from './setup.mjs'

ensurePackages()
console.error('building ...')
if (ensureBuild() !== 0) {
  console.error('the build failed; what it said stands above')
  process.exit(2)
}

const command = join(root, 'packages', 'cli', 'bin', 'castwright.mjs')
const piece = join(root, 'examples', 'saltmarsh-panel.piece.json')
const folder = join(root, 'out', 'saltmarsh-panel')
const done = spawnSync(process.execPath, [command, 'plan', piece, '--out', folder], { stdio: 'inherit' })
if (done.status === 2 || done.status === null) process.exit(2)

console.log(`
The page of the example, to open in a browser:
  ${pathToFileURL(join(folder, 'piece.html')).href}

A piece of your own:
  npx castwright new panel -o my-panel.piece.json
  npx castwright check my-panel.piece.json
  npx castwright plan my-panel.piece.json --out my-panel`)
