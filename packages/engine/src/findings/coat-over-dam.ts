import { damForMm } from '../coat/flood.ts'
import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { setQuantity } from './fix.ts'
import type { FloodPlace } from './flood-needs-dam.ts'
import { floodsOf } from './flood-needs-dam.ts'
import type { Work } from './work.ts'

/** A flood coat thicker than the dam that is to hold it. */
export const coatOverDam: Check = {
  id: 'coat-over-dam',
  about: 'a flood coat thicker than its dam',
  cases: [],
  run: work => floodsOf(work).flatMap(f => one(work, f))
}

function one(work: Work, { flood, at, name }: FloodPlace): Found[] {
  const { damMm, depthMm, standsMm, kept } = flood
  const [, deep] = depthMm
  // What stands by itself needs none, however low it is.
  if (kept || damMm === null || deep <= damMm + 1e-9 || deep <= standsMm[1]) return []
  const height = damForMm(deep)
  return [
    {
      severity: 'stop',
      at: `${at}/dam`,
      says: `${name} is ${decimals(deep, 1)} mm thick when poured and its dam ${decimals(damMm, 1)} mm high: it runs over. A dam of ${height} mm leaves 2 mm in hand.`,
      value: deep,
      unit: 'mm',
      limit: damMm,
      basis: 'heights of the document; 2 mm in hand: common practice, no source',
      fix: setQuantity(work.document, `${at}/dam`, 'length', height, 'up', 1),
      fixSays: `Dam of ${height} mm`
    }
  ]
}
