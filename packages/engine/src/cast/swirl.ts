import type { ResinRecord } from '../catalogue/resin.ts'
import { crossingS } from '../resin/conversion.ts'
import { cupHistory } from '../resin/cup.ts'
import { conversionAtViscosity, HONEY_PAS, SYRUP_PAS } from '../resin/thickening.ts'
import type { Vessel } from '../resin/vessel.ts'

/** One colour of a marbled pour, mixed in its own cup. */
export interface Colour {
  readonly massG: number
  /** Mixed so many minutes after the first colour. */
  readonly laterMin: number
  /** Times the speed of the clear mix: colourants change it, by the maker's own test cup. */
  readonly pace: number
}

/** When a colour can be drawn, min after the first colour was mixed: from syrup to honey in its cup. */
export interface Swirl {
  readonly index: number
  /** null: not within a day. */
  readonly openMin: number | null
  readonly closeMin: number | null
  /** At the ends of the band of times: earliest opening, latest closing. */
  readonly band: readonly [number | null, number | null]
}

/** Followed so long, h. */
const UNTIL_H = 48

/**
 * The swirl window of each colour in its own cup: once poured out, a stick's trail holds but still flows.
 *
 * The cup's own heat counts, so that a larger share of a pour is ready sooner.
 * Limits: a bare mix of the class; what a colourant does to it is the maker's `pace`.
 */
export function swirlsOf(
  record: ResinRecord,
  colours: readonly Colour[],
  cup: { readonly roomC: number; readonly startC: number; readonly rateFactor: number }
): Swirl[] {
  return colours.map((c, index): Swirl => {
    const at = (factor: number) => {
      const [open, close] = spanOf(record, c, { ...cup, rateFactor: cup.rateFactor * c.pace * factor })
      return [open === null ? null : open + c.laterMin, close === null ? null : close + c.laterMin] as const
    }
    const [openMin, closeMin] = at(1)
    const { time } = record.band
    return { index, openMin, closeMin, band: [at(1 / (1 - time))[0], at(1 / (1 + time))[1]] }
  })
}

/** The span in which every colour can be drawn; null when they do not meet. */
export function meeting(swirls: readonly Swirl[]): readonly [number, number] | null {
  const open = Math.max(...swirls.map(s => s.openMin ?? Number.POSITIVE_INFINITY))
  const close = Math.min(...swirls.map(s => s.closeMin ?? Number.POSITIVE_INFINITY))
  return open < close ? [open, close] : null
}

function spanOf(
  record: ResinRecord,
  colour: Colour,
  cup: { readonly roomC: number; readonly startC: number; readonly rateFactor: number }
): readonly [number | null, number | null] {
  const resin = record.model!
  const volumeMl = (colour.massG / resin.bulk.liquidKgM3) * 1000
  const vessel: Vessel = {
    // As wide as it is filled high, with room to stir.
    diameterMm: Math.cbrt((4 * volumeMl * 1000) / Math.PI),
    capacityMl: volumeMl * 1.5
  }
  const { history: h } = cupHistory({
    resin,
    massG: colour.massG,
    vessel,
    roomC: cup.roomC,
    startC: cup.startC,
    rateFactor: cup.rateFactor,
    effort: 'quick',
    untilH: UNTIL_H
  })
  // What it will be like once poured out at the room's temperature, as for a batch: in the warm cup it looks thinner.
  const at = (pas: number) => {
    const conversion = conversionAtViscosity(resin.flow, resin.kinetics.gelConversion, cup.roomC, pas)
    const s = crossingS(h.timeS, h.meanConversion, conversion)
    return s === null ? null : s / 60
  }
  return [at(SYRUP_PAS), at(HONEY_PAS)]
}
