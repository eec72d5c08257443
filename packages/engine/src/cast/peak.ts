import { hottestCorner } from '../resin/bands.ts'
import type { Layer } from '../resin/column-grid.ts'
import type { ResinResult } from '../resin/column-result.ts'
import type { SlabPour } from '../resin/slab.ts'
import { peakHorizonS, runSlab } from '../resin/slab.ts'
import type { CastInput, RoomAir } from './bed.ts'
import { advance, airOf, bandInput, bodyLayer, freshLayer, runBed } from './bed.ts'
import type { PourCast } from './cast.ts'
import { FOLLOWED_MIN } from './cast.ts'

/** The peak of a pour, central and at the hot end of its band, °C. */
export interface Peak {
  readonly centralC: number
  readonly highC: number
}

/**
 * The peak of a planned pour as a function of its depth when poured, mm: the run of {@link PourCast} on the
 * same bed at the same hour, with the upper end of its band. null for a pour that is not predicted.
 *
 * For the search of a depth that would do; three runs of a column for each depth asked.
 * Check: at the planned depth it gives the planned peak and the end of its band (test).
 */
export function peakOver(
  input: CastInput,
  casts: readonly (PourCast | null)[],
  index: number
): ((liquidDepthMm: number) => Peak) | null {
  const cast = casts[index]
  if (!cast) return null
  const air = airOf(input.shop)
  const inMould = input.stack.piece.pours[index]!.kind === 'cast'
  const below = inMould ? layersBefore(input, casts, index, air) : [bodyLayer(input.stack, air)]
  return liquidDepthMm => {
    const layers = [...below, freshLayer(input, index, liquidDepthMm, cast.startC)]
    const own = runBed(input, layers, FOLLOWED_MIN, cast.startMin, air).layers[below.length] as ResinResult
    const band = bandInput(input, index, below, cast.startC, liquidDepthMm)
    const peak = (pour: SlabPour) => runSlab(pour, peakHorizonS(pour), 'quick').resin.peakC
    return {
      centralC: own.peakC,
      highC: own.peakC + Math.max(0, peak(hottestCorner(band)) - peak(band.pour))
    }
  }
}

// The layers of the mould as a pour finds them, run anew up to its start.
function layersBefore(
  input: CastInput,
  casts: readonly (PourCast | null)[],
  index: number,
  air: RoomAir
): readonly Layer[] {
  let layers: readonly Layer[] = []
  let clockMin = 0
  for (const step of input.stack.steps) {
    if (step.kind !== 'pour' || step.pour!.value.kind !== 'cast') continue
    const k = step.pour!.index
    const cast = casts[k]
    if (!cast) continue
    layers = advance(input, layers, cast.startMin - clockMin, clockMin, air)
    clockMin = cast.startMin
    if (k === index) break
    layers = [...layers, freshLayer(input, k, input.stack.pours[k]!.liquidDepth, cast.startC)]
  }
  return layers
}
