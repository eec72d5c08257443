import type { LayerHistory } from '../resin/column-history.ts'

/** Standard acceleration of free fall, m/s² (CGPM 1901, exact). */
const GRAVITY = 9.80665

/** Stones dropped in at the level of a pour, and where they are wanted. */
export interface StoneSink {
  /** Smallest and largest, mm, as balls of their volume. */
  readonly sizeMm: readonly [number, number]
  /** Density over that of the liquid, kg/m³; stones that float have a negative one. */
  readonly overKgM3: number
  /** How far the underside may come below the level, mm; Infinity where the floor is as good. */
  readonly mostMm: number
  /** How far the top must come below the level, mm: 0 to be just covered. */
  readonly leastMm: number
}

/**
 * When stones dropped in end within their band: from the moment at which the largest no longer sink past its
 * bottom until the smallest, or the largest, are no longer covered. min; null when they never are.
 *
 *   s(t) = 2/9·Δρ·g·r²·∫ dt'/η(t') from t to gel      Stokes, the slow creep of a ball in a thickening liquid
 *
 * Source: Stokes (1851), the textbook form. Check: a constant viscosity has the closed form.
 * Limits: no inertia, no hindrance by neighbours, no walls: real stones sink a little less, so that the opening
 * is on the safe side. Flat pieces sink slower than a ball of their volume.
 */
export function stonesEnds(
  h: Pick<LayerHistory, 'timeS' | 'meanViscosityPaS'>,
  stones: StoneSink
): [open: number, close: number | null] | null {
  if (!(stones.overKgM3 > 0)) return null
  const [small, large] = stones.sizeMm
  const left = fluidityLeft(h)
  const sinksMm = (diameterMm: number) => {
    const radiusM = diameterMm / 2000
    return (2 / 9) * stones.overKgM3 * GRAVITY * radiusM ** 2 * 1000
  }
  // Fluidity left, 1/Pa, at which a stone of that size sinks by a distance.
  const at = (diameterMm: number, mm: number) => firstBelow(h.timeS, left, mm / sinksMm(diameterMm))
  const open = Number.isFinite(stones.mostMm) ? at(large, stones.mostMm) : 0
  const close = Math.min(at(small, small + stones.leastMm), at(large, large + stones.leastMm))
  return close <= 0 ? null : [open / 60, close / 60]
}

// ∫ dt/η from each sample to the end, 1/Pa·s·s.
function fluidityLeft(h: Pick<LayerHistory, 'timeS' | 'meanViscosityPaS'>): Float64Array {
  const n = h.timeS.length
  const out = new Float64Array(n)
  for (let i = n - 2; i >= 0; i--) {
    const [a, b] = [h.meanViscosityPaS[i]!, h.meanViscosityPaS[i + 1]!]
    // η runs straight in its logarithm between samples: the mean of 1/η is the logarithmic mean.
    const ratio = Math.log(b / a)
    const mean = Math.abs(ratio) < 1e-6 ? 1 / a : (1 / a - 1 / b) / ratio
    out[i] = out[i + 1]! + mean * (h.timeS[i + 1]! - h.timeS[i]!)
  }
  return out
}

// When a falling value passes a level, s; 0 when it starts below.
function firstBelow(timeS: ArrayLike<number>, value: ArrayLike<number>, level: number): number {
  if (value[0]! <= level) return 0
  for (let i = 1; i < timeS.length; i++)
    if (value[i]! <= level) {
      const part = (value[i - 1]! - level) / (value[i - 1]! - value[i]!)
      return timeS[i - 1]! + part * (timeS[i]! - timeS[i - 1]!)
    }
  return timeS[timeS.length - 1]!
}
