import type { PourBand } from '../resin/bands.ts'
import { pourBand } from '../resin/bands.ts'
import type { Layer } from '../resin/column-grid.ts'
import type { ResinResult } from '../resin/column-result.ts'
import type { CastInput, RoomAir } from './bed.ts'
import { advance, airOf, bandInput, bodyLayer, freshLayer, runBed } from './bed.ts'
import type { Curve, Windows } from './windows.ts'
import { curveOf, windowsOf } from './windows.ts'

/** How one pour cures and heats. Times are minutes since it was poured. */
export interface PourCast {
  readonly index: number
  /** When it is poured, min after the first pour. */
  readonly startMin: number
  /** Temperature of the mix when poured, °C. */
  readonly startC: number
  readonly peakC: number
  readonly peakBandC: readonly [number, number]
  readonly peakMin: number
  /** Height of the hottest place over the floor of the pour, mm. */
  readonly peakAtMm: number
  readonly runaway: boolean
  readonly windows: Windows
  readonly curve: Curve
  /** Which unsure input moves the peak most: what a reading would settle first. */
  readonly mostFrom: PourBand['mostFrom']
}

/** How long a pour is followed, min: seven days, after which the class no longer changes by more than the band. */
export const FOLLOWED_MIN = 7 * 24 * 60

/**
 * The pours into the mould one after the other, each on what lies below it: board, earlier pours still
 * curing. Pours of families that are not predicted, and layers outside the mould, give null.
 *
 * The room follows a day from its coldest to its warmest; pours start at nine in the morning unless the
 * document says when. A pour waits for the recoat window of the one below unless the document says how long.
 *
 * Band: the eight corners of {@link pourBand} on the same bed, taken as offsets from their own centre.
 *
 * Limits: one direction, at the deepest place: what the sides and timber islands take is left out, so a
 * narrow river runs cooler than this says. The 3-D cast replaces it for full plans.
 */
export function castOf(input: CastInput): readonly (PourCast | null)[] {
  const { stack, choices } = input
  const out: (PourCast | null)[] = stack.piece.pours.map(() => null)
  const air = airOf(input.shop)
  let layers: readonly Layer[] = []
  let clockMin = 0
  let before: PourCast | null = null
  for (const step of stack.steps) {
    if (step.kind !== 'pour') continue
    const { index, value } = step.pour!
    const model = choices[index]!.record.model
    const pour = stack.pours[index]!
    if (model === null || pour.liquidDepth < 0.05) {
      before = null
      continue
    }
    if (value.kind !== 'cast') {
      out[index] = single(input, index, air)
      continue
    }
    const wait: number = before === null ? 0 : (value.after ?? before.windows.recoat.open)
    layers = advance(input, layers, wait, clockMin, air)
    clockMin += wait
    const startC = value.startTemperature ?? air(clockMin * 60)
    const below = layers
    layers = [...below, freshLayer(input, index, pour.liquidDepth, startC)]
    const own = runBed(input, layers, FOLLOWED_MIN, clockMin, air).layers[below.length] as ResinResult
    const band = pourBand(bandInput(input, index, below, startC, pour.liquidDepth))
    before = pourCast(input, index, clockMin, startC, own, band)
    out[index] = before
  }
  return out
}

/** A layer on its own: a flood on the finished body, a seal, an inlay. It lies on timber or cured resin. */
function single(input: CastInput, index: number, air: RoomAir): PourCast {
  const { liquidDepth } = input.stack.pours[index]!
  const startC = input.stack.piece.pours[index]!.startTemperature ?? air(0)
  const body = bodyLayer(input.stack, air)
  const layers = [body, freshLayer(input, index, liquidDepth, startC)]
  const own = runBed(input, layers, FOLLOWED_MIN, 0, air).layers[1] as ResinResult
  const band = pourBand(bandInput(input, index, [body], startC, liquidDepth))
  return pourCast(input, index, 0, startC, own, band)
}

function pourCast(
  input: CastInput,
  index: number,
  startMin: number,
  startC: number,
  own: ResinResult,
  band: PourBand
): PourCast {
  const choice = input.choices[index]!
  const low = own.peakC + (band.peakC.low - band.peakC.central)
  const high = own.peakC + (band.peakC.high - band.peakC.central)
  return {
    index,
    startMin,
    startC,
    peakC: own.peakC,
    peakBandC: [Math.max(Math.min(startC, own.peakC), low), Math.max(own.peakC, high)],
    peakMin: own.peakAtS / 60,
    peakAtMm: own.peakAtMm,
    runaway: own.peakC > 150,
    windows: windowsOf(choice.record, own),
    curve: curveOf(own),
    mostFrom: band.mostFrom
  }
}
