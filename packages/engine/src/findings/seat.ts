import type { HardwareFit, Part } from '../fits/hardware.ts'
import type { Share } from '../fits/share.ts'
import { together } from '../fits/share.ts'
import type { Entry } from '../piece/entry.ts'
import type { Hardware } from '../piece/piece-schema.ts'
import { decimals } from '../quantity/format.ts'
import type { Work } from './work.ts'

/** Interference that a part pushed in tight still takes, mm on a side (common practice). */
const PRESS_MM = 0.1
/** A gap nearer than this to the limit is at it, mm: curves stray as much from their chords. */
export const ROUNDING_MM = 0.01
/** Less than wanted by so much in the end is worth a word, mm (judgement). */
const WORTH_MM = 0.05

/** A part whose body goes into a hole, and the gap it must have. */
export interface Seat {
  readonly fit: HardwareFit
  readonly entry: Entry<Hardware>
  readonly part: Part
  /** Least gap on a side as drawn, mm. */
  readonly gapMm: number
  readonly press: boolean
  /** Below this it does not go in; below the other it has less play than wanted. */
  readonly leastMm: number
  readonly wantedMm: number
}

/** Parts that sit in a hole with their body. */
export function seatsOf(work: Work): Seat[] {
  return work.fits.flatMap((fit): Seat[] => {
    const entry = work.entries.hardware[fit.hardware]!
    const { part, record, gapMm } = fit
    // A part whose body stays outside, as a handle's, puts only its screws into a hole.
    const goesIn =
      record.pocket !== null ||
      record.body === null ||
      record.kind === 'pin' ||
      entry.value.clearance !== undefined
    if (gapMm === null || part === null || !goesIn) return []
    const press = entry.value.fitting === 'press'
    const leastMm = press ? -PRESS_MM : 0
    return [{ fit, entry, part, gapMm, press, leastMm, wantedMm: press ? leastMm : fit.wantedGapMm }]
  })
}

/** What becomes of a gap by the shares that are left in. */
export interface After {
  /** stop: does not go in; caution: may not, by what is sure to come; note: less than the piece asks for. */
  readonly severity: 'stop' | 'caution' | 'note' | null
  readonly centralMm: number
  /** The least of what is sure to come, chance left at its centre. */
  readonly sureMm: number
  /** By how much the gap must grow so that nothing stands, mm. */
  readonly lacksMm: number
}

/** "0.12 mm is left", "it lacks 0.05 mm". */
export function leftWords(mm: number): string {
  return mm < 0 ? `it lacks ${decimals(-mm, 2)} mm` : `${decimals(mm, 2)} mm is left`
}

/** How a seat that fits as drawn fares with these shares. */
export function after(seat: Seat, shares: readonly Share[]): After {
  const centralMm = seat.gapMm + together(shares)[1]
  const sureMm = seat.gapMm + shares.reduce((sum, s) => sum + (s.sure ? s.sideMm[0] : s.sideMm[1]), 0)
  const asked = seat.entry.value.clearance
  const at = { centralMm, sureMm }
  if (centralMm < seat.leastMm - ROUNDING_MM)
    return {
      ...at,
      severity: 'stop',
      lacksMm: seat.leastMm - Math.min(centralMm, seat.press ? centralMm : sureMm)
    }
  // Timber that shrinks on a pin pressed into it grips it the more.
  if (!seat.press && sureMm < seat.leastMm - ROUNDING_MM)
    return { ...at, severity: 'caution', lacksMm: seat.leastMm - sureMm }
  if (!seat.press && asked !== undefined && centralMm < asked - WORTH_MM)
    return { ...at, severity: 'note', lacksMm: asked - centralMm }
  return { ...at, severity: null, lacksMm: 0 }
}
