import type { PourCast } from '../cast/cast.ts'
import type { CoatRecord } from '../catalogue/coat.ts'
import { find } from '../catalogue/find.ts'
import { RESINS } from '../catalogue/resin.ts'
import { damForMm, EPOXY_TENSION, standsMm } from '../coat/flood.ts'
import type { Ladder } from '../coat/ladder.ts'
import type { WetFilm } from '../coat/levelling.ts'
import { levelNeedPerPa, levelWithinMmPerM, longestWaveMm, wedgeMm } from '../coat/levelling.ts'
import type { Depth } from '../coat/scratch.ts'
import { cornersFromHeights, levelFromReadings } from '../mould/level.ts'
import type { Face } from '../piece/piece-schema.ts'
import type { Reading } from '../piece/reading-schema.ts'
import type { Shop } from '../piece/shop-schema.ts'
import { conversionPath } from '../resin/conversion.ts'
import type { FlowHistory } from '../resin/fluidity.ts'
import { fluidity, fluidityReachedMin } from '../resin/fluidity.ts'
import { viscosityPaS } from '../resin/thickening.ts'
import { area, bounds } from '../shape/measure.ts'
import type { Stack } from '../stack/stack.ts'
import { sideOf } from '../stack/stack.ts'
import { pourFace } from '../steps/step.ts'
import type { Corners } from './bench-level.ts'
import { cornersOf } from './bench-level.ts'
import type { Left } from './marks.ts'
import type { FinishDocument } from './sanding.ts'
import { sandingUnder } from './sanding.ts'

/**
 * A coat that is poured over a face and levels itself: how thick it lies, what holds it, how it levels.
 *
 *   stands   the puddle that holds at a sharp edge (coat/flood), over the band of the surface tension
 *   levels   ripples of a hand's breadth (100 mm) down to a hundredth, along the thickening of its own resin
 *   wedge    slope of the bench, by the corner readings, times the longer side
 *
 * Source: models of coat/; a hand's breadth, a hundredth: judgement. A coat of the catalogue is taken as the thin
 * class at the middle of the room.
 *
 * Limits: one slope; a draught, dust and a face that draws resin in are not in it.
 */
export interface Flood {
  readonly face: Face
  /** The pour it is, by index; null: a coat of the finish. */
  readonly pour: number | null
  /** Wet thickness over the face, mm: least, middle, most. */
  readonly depthMm: Depth
  /** What stands by itself up to a sharp edge, mm. */
  readonly standsMm: Depth
  /** The dam of the document over the face, mm; null when there is none. */
  readonly damMm: number | null
  /** Kept in by something that stands already: the mould, or dams round a region. */
  readonly kept: boolean
  /** Height of dam that this depth wants, mm; null while it stands by itself. */
  readonly wantsDamMm: number | null
  readonly volumeMl: number
  /** When ripples a hand's breadth long have levelled, min; null: not before it sets. */
  readonly levelMin: number | null
  /** The longest ripple that levels before it sets, mm. */
  readonly longestMm: number
  /** How level the face must lie for an even coat, mm/m; and how much deeper the bench makes it, where known. */
  readonly withinMmPerM: number
  readonly wedgeMm: number | null
  /** Sanding under it; null: the face's own. */
  readonly under: { readonly ladder: Ladder; readonly left: Left; readonly step: number | null } | null
  readonly step: number | null
}

/** Ripples that are asked for, mm, and what may be left of them. */
const RIPPLE_MM = 100
const LEFT = 0.01

export interface FloodInput {
  readonly stack: Stack
  readonly shop: Shop
  readonly readings: readonly Reading[]
  readonly casts: readonly (PourCast | null)[]
}

/** Floods among the pours on a face, in the order of the steps. */
export function floodPours(input: FloodInput, face: Face): Flood[] {
  const { stack, shop } = input
  const { piece, steps, states } = stack
  const flood = find('coat', 'flood-coat')
  return steps.flatMap((s, i): Flood[] => {
    if (s.kind !== 'pour' || s.pour!.value.kind !== 'flood') return []
    const { index, value } = s.pour!
    if (pourFace(value, piece) !== face) return []
    const pour = stack.pours[index]!
    const before = states[i - 1]
    const high = sideOf(piece, face) === 'high'
    // What stands over the face: a hollow that it fills first does not count.
    const grown =
      before === undefined
        ? pour.liquidDepth
        : high
          ? states[i]!.highZ - before.highZ
          : before.lowZ - states[i]!.lowZ
    const wet = Math.max(0, Math.min(grown, pour.depth)) * (pour.liquidDepth / Math.max(1e-9, pour.depth))
    const region = stack.geometry.pourRegions[index] ?? null
    const mm2 = area(region ?? stack.geometry.outline)
    return [
      {
        ...laid(
          input,
          [wet, wet, wet],
          value.dam ?? null,
          region !== null || s.inMould,
          input.casts[index]?.curve ?? thinFlow(shop)
        ),
        face,
        pour: index,
        volumeMl: pour.liquidMl,
        under: sandingUnder(stack, shop, face, i, mm2 / 1e6, flood === null ? 220 : flood.lastGrit[1]),
        step: i
      }
    ]
  })
}

/** A flood coat of the finish. `wetUm`: one coat. */
export function floodCoat(
  input: FloodInput,
  face: Face,
  finish: FinishDocument | undefined,
  coat: CoatRecord,
  wetUm: Depth
): Flood | null {
  if (coat.kind !== 'flood') return null
  const depth = wetUm.map(um => um / 1000) as unknown as Depth
  return {
    ...laid(input, depth, finish?.dam ?? null, false, thinFlow(input.shop)),
    face,
    pour: null,
    volumeMl: (area(input.stack.geometry.outline) * depth[1]) / 1000,
    under: null,
    step: null
  }
}

function laid(
  { stack, readings }: FloodInput,
  depthMm: Depth,
  damMm: number | null,
  kept: boolean,
  flow: FlowHistory
): Omit<Flood, 'face' | 'pour' | 'volumeMl' | 'under' | 'step'> {
  const [, tension] = EPOXY_TENSION
  const stands = standsMm(RESIN_KG_M3)
  const b = bounds(stack.geometry.outline)
  const [spanX, spanY] = [b.maxX - b.minX, b.maxY - b.minY]
  const film: WetFilm = {
    filmMm: Math.min(500, Math.max(0.001, depthMm[1])),
    tensionNM: tension,
    densityKgM3: RESIN_KG_M3
  }
  const corners = cornersOf(stack.piece, readings)
  return {
    depthMm,
    standsMm: stands,
    damMm,
    kept,
    wantsDamMm: !kept && depthMm[1] > stands[1] ? damForMm(depthMm[1]) : null,
    levelMin: fluidityReachedMin(flow, levelNeedPerPa(film, RIPPLE_MM, LEFT)),
    longestMm: longestWaveMm(film, fluidity(flow), LEFT),
    withinMmPerM: levelWithinMmPerM(film.filmMm, Math.max(1, spanX, spanY)),
    wedgeMm: corners === null ? null : benchWedgeMm(corners, spanX, spanY)
  }
}

/** Corner readings beyond this are not of a bench, mm. */
const MOST_READ_MM = 100

// The mould's corners stand for the bench it stood on.
function benchWedgeMm(corners: Corners, spanX: number, spanY: number): number | null {
  if (Math.min(spanX, spanY) < 1 || corners.some(c => Math.abs(c) > MOST_READ_MM)) return null
  const level = levelFromReadings(cornersFromHeights(spanX, spanY, corners))
  const along = (spanMm: number, tilt: number) => wedgeMm(spanMm, Math.min(100, Math.abs(tilt)))
  return Math.max(along(spanX, level.tiltXMmPerM), along(spanY, level.tiltYMmPerM))
}

const RESIN_KG_M3 = 1100

/** Moments at which the thickening of a thin coat is looked at, and how long it is followed, min. */
const SAMPLES = 60
const FOLLOWED_MIN = 720

// A thin coat stays as warm as the room.
function thinFlow(shop: Shop): FlowHistory {
  const roomC = (shop.climate.night + shop.climate.day) / 2
  if (kept !== null && kept.roomC === roomC) return kept.flow
  const model = RESINS.find(r => r.use === 'thin')?.model
  if (!model) throw new Error('the catalogue has no thin resin')
  const timeS = Float64Array.from({ length: SAMPLES + 1 }, (_, k) => (k * FOLLOWED_MIN * 60) / SAMPLES)
  const path = conversionPath(model.kinetics, { timeS, tempC: timeS.map(() => roomC) })
  const flow = {
    min: Float64Array.from(path.timeS, t => t / 60),
    viscosityPaS: Float64Array.from(path.conversion, a =>
      viscosityPaS(model.flow, model.kinetics.gelConversion, roomC, a)
    )
  }
  kept = { roomC, flow }
  return flow
}

// The last room asked for: an edit asks for the same one again.
let kept: { readonly roomC: number; readonly flow: FlowHistory } | null = null
