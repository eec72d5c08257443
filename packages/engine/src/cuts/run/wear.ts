import type { CutMaterial } from '../../catalogue/chip-load.ts'
import { decimals } from '../../quantity/format.ts'
import type { Met } from './met.ts'

/**
 * How far a carbide edge cuts before it is looked at, m of way along the work.
 *
 * Source: orders of magnitude of common practice, no source: cast resin heats and rounds an edge sooner than timber
 * does; fillings of mineral or metal many times sooner. Steel edges last about a tenth.
 */
const EDGE_M: Readonly<Record<CutMaterial, number>> = {
  softwood: 3000,
  hardwood: 2000,
  dense: 1000,
  board: 1000,
  resin: 500
}
/** Cast resin with stones, sand, glow or metal powder in it. */
const FILLED_M = 50

/** What a way through these materials does to an edge. */
export interface Wear {
  /** Way over what an edge takes, 0 up: 1 and more is worn. */
  readonly share: number
  /** Said from half of it on; null before. */
  readonly says: string | null
}

/**
 * Wear of an edge as a caution, never a promise: the way cut against what an edge takes in the hardest of what is met.
 *
 * @param cutMm way along the work, mm
 */
export function wearOf(cutMm: number, met: readonly Met[]): Wear {
  const resin = met.some(m => m.material === 'resin')
  const filled = met.some(m => m.filled)
  const least = Math.min(
    ...(met.length === 0 ? [EDGE_M.hardwood] : met.map(m => EDGE_M[m.material])),
    ...(filled ? [FILLED_M] : [])
  )
  const share = cutMm / 1000 / least
  const where = filled ? 'resin with mineral or metal in it' : resin ? 'resin' : 'timber'
  return {
    share,
    says:
      share < 0.5
        ? null
        : `${decimals(cutMm / 1000, 0)} m through ${where}: an edge is worn after about ${decimals(least, 0)} (practice); look at it on the way, and set the height anew after a change`
  }
}
