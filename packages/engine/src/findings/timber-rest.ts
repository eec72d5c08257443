import { extent } from '../fits/season.ts'
import { grainDegOf } from '../piece/grain.ts'
import { decimals } from '../quantity/format.ts'
import { inside } from '../shape/measure.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** The skin that is left in a fit that rests, mm on a side: 0.13 to 0.25 by a maker's account (C81). */
const SKIN_MM = 0.2
/** Nearer to the air than this timber does not move on, points (practice). */
const SETTLED_PCT = 1.5

/**
 * A close fit cut in timber that is still on its way to the air it stands in: the hole goes on changing.
 *
 * Limits: what the timber does while it settles in the shop; what the year does later is not in it.
 */
export const timberRest: Check = {
  id: 'timber-rest',
  about: 'a close fit cut in timber that has not settled',
  cases: ['C81'],
  run: work => work.fits.flatMap(f => one(work, f))
}

function one(work: Work, fit: Work['fits'][number]): Found[] {
  const { gapMm } = fit
  const hole = holeRegion(work, fit.hardware)
  if (gapMm === null || hole === null || gapMm > 2 * SKIN_MM) return []
  const timber = work.stack.geometry.timbers.findIndex(t => inside(t.upper, fit.x, fit.y))
  if (timber < 0) return []
  const season = work.seasons[timber]!
  const { cupping } = work.timberFacts[timber]!
  const { coefficientPerPct, moisturePct, source } = season
  if (coefficientPerPct === null || source === 'room' || source === 'storage') return []
  const change = cupping.surfacePct - moisturePct
  if (Math.abs(change) < SETTLED_PCT) return []
  const grain = grainDegOf(work.piece.timbers[timber]!, work.stack.geometry.timbers[timber]!.upper)
  const across = extent(hole, grain + 90)
  const moves = across * coefficientPerPct * change
  if (Math.abs(moves) / 2 <= SKIN_MM / 2) return []
  const { at, id } = work.entries.hardware[fit.hardware]!
  const rest = cupping.restDays
  return [
    {
      // A loose part only gets looser.
      severity: moves < 0 || work.piece.hardware[fit.hardware]!.fitting === 'press' ? 'caution' : 'note',
      at,
      says: `the fit of ${id} is cut ${decimals(Math.max(0, gapMm), 2)} mm a side in ${work.entries.timbers[timber]!.id}, which is at ${decimals(moisturePct, 1)} % and goes to ${decimals(cupping.surfacePct, 1)} where it stands: the hole ${moves < 0 ? 'closes' : 'opens'} by ${decimals(Math.abs(moves), 2)} mm across the grain. Leave a skin of ${SKIN_MM} mm, let it rest ${decimals(rest[0], 0)} to ${decimals(rest[2], 0)} days (a month by a maker’s account), then finish.`,
      value: Math.abs(moves),
      unit: 'mm',
      limit: SKIN_MM,
      basis:
        'movement across the grain (Wood Handbook eq. 13-2) to the balance of the air it stands in; a skin of 0.13 to 0.25 mm and a month: a maker’s account; days: diffusion (Crank), the least',
      settledBy: 'a second moisture reading a week after the first: it no longer changes'
    }
  ]
}

function holeRegion(work: Work, hardware: number) {
  const entry = work.entries.hardware[hardware]!
  const cut = work.entries.cuts.find(c => c.id === entry.value.in || c.value.for === entry.id)
  return cut === undefined ? null : work.stack.geometry.cutRegions[cut.index]!
}
