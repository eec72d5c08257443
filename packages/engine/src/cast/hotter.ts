import type { InertLayer, Layer } from '../resin/column-grid.ts'
import type { ResinResult } from '../resin/column-result.ts'
import type { CastInput, RoomAir } from './bed.ts'
import { bandInput, freshLayer, runBed } from './bed.ts'
import type { PourCast } from './cast.ts'
import { FOLLOWED_MIN } from './cast.ts'
import { layersBefore } from './peak.ts'
import { airFor } from './starts.ts'

/** Why one pour runs hotter than another: what is different about it. */
export type Difference = 'warm layer' | 'floor' | 'hour' | 'mix' | 'sides'

/** What a difference is worth: the peak falls by so much when it alone is taken away, K. */
export interface Worth {
  readonly difference: Difference
  readonly kelvin: number
}

interface Conditions {
  readonly below: readonly Layer[]
  readonly startMin: number
  readonly startC: number
}

/**
 * What makes a pour hotter than another of the same resin, by running it anew with each difference taken away:
 *
 *   warm layer   what lies below it still gives heat: it is taken as cured and at the room's temperature
 *   floor        what it lies on, cold: it is put on what the other lies on
 *   hour         it is poured at the other's hour
 *   mix          it is mixed as warm as the other
 *   sides        what timber and walls take: by how much the whole mould sets the two farther apart than columns do
 *
 * Largest first. Check: the sum of a single difference is the whole of it (test).
 * Limits: all but the sides are told from columns; the sides only where the whole mould was cast.
 */
export function whyHotter(
  input: CastInput,
  casts: readonly (PourCast | null)[],
  pour: number,
  other: number
): Worth[] {
  const air = airFor(input.stack, input.shop, pour)
  const own = conditions(input, casts, pour, air)
  const theirs = conditions(input, casts, other, air)
  const depthMm = input.stack.pours[pour]!.liquidDepth
  const column = (c: Conditions, index: number, mm: number): number => {
    const layers = [...c.below, freshLayer(input, index, mm, c.startC)]
    const run = runBed(input, layers, FOLLOWED_MIN, c.startMin, air)
    return (run.layers[c.below.length] as ResinResult).peakC
  }
  const peak = (c: Conditions): number => column(c, pour, depthMm)
  const roomC = air(own.startMin * 60)
  const asItIs = peak(own)
  const cold = { ...own, below: coldBed(input, pour, own.below, roomC) }
  const coldPeak = peak(cold)
  const theirFloor = { ...cold, below: coldBed(input, other, theirs.below, roomC) }
  const columnsApart = asItIs - column(theirs, other, input.stack.pours[other]!.liquidDepth)
  const apart = casts[pour]!.peakC - casts[other]!.peakC
  const worths: Worth[] = [
    { difference: 'sides', kelvin: apart - columnsApart },
    { difference: 'warm layer', kelvin: asItIs - coldPeak },
    { difference: 'floor', kelvin: coldPeak - peak(theirFloor) },
    { difference: 'hour', kelvin: asItIs - peak({ ...own, startMin: theirs.startMin }) },
    { difference: 'mix', kelvin: asItIs - peak({ ...own, startC: theirs.startC }) }
  ]
  return worths.sort((a, b) => b.kelvin - a.kelvin)
}

function conditions(
  input: CastInput,
  casts: readonly (PourCast | null)[],
  pour: number,
  air: RoomAir
): Conditions {
  const { startMin, startC } = casts[pour]!
  return { below: layersBefore(input, casts, pour, air), startMin, startC }
}

/** What lies below a pour, hard and as warm as the room. */
export function coldBed(
  input: CastInput,
  index: number,
  below: readonly Layer[],
  roomC: number
): readonly InertLayer[] {
  return bandInput(input, index, below, roomC, 1).pour.bed.layers.map(l => ({ ...l, startC: roomC }))
}
