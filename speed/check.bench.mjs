// check of each example: the work after load, first in a process and warm, and the whole process.
import { spawnSync } from 'node:child_process'
import { join } from 'node:path'

const root = join(import.meta.dirname, '..')
const options = { asOf: '2026-11-20T09:00+01:00' }

async function work(name, calls) {
  const { check } = await import('../packages/engine/dist/src/index.js')
  const { example } = await import('./example.mjs')
  const e = example(name)
  let ms = 0
  for (let k = 0; k < calls; k++) {
    const from = performance.now()
    check(e.read(), options)
    ms = performance.now() - from
  }
  return { ms }
}

function whole(args) {
  const from = performance.now()
  const done = spawnSync(process.execPath, args, { cwd: root })
  if (done.status === 2 || done.status === null) throw new Error(String(done.stderr))
  return { ms: performance.now() - from }
}

const command = join('packages', 'cli', 'bin', 'castwright.mjs')
export const variants = [
  { name: 'node alone', about: 'a Node process that does nothing', run: () => whole(['-e', '0']) },
  ...['saltmarsh-panel', 'heron-table', 'meadow-boards'].flatMap(name => [
    {
      name: `${name} warm`,
      about: `check ${name}: work after load, twentieth in its process`,
      bar: 'under 50',
      run: () => work(name, 20)
    },
    {
      name: `${name} first`,
      about: `check ${name}: work after load, first in its process`,
      peer: `${name} warm`,
      run: () => work(name, 1)
    },
    {
      name: `${name} process`,
      about: `castwright check ${name}: whole process`,
      bar: 'under 600',
      peer: 'node alone',
      run: () => whole([command, 'check', join('examples', `${name}.piece.json`)])
    }
  ])
]
