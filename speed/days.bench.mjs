// The days of an example and of five pieces that share hands and machine, cast again at the starts they choose.
import { readdirSync, readFileSync } from 'node:fs'

const engine = await import('../packages/engine/dist/src/index.js')
const folder = new URL('../examples/', import.meta.url)
const text = name => readFileSync(new URL(name, folder), 'utf8')
const files = Object.fromEntries(
  readdirSync(folder)
    .filter(n => n.endsWith('.svg'))
    .map(n => [n, text(n)])
)
const shop = engine.readShop(text('workshop.shop.json'), 'shop').value
const input = name => ({
  piece: engine.readPiece(text(`${name}.piece.json`), name),
  shop,
  files,
  readings: []
})
const asOf = '2026-11-30T08:00+01:00'
const panel = input('saltmarsh-panel')
const five = ['heron-table', 'meadow-boards', 'saltmarsh-panel', 'meadow-boards', 'saltmarsh-panel'].map(
  input
)

function last(calls, work) {
  let ms = 0
  let days
  for (let k = 0; k < calls; k++) {
    const from = performance.now()
    days = work()
    ms = performance.now() - from
  }
  return { ms, note: `${days.tasks.length} tasks, cast again ${days.rounds} times` }
}

export const variants = [
  {
    name: 'days first',
    about: 'the days of saltmarsh-panel, first in its process',
    bar: 'under 1000',
    run: () => last(1, () => engine.daysOf(panel, { asOf }))
  },
  {
    name: 'days warm',
    about: 'the same, fifth in its process',
    bar: 'under 1000',
    run: () => last(5, () => engine.daysOf(panel, { asOf }))
  },
  {
    name: 'days five',
    about: 'the days of five pieces that share hands and machine',
    bar: 'under 10000',
    runs: 2,
    run: () => last(1, () => engine.daysOfMany(five, { asOf }))
  }
]
