import type { Timber } from '../piece/piece-schema.ts'
import { GRAVITY_M_PER_S2 } from '../quantity/gravity.ts'
import { fixingsFor } from '../timber/float.ts'
import { screwHoldsN } from '../timber/screw.ts'

/** What holds a timber down, counted. */
export interface HoldDownBy {
  readonly by: Timber['held']
  /** Screws, metres of tape, kilograms. */
  readonly amount: number
  readonly unit: 'screws' | 'm' | 'kg'
  /** What one of them holds, g. */
  readonly eachG: number
  /** In words, for the sheet: "2 screws 4 × 12 mm in the timber". */
  readonly says: string
  readonly basis: string
}

/** Screw counted on when nothing is said, mm: shank, and thread in the timber; half a thin timber at most (practice). */
const SCREW_MM = { diameter: 4, thread: 12 } as const
/** Two at least: one turns (practice). */
const LEAST_SCREWS = 2
/** Double-sided or strap tape, 50 mm wide, on clean dry timber and a clean liner, g a metre (practice, the low end). */
const TAPE_G_PER_M = 5000

/** How much of what the piece names holds `holdG`; null when nothing needs to or nothing does. */
export function holdDownBy(
  held: Timber['held'],
  holdG: number,
  thickMm: number,
  specificGravity: number
): HoldDownBy | null {
  if (held === 'nothing' || holdG < 1) return null
  if (held === 'weights')
    return {
      by: held,
      amount: holdG / 1000,
      unit: 'kg',
      eachG: 1000,
      says: `${(holdG / 1000).toFixed(holdG < 10_000 ? 2 : 1)} kg of weights, spread over it, that stand clear of the resin`,
      basis: 'the hold-down asked for'
    }
  if (held === 'tape') {
    const m = Math.max(0.1, Math.ceil(holdG / (TAPE_G_PER_M / 10)) / 10)
    return {
      by: held,
      amount: m,
      unit: 'm',
      eachG: TAPE_G_PER_M,
      says: `${m.toFixed(1)} m of tape 50 mm wide: try a piece of it on this liner first`,
      basis: '5 kg a metre on clean faces: common practice, no source; resin and release agent loosen it'
    }
  }
  const thread = Math.max(1, Math.min(SCREW_MM.thread, thickMm / 2))
  const eachG = (screwHoldsN(specificGravity, SCREW_MM.diameter, thread) / GRAVITY_M_PER_S2) * 1000
  const n = Math.max(LEAST_SCREWS, fixingsFor(holdG, Math.max(1, eachG)))
  return {
    by: held,
    amount: n,
    unit: 'screws',
    eachG,
    says: `${n} screws ${SCREW_MM.diameter} mm thick, ${thread.toFixed(0)} mm of thread in the timber, where waste or a cut takes the hole away`,
    basis: 'withdrawal from side grain, Wood Handbook ch. 8 (memory), a fifth of it; two at least: practice'
  }
}
