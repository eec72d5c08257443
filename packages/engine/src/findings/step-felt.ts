import { extent } from '../fits/season.ts'
import { grainDegOf } from '../piece/grain.ts'
import { decimals } from '../quantity/format.ts'
import { intersection } from '../shape/combine.ts'
import type { Check, Found } from './finding.ts'
import { setValue } from './fix.ts'
import type { Work } from './work.ts'

/** A step that a finger feels, mm (practice; C66). */
const FELT_MM = 0.05

/**
 * Timber worked flush with metal, stone or resin: it grows and shrinks past them with the air, and the step is felt.
 *
 * The width is what the finished outline leaves of it: waste is cut off before anyone feels an edge.
 *
 * Limits: half of the width stands over each edge; free timber in balance with the air. Stabilised timber moves less, not
 * nothing, and is not told apart.
 */
export const stepFelt: Check = {
  id: 'step-felt',
  about: 'timber flush with what does not move',
  cases: ['C66'],
  run: work => work.seasons.flatMap(s => one(work, s))
}

function one(work: Work, season: Work['seasons'][number]): Found[] {
  const { timber, toDampMm, toDryMm } = season
  const { flush, rings } = work.piece.timbers[timber]!
  if (flush === 'nothing' || toDampMm === null || toDryMm === null) return []
  const { outline, timbers } = work.stack.geometry
  const left = intersection(timbers[timber]!.upper, outline)
  if (left.rings.length === 0) return []
  const acrossMm = extent(left, grainDegOf(work.piece.timbers[timber]!, timbers[timber]!.upper) + 90)
  const share = acrossMm / season.acrossMm / 2
  const grows = Math.max(0, toDampMm[1]) * share
  const falls = Math.max(0, -toDryMm[1]) * share
  const worst = Math.max(grows, falls)
  if (worst <= FELT_MM) return []
  const band = grows >= falls ? toDampMm.map(x => x * share) : toDryMm.map(x => -x * share)
  const { id, at } = work.entries.timbers[timber]!
  return [
    {
      severity: 'caution',
      at: `${at}/flush`,
      says: `${id} is worked flush with ${flush}, which does not move, and is ${decimals(acrossMm, 0)} mm across the grain: each edge stands ${decimals(grows, 2)} mm proud in the dampest air and ${decimals(falls, 2)} mm back in the driest. A finger feels ${FELT_MM}. Narrower or ${rings === 'quarter' ? 'steadier' : 'quartersawn'} timber moves less; ease the edge, or let it stand back.`,
      value: worst,
      unit: 'mm',
      band: [Math.min(...band), Math.max(...band)],
      limit: FELT_MM,
      basis:
        'half of the width × coefficient × change of moisture (Wood Handbook eq. 13-2, ± 25 % between boards); 0.05 mm: a maker’s report of a step to be felt',
      settledBy: 'a strip of it across the grain, measured dry and damp',
      fix: setValue(work.document, `${at}/flush`, 'nothing'),
      fixSays: `Let the edge of ${id} stand back, eased`
    }
  ]
}
