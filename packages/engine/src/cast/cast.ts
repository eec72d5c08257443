import type { Reading } from '../piece/reading-schema.ts'
import { kept } from '../quantity/kept.ts'
import type { PourBand } from '../resin/bands.ts'
import { pourBand } from '../resin/bands.ts'
import type { Layer } from '../resin/column-grid.ts'
import type { ResinResult } from '../resin/column-result.ts'
import type { CastInput, RoomAir } from './bed.ts'
import { advance, bandInput, bodyLayer, freshLayer, runBed } from './bed.ts'
import type { Curve } from './curve.ts'
import { curveOf } from './curve.ts'
import type { Learned, Prior } from './learned.ts'
import { learn, priorAfter, spokenMinutes, takenOver } from './learned.ts'
import { withLearned } from './learned-input.ts'
import { pourSigns } from './pour-signs.ts'
import { airFor, beginsOf, givenWaits } from './starts.ts'
import type { CastWithStones } from './stone-sink.ts'
import { stoneSink } from './stone-sink.ts'
import type { Swirl } from './swirl.ts'
import { swirlsOf } from './swirl.ts'
import type { Windows } from './windows.ts'
import { bandedWindows, carriedWindows, LEVEL_DOUBT, windowsOf } from './windows.ts'

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
  /** When the peak comes at the earliest and the latest within the band, min. */
  readonly peakMinBand: readonly [number, number]
  /** Height of the hottest place over the floor of the pour, mm. */
  readonly peakAtMm: number
  readonly runaway: boolean
  readonly windows: Windows
  /** When each colour of a marbled pour can be drawn from its own cup; null for a pour of one colour. */
  readonly swirls: readonly Swirl[] | null
  /** What readings taught of this resin; null when there were none. */
  readonly learned: Learned | null
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
 * The room follows a day from its coldest to its warmest; the first pour starts at nine in the morning unless
 * the document says when. A pour waits for the recoat window of the one below unless the document says how long.
 *
 * Readings of a pour (it strings, is tacky, gelled, hard, so warm) re-estimate the speed of its resin: the rest
 * of its windows and the next pours of the same resin move with it.
 *
 * Band: the eight corners of {@link pourBand} on the same bed, taken as offsets from their own centre for the
 * peak, and in proportion to it for the windows.
 *
 * Limits: one direction, at the deepest place: what the sides and timber islands take is left out, so a
 * narrow river runs cooler than this says. The 3-D cast replaces it for full plans.
 */
export function castOf(
  input: CastWithStones,
  readings: readonly Reading[] = []
): readonly (PourCast | null)[] {
  return kept(casts, asked(input, readings), () => castAnew(input, readings), MOST_CASTS)
}

const casts = new Map<string, readonly (PourCast | null)[]>()
/** Casts that are held: those before and after an edit, and a few more. */
const MOST_CASTS = 8

const OF_CURE = new Set<Reading['kind']>(['mixed', 'poured', 'stage', 'temperature'])

// All that the columns are reckoned from: an edit of a cut or a finish leaves it as it was.
function asked(input: CastWithStones, readings: readonly Reading[]): string {
  const { stack, choices, speeds, board, shop, effort, stones } = input
  const pours = stack.pours.map((p, i) => {
    const { kind, start, after, startTemperature, resin, stones: set, marbling } = stack.piece.pours[i]!
    const own = [kind, start, after, startTemperature, resin, set, marbling]
    return [own, stack.entries.pours[i]!.id, p.floor, p.liquidLevel, p.liquidDepth, marbling && p.massG]
  })
  const steps = stack.steps.flatMap(s =>
    s.kind === 'pour' || s.kind === 'wait' ? [[s.kind, s.waitMin, s.begins, s.pour?.index]] : []
  )
  const body = stack.piece.pours.some(p => p.kind !== 'cast') ? stack.finishedHigh - stack.finishedLow : 0
  const { climate, timeZone } = shop
  return JSON.stringify([
    pours,
    steps,
    body,
    choices,
    speeds,
    board,
    climate,
    timeZone,
    effort,
    stones,
    // Of all that was read only this is of a cure: the rest changes no column.
    readings.filter(r => OF_CURE.has(r.kind))
  ])
}

function castAnew(input: CastWithStones, readings: readonly Reading[]): readonly (PourCast | null)[] {
  const { stack, choices } = input
  const out: (PourCast | null)[] = stack.piece.pours.map(() => null)
  const waits = givenWaits(stack.steps)
  const known = new Map<string, Prior>()
  let layers: readonly Layer[] = []
  let clockMin = 0
  let before: PourCast | null = null
  let nth = 0
  for (const step of stack.steps) {
    if (step.kind !== 'pour') continue
    const { index, value } = step.pour!
    const given = value.kind === 'cast' ? waits[nth++]! : null
    const model = choices[index]!.record.model
    const pour = stack.pours[index]!
    if (model === null || pour.liquidDepth < 0.05) {
      before = null
      continue
    }
    const air = airFor(stack, input.shop, index)
    const at = { index, begins: beginsOf(step), readings, known, air }
    if (value.kind !== 'cast') {
      out[index] = onBed(input, { ...at, below: [bodyLayer(stack, air)], startMin: 0 })
      continue
    }
    const wait: number = before === null ? 0 : (given ?? before.windows.recoat.open)
    layers = advance(input, layers, wait, clockMin, air)
    clockMin += wait
    before = onBed(input, { ...at, below: layers, startMin: clockMin })
    out[index] = before
    layers = [
      ...layers,
      freshLayer(withLearned(input, index, before.learned), index, pour.liquidDepth, before.startC)
    ]
  }
  return out
}

interface OnBed {
  readonly index: number
  readonly begins: string | undefined
  readonly readings: readonly Reading[]
  /** What was learned of each resin so far; added to. */
  readonly known: Map<string, Prior>
  readonly air: RoomAir
  readonly below: readonly Layer[]
  readonly startMin: number
}

/** One pour on what lies below it. */
function onBed(asked: CastWithStones, at: OnBed): PourCast {
  const { index, below, startMin, air } = at
  const pour = asked.stack.piece.pours[index]!
  const { liquidDepth } = asked.stack.pours[index]!
  const startC = pour.startTemperature ?? air(startMin * 60)
  const runAt = (input: CastInput): ResinResult => {
    const layers = [...below, freshLayer(input, index, liquidDepth, startC)]
    return runBed(input, layers, FOLLOWED_MIN, startMin, air).layers[below.length] as ResinResult
  }
  const learned = learnedOf(asked, at, factor => runAt(withLearned(asked, index, { factor })))
  if (learned !== null) at.known.set(pour.resin, priorAfter(learned))
  const input = withLearned(asked, index, learned)
  const bandOf = bandInput(input, index, below, startC, liquidDepth)
  return pourCast(input, { index, startMin, startC, learned }, runAt(input), pourBand(bandOf))
}

/** Where and when a pour is made, and what is known of its resin. */
export type Poured = Pick<PourCast, 'index' | 'startMin' | 'startC' | 'learned'>

/**
 * A pour's cast from its own run and a band on some bed: the band's ends are carried over to the run, as offsets of
 * the peak and in proportion of the windows. `input` has the resins as their readings left them.
 */
export function pourCast(input: CastWithStones, poured: Poured, own: ResinResult, band: PourBand): PourCast {
  const { index, startC } = poured
  const low = own.peakC + (band.peakC.low - band.peakC.central)
  const high = own.peakC + (band.peakC.high - band.peakC.central)
  const late = own.peakAtS / 60 / Math.max(1, band.runs.central.peakAtS)
  const peaks = band.runs.corners.map(c => c.run.peakAtS * late)
  const { night, day } = input.shop.climate
  return {
    ...poured,
    peakC: own.peakC,
    peakBandC: [Math.max(Math.min(startC, own.peakC), low), Math.max(own.peakC, high)],
    peakMin: own.peakAtS / 60,
    peakMinBand: [Math.min(own.peakAtS / 60, ...peaks), Math.max(own.peakAtS / 60, ...peaks)],
    peakAtMm: own.peakAtMm,
    runaway: own.peakC > 150,
    windows: windowsWithBand(input, index, own, band, poured.learned),
    swirls: coloursOf(input, index, (night + day) / 2, startC),
    curve: curveOf(own, band, stringsSeen(poured.learned) ? 1 : LEVEL_DOUBT),
    mostFrom: band.mostFrom
  }
}

function learnedOf(input: CastInput, at: OnBed, run: (factor: number) => ResinResult): Learned | null {
  const { index, begins, readings, known } = at
  const { id, value } = input.stack.entries.pours[index]!
  const signs = pourSigns(id, value, begins, readings, spokenMinutes)
  const before = known.get(value.resin)
  if (signs === null) return before === undefined ? null : takenOver(before, [])
  const prior = before ?? { factor: 1, timeBand: input.choices[index]!.record.band.time }
  return learn(input, index, signs, prior, run)
}

function windowsWithBand(
  input: CastWithStones,
  index: number,
  own: ResinResult,
  band: PourBand,
  learned: Learned | null
): Windows {
  const { record } = input.choices[index]!
  const stones = stoneSink(input, index)
  const { night, day, doubt } = input.shop.climate
  const room = { meanC: (night + day) / 2, warmestC: Math.max(night, day) }
  const off = (k: number) => ({ meanC: room.meanC + k, warmestC: room.warmestC + k })
  const { daily } = band.runs
  const central = windowsOf(record, own, { stones, room })
  const even = windowsOf(record, band.runs.central, { stones, ...(daily ? { room } : {}) })
  const seen = stringsSeen(learned)
  const corners = band.runs.corners.map(({ faster, warmer, run }) => {
    const levels = seen ? 1 : faster ? 1 / LEVEL_DOUBT : LEVEL_DOUBT
    return carriedWindows(
      central,
      even,
      windowsOf(record, run, { stones, levels, ...(daily ? { room: off(warmer ? doubt : -doubt) } : {}) })
    )
  })
  return bandedWindows(central, corners)
}

// A reading of "strings" is of the level of viscosity itself: its doubt is gone.
function stringsSeen(learned: Learned | null): boolean {
  return learned?.signs.some(s => s.startsWith('“strings”')) ?? false
}

function coloursOf(input: CastInput, index: number, roomC: number, startC: number): Swirl[] | null {
  const { marbling } = input.stack.piece.pours[index]!
  if (marbling === undefined) return null
  const { massG } = input.stack.pours[index]!
  const colours = marbling.map(m => ({
    massG: Math.max(1, (massG * m.share) / 100),
    laterMin: m.later ?? 0,
    pace: m.pace ?? 1
  }))
  const rateFactor = input.speeds[index]!.factor
  return swirlsOf(input.choices[index]!.record, colours, { roomC, startC, rateFactor })
}
