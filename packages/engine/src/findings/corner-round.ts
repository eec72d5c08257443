import { find } from '../catalogue/find.ts'
import { decimals } from '../quantity/format.ts'
import { cornerGapMm, sideGapForCornerMm } from '../tolerance/corner.ts'
import type { Check, Found } from './finding.ts'
import { holeName, sideGap, widen } from './part-shape.ts'
import { ROUNDING_MM, seatsOf } from './seat.ts'
import type { Work } from './work.ts'

/** What a pocket is cut with where the shop lists no cutter that reaches its floor: 6 mm across (practice). */
const USUAL_MM = 6
/** Kinds whose edges leave an upright wall. */
const UPRIGHT = new Set(['flat', 'bull', 'straight'])
/** Room a fix leaves at the corner beyond what is lacking, mm. */
const SPARE_MM = 0.05

/** A square part in a pocket whose corners no cutter makes square. */
export const cornerRound: Check = {
  id: 'corner-round',
  about: 'a square part in the round corners that the cutter leaves',
  cases: [],
  run
}

function run(work: Work): Found[] {
  return seatsOf(work).flatMap((seat): Found[] => {
    const { fit, part, entry } = seat
    const side = sideGap(work, fit)
    if (side === null || fit.chain?.of !== 'cut') return []
    const cut = work.entries.cuts[fit.chain.index]!
    if (cut.value.way !== 'machine' && cut.value.way !== 'router') return []
    // A corner drawn as round as the cutter, or rounder, is in the drawing already.
    const cutter = smallestMm(work, fit.chain.index)
    const radius = cutter.mm / 2
    if ((cut.value.shape?.corner ?? 0) >= radius - 1e-9) return []
    const gap = cornerGapMm(side, radius, part.cornerMm)
    if (side < seat.leastMm - ROUNDING_MM || gap >= seat.leastMm - ROUNDING_MM) return []
    const hole = holeName(work, fit, 'its pocket')
    return [
      {
        severity: 'caution',
        at: entry.at,
        says: `${entry.id} has ${part.cornerMm === 0 ? 'square corners' : `corners of ${decimals(part.cornerMm, 1)} mm`}; a cutter ${decimals(cutter.mm, 1)} mm across${cutter.own ? ', the smallest in the shop that reaches the floor,' : ''} leaves ${decimals(radius, 1)} mm in those of ${hole}, and the part meets them ${decimals(-gap, 2)} mm before the sides. Cut ${hole} larger, bore out its corners, or square them with a chisel.`,
        value: gap,
        unit: 'mm',
        limit: seat.leastMm,
        basis: `plane geometry: the sides must stand 0.293 of the radius off; ${cutter.own ? 'cutters of the shop' : 'a cutter of 6 mm: common practice, where the shop lists none that reaches'}`,
        settledBy: 'the corners of the part, and the cutter that is used, measured',
        ...widen(work, fit, Math.max(side, sideGapForCornerMm(radius, part.cornerMm)) + SPARE_MM)
      }
    ]
  })
}

// The smallest cutter of the shop with an upright edge that is long enough.
function smallestMm(work: Work, cut: number): { readonly mm: number; readonly own: boolean } {
  const depth = work.stack.cuts[cut]!.day ?? work.stack.finishedHigh - work.stack.finishedLow
  const sizes = work.shop.cutters
    .filter(c => UPRIGHT.has(find('cutter', c.kind)?.kind ?? '') && c.length >= depth)
    .map(c => c.diameter)
  return sizes.length === 0 ? { mm: USUAL_MM, own: false } : { mm: Math.min(...sizes), own: true }
}
