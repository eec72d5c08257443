import type { Face } from '../piece/piece-schema.ts'
import { decimals } from '../quantity/format.ts'
import { faceOf } from '../stack/stack.ts'
import { planedHollowMm } from '../timber/planing.ts'
import type { Check, Found } from './finding.ts'
import { rounded, setQuantity } from './fix.ts'
import { orderIsGiven } from './interval.ts'
import { unevenlyFlattened } from './one-face-flattened.ts'
import type { Work } from './work.ts'

/** Hollow from which it is said, mm (common practice: a gap that a straightedge shows across a table). */
const LEAST_MM = 0.5
/** Least of a timber that has to be left when both faces are planed alike, mm. */
const LEAST_LEFT_MM = 1

/**
 * A timber whose core differs from its skin and that is planed more on one face than on the other: it goes hollow as it
 * evens out.
 *
 * A face that is hardly flattened at all is said by one-face-flattened.
 *
 * Limits: the timber by itself, with the profile that it has now: resin beside it holds it, and days in the mould even
 * it out.
 */
export const planedHollow: Check = {
  id: 'planed-hollow',
  about: 'timber planed on one face while it is wetter inside',
  cases: ['C64', 'C81'],
  run: work => work.timberFacts.flatMap(f => one(work, f))
}

function one(work: Work, { timber, cupping }: Work['timberFacts'][number]): Found[] {
  const { planedMm, belowMm, aboveMm, restDays, surfacePct } = cupping
  const { source } = work.seasons[timber]!
  // What nobody measured has no inside that differs.
  if (planedMm === null || source === 'room' || source === 'storage' || unevenlyFlattened(work)) return []
  const hollow = Math.abs(planedMm)
  if (hollow <= LEAST_MM) return []
  const { id, at } = work.entries.timbers[timber]!
  const more = faceOf(work.piece, belowMm > aboveMm ? 'low' : 'high')
  const less: Face = more === 'front' ? 'back' : 'front'
  const goal = goalOf(work, timber, less)
  return [
    {
      severity: 'caution',
      at,
      says: `${id} is not even through its thickness yet (its skin goes to ${decimals(surfacePct, 1)} %), and ${decimals(Math.max(belowMm, aboveMm), 1)} mm come off its ${more}, ${decimals(Math.min(belowMm, aboveMm), 1)} off the ${less}: by itself it goes ${decimals(hollow, 1)} mm hollow afterwards. Plane both faces alike; or leave a skin of 0.2 mm, let it rest ${decimals(restDays[0], 0)} to ${decimals(restDays[2], 0)} days, then finish.`,
      value: hollow,
      unit: 'mm',
      limit: LEAST_MM,
      basis:
        'first mode of diffusion through it, strain of the free board (derived, Crank); 0.5 mm and the skin of 0.2 mm: common practice, no source; days: Crank, the least',
      settledBy: 'pins at the core and at the skin before it is planed',
      ...(goal === null
        ? {}
        : {
            fix: setQuantity(work.document, `/flatten/${less}`, 'length', goal, 'up'),
            fixSays: `Take ${decimals(goal, 1)} mm off the ${less}`
          })
    }
  ]
}

// The least allowance of a face that leaves it flat enough; null where steps of the document say what they take.
function goalOf(work: Work, timber: number, face: Face): number | null {
  if (orderIsGiven(work)) return null
  const { cupping } = work.timberFacts[timber]!
  const { acrossMm, coefficientPerPct } = work.seasons[timber]!
  const { belowMm, aboveMm, corePct, surfacePct } = cupping
  const solid = work.stack.geometry.timbers[timber]!
  const thicknessMm = Math.max(0.5, solid.high - solid.base)
  // As much off the other face as well would leave nothing of it.
  if (thicknessMm - 2 * Math.max(belowMm, aboveMm) < LEAST_LEFT_MM) return null
  const below = belowMm < aboveMm
  const hollow = (more: number) =>
    Math.abs(
      planedHollowMm(
        {
          thicknessMm,
          belowMm: belowMm + (below ? more : 0),
          aboveMm: aboveMm + (below ? 0 : more),
          corePct,
          surfacePct: Math.min(40, surfacePct)
        },
        coefficientPerPct ?? 0,
        Math.min(10_000, acrossMm)
      )
    )
  // From as it stands to both faces alike the hollow falls to nothing.
  let [low, high] = [0, Math.abs(belowMm - aboveMm)]
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2
    if (hollow(middle) > LEAST_MM) low = middle
    else high = middle
  }
  return rounded(work.piece.flatten[face] + high, 'up', 0.1)
}
