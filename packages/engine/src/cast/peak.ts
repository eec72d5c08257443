import { hottestCorner } from '../resin/bands.ts'
import { runColumn } from '../resin/column.ts'
import type { Layer } from '../resin/column-grid.ts'
import type { ResinResult } from '../resin/column-result.ts'
import { resinOf } from '../resin/column-result.ts'
import type { SlabPour } from '../resin/slab.ts'
import { peakHorizonS, slabColumn } from '../resin/slab.ts'
import type { CastInput, RoomAir } from './bed.ts'
import { advance, bandInput, bodyLayer, freshLayer, runBed } from './bed.ts'
import type { PourCast } from './cast.ts'
import { FOLLOWED_MIN } from './cast.ts'
import { airFor } from './starts.ts'

/** The peak of a pour, central and at the hot end of its band, °C. */
export interface Peak {
  readonly centralC: number
  readonly highC: number
}

/** A planned pour at other depths when poured, mm: for the search of one that would do. */
export interface PeakOver {
  readonly at: (liquidDepthMm: number) => Peak
  /** Whether the hot end stays at or below a limit; sooner known than the peak, for runs end at the limit. */
  readonly under: (liquidDepthMm: number, limitC: number) => boolean
}

/** Least time a run is followed for its peak, min: two days, so that the warmest of the day is in it. */
const LEAST_FOLLOWED_MIN = 2 * 24 * 60

/**
 * The peak of a planned pour over its depth: the run of {@link PourCast} on the same bed at the same hour,
 * with the upper end of its band. null for a pour that is not predicted.
 * Check: at the planned depth it gives the planned peak and the end of its band (test).
 */
export function peakOver(
  input: CastInput,
  casts: readonly (PourCast | null)[],
  index: number
): PeakOver | null {
  const cast = casts[index]
  if (!cast) return null
  const air = airFor(input.stack, input.shop, index)
  const inMould = input.stack.piece.pours[index]!.kind === 'cast'
  const below = inMould ? layersBefore(input, casts, index, air) : [bodyLayer(input.stack, air)]
  const ownPeak = (depthMm: number, forMin: number, stopAboveC?: number): number => {
    const layers = [...below, freshLayer(input, index, depthMm, cast.startC)]
    const run = runBed(input, layers, forMin, cast.startMin, air, stopAboveC)
    const { peakC } = run.layers[below.length] as ResinResult
    // A layer below that is still hot ended the run: it says nothing of this one.
    const cutShort = stopAboveC !== undefined && peakC <= stopAboveC && run.timeS < forMin * 60 * (1 - 1e-9)
    return cutShort ? ownPeak(depthMm, forMin) : peakC
  }
  const slabPeak = (pour: SlabPour, stopAboveC = Number.POSITIVE_INFINITY): number =>
    resinOf(runColumn({ ...slabColumn(pour, peakHorizonS(pour), 'quick'), stopAboveC })).peakC
  const bandAt = (depthMm: number) => bandInput(input, index, below, cast.startC, depthMm)
  return {
    at: depthMm => {
      const centralC = ownPeak(depthMm, FOLLOWED_MIN)
      const band = bandAt(depthMm)
      return {
        centralC,
        highC: centralC + Math.max(0, slabPeak(hottestCorner(band)) - slabPeak(band.pour))
      }
    },
    under: (depthMm, limitC) => {
      const band = bandAt(depthMm)
      const horizonMin = Math.max(LEAST_FOLLOWED_MIN, peakHorizonS(band.pour) / 60)
      const centralC = ownPeak(depthMm, Math.min(FOLLOWED_MIN, horizonMin), limitC)
      if (centralC > limitC) return false
      const hottestC = limitC - centralC + slabPeak(band.pour)
      return slabPeak(hottestCorner(band), hottestC) <= hottestC
    }
  }
}

/** The layers of the mould as a pour finds them, run anew up to its start. */
export function layersBefore(
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
