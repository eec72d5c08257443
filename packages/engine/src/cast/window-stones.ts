import type { LayerHistory } from '../resin/column-history.ts'
import { staysFromMin } from '../resin/settling.ts'

/** Stones dropped in at the level of a pour, and where they are wanted. */
export interface StoneSink {
  /** Smallest and largest, mm, as balls of their volume. */
  readonly sizeMm: readonly [number, number]
  readonly densityKgM3: number
  readonly liquidKgM3: number
  /** How far the underside may come below the level, mm; Infinity where the floor is as good. */
  readonly mostMm: number
  /** How far the top must come below the level, mm: 0 to be just covered. */
  readonly leastMm: number
}

/**
 * When stones dropped in end within their band: from the moment at which the largest no longer sink past its
 * bottom until the smallest, or the largest, are no longer covered, by the settling of one ball in the
 * thickening mix (settling.ts). min. `open` null: no moment serves the largest and the smallest alike. null where
 * they float.
 *
 * Check: a constant viscosity that ends in gel has the closed form (test).
 * Limits: those of settling.ts; neighbours are left out, so stones in a crowd sink less and the opening is on
 * the safe side.
 */
export function stonesEnds(
  h: Pick<LayerHistory, 'timeS' | 'meanViscosityPaS'>,
  stones: StoneSink
): readonly [open: number | null, close: number | null] | null {
  const { densityKgM3, liquidKgM3, mostMm, leastMm } = stones
  if (densityKgM3 <= liquidKgM3) return null
  const history = { min: Float64Array.from(h.timeS, s => s / 60), viscosityPaS: h.meanViscosityPaS }
  const staysFrom = (diameterMm: number, mm: number) =>
    staysFromMin({ diameterMm, densityKgM3, liquidKgM3 }, history, mm)
  const [small, large] = stones.sizeMm
  const open = Number.isFinite(mostMm) ? staysFrom(large, mostMm) : 0
  const ends = [small, large].map(d => staysFrom(d, d + leastMm))
  const close = ends.some(e => e === null) ? null : Math.min(...ends.map(e => e!))
  return open === null || (close !== null && close <= open) ? [null, null] : [open, close]
}
