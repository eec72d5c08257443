import type { ResinRecord } from '../catalogue/resin.ts'
import type { LayerHistory } from '../resin/column-history.ts'
import type { ResinResult } from '../resin/column-result.ts'
import { crossingS } from '../resin/conversion.ts'
import { HONEY_PAS, SYRUP_PAS, thickeningOf } from '../resin/thickening.ts'

/** A span of time in which a step works, min since the pour; `band` is what the class's doubt makes of its ends. */
export interface Window {
  readonly open: number
  /** null: it does not close within the seven days that are followed. */
  readonly close: number | null
  /** Earliest opening and latest closing within the band. */
  readonly band: readonly [number, number | null]
}

/** The windows of one pour. null where nothing of the kind happens within seven days. */
export interface Windows {
  /** Until twice the viscosity at the start. */
  readonly working: Window
  /** From syrup to honey: a stick's trail holds but still flows. */
  readonly marbling: Window | null
  /** First and half gel, min. */
  readonly gelMin: number | null
  readonly halfGelMin: number | null
  /** The next pour bonds by itself. */
  readonly recoat: Window
  /** Out of the mould. */
  readonly demould: Window
  /** For the cutter: practice, 7 days, 3 at least. */
  readonly machine: Window
}

/**
 * Surface conversion at which the recoat window closes. 0.8 puts the end at 16 h for the medium class and
 * 5.6 h for the thin one at 22 °C, where practice says 6-18 h and 3-6 h (fitted; no source).
 */
const RECOAT_CLOSES_AT = 0.8
/** A casting leaves the mould once its glass transition has passed the room by this, K: it is then a glass (practice 48-72 h for deep resins). */
const DEMOULD_OVER_ROOM_K = 5
/** Common practice: days from the last pour to the cutter, and the least. */
export const MACHINE_DAYS = 7
export const MACHINE_LEAST_DAYS = 3
/** What counts as "no longer hot" for the next pour, K above the room: practice. */
const COOL_WITHIN_K = 8

/** Windows of a pour from its history. */
export function windowsOf(record: ResinRecord, own: ResinResult): Windows {
  const { kinetics, flow } = record.model!
  const h = own.history
  const thick = thickeningOf(kinetics, flow, { timeS: h.timeS, tempC: h.meanC }, h.meanConversion)
  const spread = record.band.time
  const window = (open: number, close: number | null): Window => ({
    open,
    close,
    band: [open * (1 - spread), close === null ? null : close * (1 + spread)]
  })
  const end = h.timeS[h.timeS.length - 1]! / 60
  const syrup = crossing(h.timeS, h.meanViscosityPaS, SYRUP_PAS)
  const honey = crossing(h.timeS, h.meanViscosityPaS, HONEY_PAS)
  const surfaceGel = crossing(h.timeS, h.outerConversion, kinetics.gelConversion)
  const closes = crossing(h.timeS, h.outerConversion, RECOAT_CLOSES_AT)
  const cooled = cooledAt(h)
  const open = Math.max(surfaceGel ?? end, cooled)
  const roomC = h.outerC[h.outerC.length - 1]!
  const glassy = crossing(h.timeS, h.meanTgC, roomC + DEMOULD_OVER_ROOM_K)
  return {
    working: window(0, thick.doubleMin),
    marbling: syrup === null ? null : window(syrup, honey),
    gelMin: own.firstGelS === null ? null : own.firstGelS / 60,
    halfGelMin: own.halfGelS === null ? null : own.halfGelS / 60,
    // Hot until after it would close: pour as soon as it has cooled; the surface then wants sanding.
    recoat: window(open, closes === null ? null : Math.max(open, closes)),
    demould: window(glassy ?? end, null),
    machine: window(MACHINE_DAYS * 24 * 60, null)
  }
}

function crossing(timeS: ArrayLike<number>, value: ArrayLike<number>, level: number): number | null {
  const s = crossingS(timeS, value, level)
  return s === null ? null : s / 60
}

// When the top was last more than a few kelvin above where it ends, min; 0 if it never was.
function cooledAt(h: LayerHistory): number {
  const warm = h.outerC[h.outerC.length - 1]! + COOL_WITHIN_K
  for (let i = h.timeS.length - 1; i >= 0; i--) if (h.outerC[i]! > warm) return h.timeS[i]! / 60
  return 0
}

/** A pour's course for drawing: hottest temperature and viscosity over minutes, at most 120 points. */
export interface Curve {
  readonly min: readonly number[]
  readonly hottestC: readonly number[]
  readonly viscosityPaS: readonly number[]
  readonly conversion: readonly number[]
}

/** Thins a history to a curve: denser where something happens, as the samples are. */
export function curveOf(own: ResinResult): Curve {
  const h = own.history
  const step = Math.max(1, Math.ceil(h.timeS.length / 120))
  const min: number[] = []
  const hottestC: number[] = []
  const viscosity: number[] = []
  const conversion: number[] = []
  for (let i = 0; i < h.timeS.length; i += step) {
    min.push(round(h.timeS[i]! / 60, 1))
    hottestC.push(round(h.maxC[i]!, 2))
    viscosity.push(Number(h.meanViscosityPaS[i]!.toPrecision(4)))
    conversion.push(round(h.meanConversion[i]!, 4))
  }
  return { min, hottestC, viscosityPaS: viscosity, conversion }
}

function round(x: number, digits: number): number {
  return Number(x.toFixed(digits))
}
