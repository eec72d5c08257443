import type { ResinChoice } from '../piece/resin-choice.ts'
import { cupHistory } from '../resin/cup.ts'

/**
 * How fast a maker's resin is taken to be against its class: the factor on both rate constants at which the
 * class gels in a cup of the label's mass in the label's pot life (ASTM D2471-99: a pot life is of a stated
 * mass in a stated cup).
 *
 * Limits: one figure fixes one factor; activation energies and heat stay the class's. A factor outside
 * 0.1 to 10 means that the class was the wrong one: the caller says so.
 */
export interface Speed {
  readonly factor: number
  /** Whether the label's pot life could be met within 0.1 to 10. */
  readonly met: boolean
}

const LEAST = 0.1
const MOST = 10

/** Speed of a resin from its label's pot life; 1 without one. */
export function speedOf(choice: ResinChoice): Speed {
  const { label, record } = choice
  if (label?.potLife === undefined || record.model === null) return { factor: 1, met: true }
  const resin = record.model
  const { minutes, mass, temperature } = label.potLife
  const volumeMl = mass / choice.densityGMl
  // A cup as wide as the batch is high, with room to stir.
  const diameterMm = Math.cbrt((4 * volumeMl * 1000) / Math.PI)
  const vessel = { diameterMm, capacityMl: volumeMl * 1.5 }
  const gel = (rateFactor: number) =>
    cupHistory({ resin, massG: mass, vessel, roomC: temperature, rateFactor, effort: 'quick', untilH: 240 })
      .gelMin ?? Number.POSITIVE_INFINITY
  if (gel(LEAST) <= minutes) return { factor: LEAST, met: false }
  if (gel(MOST) >= minutes) return { factor: MOST, met: false }
  let low = LEAST
  let high = MOST
  while (high / low > 1.005) {
    const mid = Math.sqrt(low * high)
    if (gel(mid) > minutes) low = mid
    else high = mid
  }
  return { factor: Math.sqrt(low * high), met: true }
}
