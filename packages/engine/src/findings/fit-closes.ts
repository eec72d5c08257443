import { decimals } from '../quantity/format.ts'
import { closedBy, lossWords } from './closed-by.ts'
import type { Check, Found } from './finding.ts'
import { holeName, partWords, widen } from './part-shape.ts'
import type { After, Seat } from './seat.ts'
import { after, leftWords, ROUNDING_MM, seatsOf } from './seat.ts'
import type { Work } from './work.ts'

/** Room beyond what is lacking that a fix gives, mm: a wider hole moves a little more. */
const SPARE_MM = 0.02

/** A part that fits as drawn, and not in the piece in use. */
export const fitCloses: Check = {
  id: 'fit-closes',
  about: 'a hole that closes on its part by cure, season, a former or a coat on the part',
  cases: ['C91', 'C94'],
  run
}

function run(work: Work): Found[] {
  return seatsOf(work).flatMap((seat): Found[] => {
    if (seat.gapMm < seat.wantedMm - ROUNDING_MM) return []
    const { shares } = seat.fit
    // Where a cut would fit without the coat, the coat is the matter: that is a finding of its own.
    const own = seat.fit.chain?.of === 'cut' ? shares.filter(s => s.cause !== 'coat') : shares
    const bare = after(seat, own)
    const all = after(seat, shares)
    return bare.severity === null || all.severity === null ? [] : [found(work, seat, all)]
  })
}

function found(work: Work, seat: Seat, all: After): Found {
  const { fit, entry } = seat
  const hole = holeName(work, fit, 'its hole')
  const asked = all.severity === 'note'
  const limit = asked ? seat.wantedMm : seat.leastMm
  const value = all.severity === 'caution' ? all.sureMm : all.centralMm
  const start = `${entry.id}, ${partWords(seat.part)}, has ${decimals(seat.gapMm, 2)} mm on each side in ${hole} as drawn; ${lossWords(closedBy(fit.shares, all.severity === 'caution'))}, and ${leftWords(value)}`
  const end = asked
    ? ` where ${decimals(limit, 2)} is wanted.`
    : all.severity === 'caution'
      ? ' at the worst of the year: it may bind, or press the hole apart.'
      : ': it does not go in.'
  return {
    severity: all.severity!,
    at: entry.at,
    says: start + end,
    value,
    unit: 'mm',
    limit,
    band: fit.clearanceMm === null ? null : [fit.clearanceMm[0], fit.clearanceMm[2]],
    basis:
      'order of the steps; movement: Wood Handbook eq. 13-2; shrinkage linear in conversion (derived), what is left to cure none to all; films: catalogue, common practice',
    settledBy: 'the part tried dry before the finish; moisture of the timber, read',
    ...widen(work, fit, seat.gapMm + all.lacksMm + SPARE_MM)
  }
}
