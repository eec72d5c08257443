import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** A sled that sags under the router, or is too short or too narrow for the piece. */
export const sledWeak: Check = {
  id: 'sled-weak',
  about: 'a flattening sled that sags under the router, or does not reach over the piece',
  cases: [],
  run
}

/** How far a face flattened by hand may be out of flat, mm (practice). */
const FLAT_MM = 0.3

function run(work: Work): Found[] {
  const { sled } = work.shop.hand
  // Both faces are as large: said once.
  const h = work.hand.find(c => c.doing?.sled)
  const plan = h?.doing?.sled
  if (h === undefined || !plan) return []
  const out: Found[] = []
  const { rails, span } = sled
  const short =
    rails !== undefined && rails < plan.railsMm
      ? { what: 'rails', has: rails, needs: plan.railsMm }
      : span !== undefined && span < plan.spanMm
        ? { what: 'carriage', has: span, needs: plan.spanMm }
        : null
  if (short !== null)
    out.push({
      severity: 'caution',
      at: h.at,
      says: `the ${short.what} of the sled ${short.what === 'rails' ? 'are' : 'is'} ${decimals(short.has, 0)} mm; this face wants ${decimals(short.needs, 0)}, or the cutter stops before its end. Make longer ones, or flatten it in two settings and feel for the step.`,
      value: short.has,
      unit: 'mm',
      limit: short.needs,
      basis: 'size of the casting, cutter and foot of the router: plane geometry; the sled: the shop',
      settledBy: `the ${short.what}, measured`
    })
  if (plan.sagMm > FLAT_MM)
    out.push({
      severity: 'caution',
      at: h.at,
      says: `the carriage of the sled spans ${decimals(plan.spanMm, 0)} mm and goes down ${decimals(plan.sagMm, 1)} mm under the router: the face comes out that much hollow. Higher beams, or a board on edge screwed along each.`,
      value: plan.sagMm,
      unit: 'mm',
      limit: FLAT_MM,
      basis:
        'beam on two supports, plywood on edge of 10 GPa, router and two hands in the middle (common practice, no source)',
      settledBy: 'a straightedge under the carriage with the router in its middle'
    })
  return out
}
