import type { FlowHistory } from './fluidity.ts'
import { HONEY_PAS } from './thickening.ts'

/**
 * When hot air or a flame is passed over a pour: bubbles that have come up are held by the skin of the
 * surface; a moment of heat thins it and they burst. It helps as long as bubbles still come up, so until the
 * mix is as thick as honey; later it only wrinkles the skin.
 *
 * Times after pouring: 5, 15, 30, 60 and every 60 min on, at most six (practice, no source). The end: the
 * mean of the layer at {@link HONEY_PAS}.
 *
 * Limits: the surface is taken as thick as the mean of the layer; in a warm deep pour it stays thinner a
 * little longer. Seconds, moving, a hand's breadth away: what heat does to the cure is not in it.
 */
export function bubblePasses(history: FlowHistory): readonly number[] {
  const end = thickAtMin(history, HONEY_PAS)
  return PASSES_MIN.filter(t => end === null || t < end)
}

const PASSES_MIN = [5, 15, 30, 60, 120, 180] as const

/** The first moment at which a mix is as thick as that, min; null when it never is within the history. */
export function thickAtMin({ min, viscosityPaS: eta }: FlowHistory, levelPaS: number): number | null {
  for (let i = 0; i < min.length; i++) {
    if (!(eta[i]! >= levelPaS)) continue
    if (i === 0) return min[0]!
    const [a, b] = [Math.log(eta[i - 1]!), Math.log(Math.min(eta[i]!, 1e9))]
    return min[i - 1]! + ((Math.log(levelPaS) - a) / (b - a)) * (min[i]! - min[i - 1]!)
  }
  return null
}
