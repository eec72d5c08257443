// One reading to a new plan, without the cast of the whole mould: state in words, findings, plan. The processor's time stands beside it: on a busy machine the
// clock says more of the others.
import { example } from './example.mjs'

const engine = await import('../packages/engine/dist/src/index.js')
const given = example('saltmarsh-panel').read()
const [first] = given.piece.value.pours
const at = minute =>
  `2026-12-01T${String(9 + Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}+01:00`
const readings = Array.from({ length: 8 }, (_, k) => ({
  id: `reading-${String(k).padStart(4, '0')}`,
  at: at(10 * k),
  ...(k === 0
    ? { kind: 'mixed', pour: first.id }
    : { kind: 'temperature', pour: first.id, temperature: 22 + k / 2 })
}))

// The plan before any reading is known, as it is wherever a build is followed; each call knows one reading more than the
// one before: nothing of it was planned yet.
function worst(calls) {
  const unread = engine.plan(given, { asOf: at(0), effort: 'preview' }).work
  let ms = 0
  let cpuMs = 0
  for (let k = 1; k <= calls; k++) {
    const input = { ...given, readings: readings.slice(0, k) }
    const asOf = at(10 * k)
    const used = process.cpuUsage()
    const from = performance.now()
    const { work } = engine.plan(input, { asOf, effort: 'preview' })
    engine.stateFrom(unread, work, asOf)
    const took = performance.now() - from
    const { user, system } = process.cpuUsage(used)
    if (k === 1 && calls > 1) continue
    ms = Math.max(ms, took)
    cpuMs = Math.max(cpuMs, (user + system) / 1000)
  }
  return { ms, note: `${calls} readings, at most ${cpuMs.toFixed(0)} ms of a processor` }
}

export const variants = [
  {
    name: 'reading first',
    about: 'a reading of saltmarsh-panel to state and new plan, first in its process',
    bar: 'none',
    run: () => worst(1)
  },
  {
    name: 'reading warm',
    about: 'the same, the slowest of seven that follow',
    bar: 'under 300',
    run: () => worst(8)
  }
]
