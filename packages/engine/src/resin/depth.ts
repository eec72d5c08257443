import { inRange } from '../quantity/range.ts'
import { runColumn } from './column.ts'
import { resinOf } from './column-result.ts'
import { type Effort, peakHorizonS, type SlabPour, slabColumn } from './slab.ts'

/**
 * The greatest depth of one pour whose peak stays at or below a limit, by bisection on the column.
 *
 * A deeper pour runs hotter (law, tested), so there is one edge. Near it a millimetre or a degree moves
 * the peak by tens of kelvin: quote the distance to the edge beside any peak.
 *
 * Check: class figures of greatest depth (test); monotone in room temperature and in the limit.
 *
 * Limits: those of column.ts; ±25 % for a generic class.
 */
export interface DepthLimit {
  /** Greatest depth, mm, to 0.02 mm or 0.5 %, whichever is more; `mostMm` when even that stays below the limit. */
  readonly depthMm: number
  /** Whether the search ended at `mostMm` rather than at an edge. */
  readonly unbounded: boolean
  /** Peak at that depth, °C. */
  readonly peakC: number
}

/** Greatest depth for a peak limit in °C; 0 when the room or the mix is already past the limit. */
export function greatestDepth(
  pour: Omit<SlabPour, 'depthMm'>,
  peakLimitC: number,
  options: { readonly mostMm?: number; readonly effort?: Effort } = {}
): DepthLimit {
  const mostMm = options.mostMm ?? 200
  const effort = options.effort ?? 'quick'
  inRange('peak limit in °C', peakLimitC, -40, 400)
  inRange('greatest depth looked at in mm', mostMm, 0.2, 2000)
  const startC = pour.startC ?? pour.roomC
  if (startC >= peakLimitC) return { depthMm: 0, unbounded: false, peakC: startC }
  const peak = (depthMm: number): number => peakOf({ ...pour, depthMm }, effort, peakLimitC)
  const atMost = peak(mostMm)
  if (atMost <= peakLimitC) return { depthMm: mostMm, unbounded: true, peakC: atMost }
  let low = 0
  let lowPeak = startC
  let high = mostMm
  while (high - low > Math.max(0.02, 0.005 * low)) {
    // halving at first, since thin and deep pours differ by a factor of fifty
    const middle = low === 0 ? high / 2 : (low + high) / 2
    const at = peak(middle)
    if (at > peakLimitC) high = middle
    else {
      low = middle
      lowPeak = at
    }
  }
  return { depthMm: low, unbounded: false, peakC: lowPeak }
}

/** The peak, or the first temperature above `stopAboveC`, °C. */
function peakOf(pour: SlabPour, effort: Effort, stopAboveC: number): number {
  return resinOf(runColumn({ ...slabColumn(pour, peakHorizonS(pour), effort), stopAboveC })).peakC
}
