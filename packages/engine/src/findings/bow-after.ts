import type { BowRow } from '../fits/bow.ts'
import { bowOf } from '../fits/bow.ts'
import type { FaceBow } from '../fits/bow-face.ts'
import type { FlattenWay } from '../fits/bow-order.ts'
import type { Face } from '../piece/piece-schema.ts'
import { decimals } from '../quantity/format.ts'
import { pourFace } from '../steps/step.ts'
import type { Check, Found } from './finding.ts'
import { rounded, setQuantity } from './fix.ts'
import { orderIsGiven } from './interval.ts'
import { unevenlyFlattened } from './one-face-flattened.ts'
import type { Work } from './work.ts'

/** What flattening may be asked to take off one face besides, mm: tried in this order for one that mends the bow. */
const MORE_MM = [0.5, 1, 1.5, 2, 3, 4, 6]

/**
 * A piece that bows more than flattening takes off, or, once made, more than is wanted: by what its pours pull and
 * its timber moves (fits/bow.ts). Said once, at its worst; where one face is hardly flattened that is said instead.
 *
 * Limits: those of the reckoning. Of what a maker flattens by eye and turns over as often as it asks for, nothing is
 * known.
 */
export const bowAfter: Check = {
  id: 'bow-after',
  about: 'a bow that flattening does not take off, or that comes back in use',
  cases: ['C64'],
  run
}

const BASIS =
  'plate theory over the cores: pours contract from the moment they are stiff (3 to 6 % by volume: memory), timber moves to the driest and dampest air (Wood Handbook); creep leaves 0.3 to 1 of it: common practice, no source'

function run(work: Work): Found[] {
  const { bow } = work
  if (bow === null) return []
  const short = bow.rows.filter(
    (r, k) =>
      r.flattens !== null &&
      bow.rows.findIndex(o => o.flattens?.face === r.flattens!.face) === k &&
      r.flattens.before.mm > takenOff(bow.rows, r.flattens.face)
  )
  if (short.length > 0) return short.map(r => tooShallow(work, r))
  if (unevenlyFlattened(work)) return []
  const worst = worstOf(bow.rows)
  return worst === null ? [] : [comesBack(work, worst.row, worst.face)]
}

function takenOff(rows: readonly BowRow[], face: Face): number {
  return rows.reduce((sum, r) => sum + (r.flattens?.face === face ? r.flattens.takesMm : 0), 0)
}

function tooShallow(work: Work, row: BowRow): Found {
  const { face, before } = row.flattens!
  const off = takenOff(work.bow!.rows, face)
  // The allowance of a face holds what sanding takes later, too.
  const goal = rounded(work.piece.flatten[face] + before.mm - off, 'up', 0.1)
  return {
    severity: 'caution',
    at: `/flatten/${face}`,
    says: `before it is flattened the ${face} ${shaped(before)} by about ${mm(before.mm)} over ${decimals(before.overMm, 0)}, and ${mm(off)} come off: the cutter misses part of it. Take ${mm(goal)} off.`,
    value: before.mm,
    unit: 'mm',
    band: before.bandMm,
    limit: off,
    basis: BASIS,
    settledBy: 'a straightedge across it when it comes out of the mould',
    ...(orderIsGiven(work)
      ? {}
      : {
          fix: setQuantity(work.document, `/flatten/${face}`, 'length', goal, 'up'),
          fixSays: `Take ${mm(goal)} off the ${face}`
        })
  }
}

/** The face and moment of a made piece that lie farthest past what is let pass; null where none does. */
function worstOf(rows: readonly BowRow[]): { readonly row: BowRow; readonly face: Face } | null {
  const lastWork = rows.findLastIndex(
    r => r.when === 'flattened' || r.when === 'poured over' || r.when === 'coated'
  )
  let worst: { row: BowRow; face: Face; over: number } | null = null
  for (const row of rows.slice(Math.max(0, lastWork))) {
    for (const face of ['front', 'back'] as const) {
      const over = row[face].mm / row[face].limitMm
      if (over > 1 && over > (worst?.over ?? 1)) worst = { row, face, over }
    }
  }
  return worst
}

function comesBack(work: Work, row: BowRow, face: Face): Found {
  const found = row[face]
  const inUse = row.when === 'driest' || row.when === 'dampest'
  const mend = deeper(work)
  const when = inUse ? `in the ${row.when} air it will live in` : `after “${work.steps[row.step]!.says}”`
  const why = inUse
    ? 'its timber moves and the resin on one side of it does not'
    : 'what was taken off, or laid on, pulled on one side'
  const advice =
    mend !== null
      ? `Taking ${mm(mend.mm)} off the ${mend.face} in all evens it out.`
      : inUse
        ? 'Let resin and timber lie alike towards both faces, or bring the timber nearer to the air it will live in.'
        : orderWords(work)
  return {
    severity: 'caution',
    at: '/flatten',
    says: `${when} the ${face} ${shaped(found)} by about ${mm(found.mm)} over ${decimals(found.overMm, 0)}: ${why}. ${advice}`,
    value: found.mm,
    unit: 'mm',
    band: found.bandMm,
    limit: found.limitMm,
    basis: `${BASIS}; flat within ${decimals(work.bow!.flatnessMm, 2)} mm over 300: ${work.piece.flatness === undefined ? 'common practice, no source' : 'the piece'}`,
    settledBy: inUse
      ? 'moisture of the timber before the pour; a straightedge across it after a month in its room'
      : 'a straightedge across it a week later',
    ...(mend === null
      ? {}
      : {
          fix: setQuantity(work.document, `/flatten/${mend.face}`, 'length', mend.mm, 'up'),
          fixSays: `Take ${mm(mend.mm)} off the ${mend.face}`
        })
  }
}

// The order or depth that leaves least.
function orderWords(work: Work): string {
  const best = work.bow!.order.reduce<FlattenWay | null>(
    (a, b) => (a !== null && a.leavesMm <= b.leavesMm ? a : b),
    null
  )
  return best === null || best.way === 'as planned'
    ? 'Take less at a time and turn it over in between.'
    : `Flattened otherwise, ${best.says}, it is left with ${mm(best.leavesMm)}.`
}

// The least that, taken off one face besides, keeps a made piece within what is wanted.
function deeper(work: Work): { readonly face: Face; readonly mm: number } | null {
  if (orderIsGiven(work)) return null
  for (const extra of MORE_MM) {
    for (const face of ['front', 'back'] as const) {
      if (!work.bow!.rows.some(r => r.flattens?.face === face) || pouredOver(work, face)) continue
      const more = { front: 0, back: 0, [face]: extra }
      const tried = bowOf(work, more)
      if (tried !== null && worstOf(tried.rows) === null)
        return { face, mm: rounded(work.piece.flatten[face] + extra, 'up', 0.1) }
    }
  }
  return null
}

// Resin poured over a face after it was flattened stays on it, however much was taken off before.
function pouredOver({ piece, steps }: Work, face: Face): boolean {
  const last = steps.findLastIndex(s => s.kind === 'flatten' && s.face === face)
  return steps
    .slice(last + 1)
    .some(({ pour }) => pour?.value.kind === 'flood' && pourFace(pour.value, piece) === face)
}

function shaped(bow: FaceBow): string {
  return bow.hollow ? 'goes hollow' : 'stands up in its middle'
}

function mm(value: number): string {
  return `${decimals(value, value < 1 ? 2 : 1)} mm`
}
