import { decimals, formatMass } from '../quantity/format.ts'
import { batchesInAll } from './batches.ts'
import type { Check, Found } from './finding.ts'
import { setQuantity } from './fix.ts'
import type { Work } from './work.ts'

/** Resin on hand that does not reach for a pour. */
export const resinShort: Check = {
  id: 'resin-short',
  about: 'resin on hand that runs out before the pour is done',
  cases: ['C31'],
  run: work => [...packs(work), ...stock(work)]
}

/** Resin of a pour for all blanks, both parts, tint left out, g. */
export function resinNeedG(work: Work, index: number): number {
  const tinted = work.materials.tints[index]!.reduce((sum, t) => sum + t.share, 0)
  return (work.batches[index]?.mixedG ?? 0) * (1 - tinted) * work.quantity.blanks
}

// What the document says is there for a pour.
function packs(work: Work): Found[] {
  return work.entries.pours.flatMap(({ index, value }): Found[] => {
    const need = resinNeedG(work, index)
    return value.pack === undefined || value.pack >= need * (1 - 1e-9)
      ? []
      : [short(work, index, value.pack, 'resin on hand by the piece')]
  })
}

// The shop's shelf, where it knows no packs to buy: the pours draw on it in their order.
function stock(work: Work): Found[] {
  const left = new Map<string, number>()
  const said = new Set<string>()
  return work.entries.pours.flatMap(({ index, value }): Found[] => {
    const { id, label } = work.materials.resins[index]!
    const line = work.buy.find(l => l.group === 'resin' && l.item === id)
    if (label === null || label.packs.length > 0 || value.pack !== undefined) return []
    // A part that lacks its other half is said for itself; a shop that says nothing of its shelf is not asked.
    if (line === undefined || line.lack !== null || (label.stock === 0 && label.lots.length === 0)) return []
    const there = left.get(id) ?? line.stock
    const need = resinNeedG(work, index)
    left.set(id, Math.max(0, there - need))
    if (need <= there * (1 + 1e-9) || said.has(id)) return []
    said.add(id)
    return [short(work, index, there, 'stock of the shop')]
  })
}

function short(work: Work, index: number, haveG: number, from: string): Found {
  const { id, at } = work.entries.pours[index]!
  const need = resinNeedG(work, index)
  const count = batchesInAll(work, index)
  const covers = (haveG * count) / need
  return {
    severity: 'stop',
    at,
    says: `do not start: ${id} takes ${formatMass(need)} of resin in ${count} ${count === 1 ? 'batch' : 'batches'}, ${formatMass(haveG)} are there: enough for ${decimals(Math.floor(covers * 10) / 10, 1)} ${count === 1 ? 'of it' : 'of them'}. A pour that runs dry half-way leaves a layer and an open mould.`,
    value: haveG,
    unit: 'g',
    limit: need,
    basis: `need: free volume of the mould by density, and what stays in the vessels as the shop says; ${from}`,
    settledBy: 'the weight of what is on the shelf',
    fix: setQuantity(work.document, `${at}/pack`, 'mass', need, 'up', 1),
    fixSays: `Have ${formatMass(Math.ceil(need))} for ${id}`
  }
}
