import type { ResinRecord } from '../catalogue/resin.ts'
import type { ResinResult } from '../resin/column-result.ts'
import { crossingS } from '../resin/conversion.ts'
import { glassTransitionC } from '../resin/glass.ts'
import { LEAST_TG_C } from '../resin/limits.ts'
import { HONEY_PAS, SYRUP_PAS, thickeningOf } from '../resin/thickening.ts'
import { hardMin } from './hard.ts'
import type { Window } from './window.ts'
import { bandedWindow, carriedOver, windowAt } from './window.ts'
import type { StoneSink } from './window-stones.ts'
import { stonesEnds } from './window-stones.ts'
import { BASIS, SETTLED_BY } from './window-words.ts'

/** Moments, min since the pour, at which a heat gun goes over the face, and the span they lie in. */
export interface Passes extends Window {
  readonly moments: readonly number[]
}

/** A figure with the ends of its band; null: not within the time that is followed. */
export interface Banded {
  readonly central: number | null
  readonly band: readonly [number | null, number | null]
}

/** The windows of one pour. null where nothing of the kind happens within the seven days that are followed. */
export interface Windows {
  /** Until twice the viscosity at the start. */
  readonly working: Window
  /** From syrup to honey: a stick's trail holds but still flows. */
  readonly marbling: Window | null
  /** First and half gel, min. */
  readonly gelMin: number | null
  readonly halfGelMin: number | null
  readonly gel: Banded
  /** Heat gun over the face. */
  readonly passes: Passes
  /** Stones dropped into it stay within their band; null when none go in, or when they float. */
  readonly stones: Window | null
  /** Stones set on it: they stick, and no longer sink in. */
  readonly tacky: Window
  /** The next pour bonds by itself. */
  readonly recoat: Window
  /** Out of the mould. */
  readonly demould: Window
  /** For abrasive paper. */
  readonly sand: Window
  /** For the cutter: practice, 7 days, 3 at least. */
  readonly machine: Window
  /** Into use. */
  readonly service: Window
  /** Glass transition of the mean on the seventh day, °C: where it softens in use. */
  readonly tgC: Banded
}

/**
 * Surface conversion at which the recoat window closes. 0.8 puts the end at 16 h for the medium class and
 * 5.6 h for the thin one at 22 °C, where practice says 6-18 h and 3-6 h (fitted; no source).
 */
export const RECOAT_CLOSES_AT = 0.8
/** A casting leaves the mould once its glass transition has passed the room by this everywhere, K (fitted: practice 48-72 h for deep resins). */
const DEMOULD_OVER_ROOM_K = 10
/** A cutter warms the face it makes: glass transition over the room, K, that it asks for (fitted: practice 3-7 d for deep resins). */
const CUTTER_OVER_ROOM_K = 20
/** Cured in a room, a resin stays this far under the glass transition it could have, K (the model's diffusion limit: 8 to 12). */
const REACHED_UNDER_K = 10
/** Common practice: days from the last pour to the cutter, and the least. */
export const MACHINE_DAYS = 7
export const MACHINE_LEAST_DAYS = 3
const DAY = 24 * 60
/** What counts as "no longer hot", K over the warmest of the room: practice. */
const COOL_WITHIN_K = 8
/** Passes of the heat gun, min after the pour, and the last: practice, the first one to two hours. */
const PASS_MOMENTS = [5, 15, 30, 60, 90, 120] as const

export interface WindowOptions {
  /** Stones that are dropped into the pour. */
  readonly stones?: StoneSink | undefined
  /**
   * Times the viscosities at which marbling begins and ends: viscosity of a class is good to a factor of about
   * two, so a corner of a band takes √2 or its inverse. 1 if not given.
   */
  readonly levels?: number
  /** The room's mean and its warmest of the day, °C; if not given, both are what the face comes to in the end. */
  readonly room?: { readonly meanC: number; readonly warmestC: number }
}

/** Half of the doubt of a class's viscosity, as a factor (see thickening.ts). */
export const LEVEL_DOUBT = Math.SQRT2

/**
 * Windows of a pour from one run: the column's, or any other of the same shape (a 3-D field gives the mean, the
 * hottest and the outer face of the pour). Without a band; {@link bandedWindows} gives it one.
 *
 * Check: each end is the crossing of the history itself (tests on made histories and closed forms).
 * Limits: the levels are practice or fitted to it, as their words say.
 */
export function windowsOf(
  record: ResinRecord,
  own: Pick<ResinResult, 'history' | 'firstGelS' | 'halfGelS'>,
  options: WindowOptions = {}
): Windows {
  const { kinetics, flow } = record.model!
  const h = own.history
  const levels = options.levels ?? 1
  const end = h.timeS[h.timeS.length - 1]! / 60
  const at = (name: keyof typeof BASIS, open: number | null, close: number | null) =>
    windowAt(open, close, end, { settledBy: SETTLED_BY[name], basis: BASIS[name] })
  const thick = thickeningOf(kinetics, flow, { timeS: h.timeS, tempC: h.meanC }, h.meanConversion)
  const viscosity = h.meanViscosityPaS.map(v => Math.log(v))
  const thickAt = (pas: number) => crossing(h.timeS, viscosity, Math.log(pas * levels))
  const syrup = thickAt(SYRUP_PAS)
  const honey = thickAt(HONEY_PAS)
  const surfaceGel = crossing(h.timeS, h.outerConversion, kinetics.gelConversion)
  const closes = crossing(h.timeS, h.outerConversion, RECOAT_CLOSES_AT)
  const roomC = options.room?.meanC ?? h.outerC[h.outerC.length - 1]!
  const leastTgC = h.leastConversion.map(a => glassTransitionC(kinetics, a))
  const glassy = crossing(h.timeS, leastTgC, roomC + DEMOULD_OVER_ROOM_K)
  const hard = hardMin(h, roomC)
  const cuttable = crossing(h.timeS, leastTgC, cutterTgC(roomC, kinetics.tgInfC))
  const warmC = (options.room?.warmestC ?? roomC) + COOL_WITHIN_K
  // The next pour asks for a cool face; what leaves the mould, for a cool heart.
  const [coolFace, coolHeart] = [lastOver(h.timeS, h.outerC, warmC), lastOver(h.timeS, h.maxC, warmC)]
  const later = (a: number | null, b: number) => (a === null ? null : Math.max(a, b))
  const full = MACHINE_DAYS * DAY
  const lastPass = Math.min(PASS_MOMENTS[PASS_MOMENTS.length - 1]!, honey ?? Number.POSITIVE_INFINITY)
  const stones = options.stones === undefined ? null : stonesEnds(h, options.stones)
  const gelMin = own.firstGelS === null ? null : own.firstGelS / 60
  const tg7C = end >= full - 1 ? valueAt(h.timeS, h.meanTgC, full) : null
  return {
    working: at('working', 0, thick.doubleMin),
    marbling: syrup === null ? null : at('marbling', syrup, honey),
    gelMin,
    halfGelMin: own.halfGelS === null ? null : own.halfGelS / 60,
    gel: { central: gelMin, band: [gelMin, gelMin] },
    passes: {
      ...at('passes', Math.min(PASS_MOMENTS[0], lastPass), lastPass),
      moments: PASS_MOMENTS.filter(m => m <= lastPass)
    },
    stones: stones === null ? null : at('stones', ...stones),
    tacky: at('tacky', surfaceGel, closes),
    // Hot until after it would close: pour as soon as it has cooled; the surface then wants sanding.
    recoat: at('recoat', later(surfaceGel, coolFace), closes),
    demould: at('demould', later(glassy, coolHeart), null),
    sand: at('sand', hard === null ? null : Math.max(DAY, hard, coolHeart), null),
    machine: practised(at('machine', cuttable === null ? null : Math.max(full, cuttable), null)),
    service: practised(at('service', cuttable === null ? null : Math.max(full, cuttable), null)),
    tgC: { central: tg7C, band: [tg7C, tg7C] }
  }
}

// The least of practice is the earliest.
function practised(w: Window): Window {
  const least = MACHINE_LEAST_DAYS * DAY
  return { ...w, openBand: [least, w.openBand[1]], band: [least, w.band[1]] }
}

const KINDS = ['working', 'tacky', 'recoat', 'demould', 'sand', 'machine', 'service'] as const

/**
 * A pour's windows with bands: the hull of each end over the central run and others of the same pour, made with
 * the corners of what is unsure (rate, room, convection).
 */
export function bandedWindows(central: Windows, others: readonly Windows[]): Windows {
  const banded = <W extends Window>(own: W, of: (w: Windows) => Window | null): W =>
    bandedWindow(own, others.map(of))
  const each = Object.fromEntries(KINDS.map(k => [k, banded(central[k], w => w[k])])) as Pick<
    Windows,
    (typeof KINDS)[number]
  >
  return {
    ...central,
    ...each,
    machine: practised(each.machine),
    service: practised(each.service),
    passes: banded(central.passes, w => w.passes),
    marbling: central.marbling && banded(central.marbling, w => w.marbling),
    stones: central.stones && banded(central.stones, w => w.stones),
    gel: hullOf(
      central.gel.central,
      others.map(w => w.gel.central)
    ),
    tgC: hullOf(
      central.tgC.central,
      others.map(w => w.tgC.central)
    )
  }
}

/** The same of runs that were made on another bed: see {@link carriedOver}. */
export function carriedWindows(own: Windows, evenCentral: Windows, even: Windows): Windows {
  const carried = <W extends Window>(w: W, centre: Window | null, corner: Window | null): W => {
    const ends = carriedOver(w, centre, corner)
    return ends === null ? { ...w, open: w.open, close: null, reached: false } : { ...w, ...ends }
  }
  const each = Object.fromEntries(KINDS.map(k => [k, carried(own[k], evenCentral[k], even[k])])) as Pick<
    Windows,
    (typeof KINDS)[number]
  >
  const gelMin =
    even.gelMin === null || own.gelMin === null || !evenCentral.gelMin
      ? even.gelMin
      : (own.gelMin * even.gelMin) / evenCentral.gelMin
  const shifted = (a: number | null, centre: number | null, corner: number | null) =>
    a === null || centre === null || corner === null ? corner : a + corner - centre
  const tgC = shifted(own.tgC.central, evenCentral.tgC.central, even.tgC.central)
  return {
    ...own,
    ...each,
    passes: carried(own.passes, evenCentral.passes, even.passes),
    marbling: own.marbling && carried(own.marbling, evenCentral.marbling, even.marbling),
    stones: own.stones && carried(own.stones, evenCentral.stones, even.stones),
    gelMin,
    gel: { central: gelMin, band: [gelMin, gelMin] },
    tgC: { central: tgC, band: [tgC, tgC] }
  }
}

// Times and temperatures: what is not reached is later, or unknown.
function hullOf(central: number | null, others: readonly (number | null)[]): Banded {
  const known = [central, ...others].filter(x => x !== null)
  const every = known.length === others.length + 1
  if (known.length === 0) return { central, band: [null, null] }
  return { central, band: [Math.min(...known), every ? Math.max(...known) : null] }
}

function crossing(timeS: ArrayLike<number>, value: ArrayLike<number>, level: number): number | null {
  const s = crossingS(timeS, value, level)
  return s === null ? null : s / 60
}

/** A sampled value at a minute, straight between samples; the last one beyond them. */
export function valueAt(timeS: ArrayLike<number>, value: ArrayLike<number>, min: number): number {
  const s = min * 60
  for (let i = 1; i < timeS.length; i++)
    if (timeS[i]! >= s) {
      const part = (s - timeS[i - 1]!) / (timeS[i]! - timeS[i - 1]!)
      return value[i - 1]! + part * (value[i]! - value[i - 1]!)
    }
  return value[timeS.length - 1]!
}

/**
 * Glass transition that a cutter asks for, °C: over the room, as far as the resin comes at all, and never what softens
 * in the hand.
 */
function cutterTgC(roomC: number, tgInfC: number): number {
  return Math.max(LEAST_TG_C, Math.min(roomC + CUTTER_OVER_ROOM_K, tgInfC - REACHED_UNDER_K))
}

// When it was last warmer than this, min; 0 if it never was.
function lastOver(timeS: ArrayLike<number>, valueC: ArrayLike<number>, warmC: number): number {
  for (let i = timeS.length - 1; i >= 0; i--) if (valueC[i]! > warmC) return timeS[i]! / 60
  return 0
}
