import { decimals, formatMinutes } from '../quantity/format.ts'
import {
  factorFor,
  type LabelFigures,
  LEAST_FACTOR,
  labelBase,
  MOST_FACTOR,
  type OutOfReach,
  RATE_FIGURES,
  type RateFigure,
  scaled
} from './label.ts'
import type { ResinModel } from './model.ts'

/** What one figure says by itself, the heat being the class's. */
export interface FigureSays {
  readonly figure: RateFigure
  readonly called: string
  /** Times the class's speed; or which way it lies beyond 0.1 to 10 times. */
  readonly factor: number | OutOfReach
  /** ln(what the compromise has over what the figure asks for), of the speed; 0 where it is met. */
  readonly off: number
  /** Where it lies beyond: times the class's speed that it asks for; null beyond a thousand times. */
  readonly beyond: number | null
}

/** A resin by its label. */
export interface LabelFit {
  readonly model: ResinModel
  /** Speed and heat taken, times the class's. */
  readonly factor: number
  readonly heat: number
  /** 90 % of the speed either way that the label leaves, as a share of times; null without a figure. */
  readonly time: number | null
  /**
   * Where figures contradict each other or the class: the share of times that covers the speeds of all of them from
   * the one taken, at most 0.6; else null. The band of times is then no narrower than the class's.
   */
  readonly spread: number | null
  /** What no resin can do, as a sentence; null where there is no such thing. */
  readonly impossible: string | null
  readonly figures: readonly FigureSays[]
  /** The two figures that differ most, and by what factor, where that is more than their doubts allow. */
  readonly conflict: { readonly fast: FigureSays; readonly slow: FigureSays; readonly times: number } | null
}

/** Heat of a maker's resin against its class: one sigma of its logarithm, as in the cup fit. */
const HEAT_WIDTH = 0.22
/** Heats taken at all, times the class's: what is left beyond is a conflict, not a hotter resin (practice). */
const LEAST_HEAT = 0.8
const MOST_HEAT = 1.2
/** Widest band of times from a label: corners must stay resins. */
export const WIDEST = 0.6
/** Figures out of reach are looked for to this factor, to say by how much. */
const FAR = 1000
/** Heats looked at. */
const HEATS = [-1, 0, 1] as const
export const NINETY = 1.645

/**
 * A resin from the figures of its label: speed (a factor on both rates) and heat.
 *
 * Each figure gives, for three heats, the speed at which the model meets it (label.ts, root-finding); between
 * them the logarithm of that speed is taken as a parabola in the logarithm of the heat. Then
 *
 *   minimise  Σ((x − x_i(y))/σ_i)² + (y/0.22)²       x = ln speed, y = ln heat
 *
 * One figure is met exactly at the class's heat. Two that ask for different speeds are met by another heat as
 * far as that is likely (a depth and a film's gel time differ in what they ask of heat), and what is left is
 * shared by their doubts. The heat stays within 0.8 to 1.2 of the class's. Figures out of reach of 0.1 to 10 are left out and told.
 *
 * Check: figures reckoned from a model give that model back (tests). Limits: a label is written for selling.
 */
export function labelFit(resin: ResinModel, label: LabelFigures): LabelFit {
  const base = labelBase(resin, label)
  const told = RATE_FIGURES.flatMap(f => {
    const factor = factorFor(base, label, f.figure)
    return factor === undefined ? [] : [{ ...f, factor }]
  })
  const met = told.flatMap(f => (typeof f.factor === 'number' ? [{ ...f, factor: f.factor }] : []))
  const asks = met.map(f =>
    parabola(f.factor, met.length > 1 ? HEATS.map(h => atHeat(base, label, f.figure, h)) : [])
  )
  const speedAt = (y: number): number => {
    let sum = 0
    let weight = 0
    met.forEach((f, i) => {
      sum += asks[i]!(y) / f.sigma ** 2
      weight += 1 / f.sigma ** 2
    })
    return weight === 0 ? 0 : sum / weight
  }
  const costAt = (y: number): number =>
    met.reduce((sum, f, i) => sum + ((speedAt(y) - asks[i]!(y)) / f.sigma) ** 2, (y / HEAT_WIDTH) ** 2)
  let y = 0
  for (let k = -50; k <= 50; k++) {
    const tried = (Math.abs(k) / 50) * Math.log(k < 0 ? LEAST_HEAT : MOST_HEAT)
    if (costAt(tried) < costAt(y) - 1e-9) y = tried
  }
  const x = Math.min(Math.log(MOST_FACTOR), Math.max(Math.log(LEAST_FACTOR), speedAt(y)))
  const figures = told.map((f): FigureSays => {
    const i = met.findIndex(m => m.figure === f.figure)
    const far = typeof f.factor === 'number' ? null : factorFor(base, label, f.figure, FAR)
    return {
      figure: f.figure,
      called: f.called,
      factor: f.factor,
      off: i < 0 ? 0 : x - asks[i]!(y),
      beyond: typeof far === 'number' ? far : null
    }
  })
  const conflict = conflictOf(figures)
  const impossible = impossibleOf(label)
  const weight = met.reduce((sum, f) => sum + 1 / f.sigma ** 2, 0)
  return {
    model: scaled(base, Math.exp(x), Math.exp(y)),
    factor: Math.exp(x),
    heat: Math.exp(y),
    time: met.length === 0 ? null : Math.exp(NINETY / Math.sqrt(weight)) - 1,
    spread:
      conflict || impossible !== null || met.length < told.length
        ? spreadOf(
            figures.map(f => f.off),
            Math.abs(y) > 0 ? met.map(f => x - Math.log(f.factor)) : []
          )
        : null,
    impossible,
    figures,
    conflict
  }
}

/** Share of times either way that covers figures met only off by so much, logarithms of the speed. */
function spreadOf(...offs: readonly (readonly number[])[]): number {
  const all = offs.flat()
  // What asks for a slower resin takes e^off times as long; what asks for a faster one, as much less.
  return Math.min(
    WIDEST,
    all.reduce((most, off) => Math.max(most, off > 0 ? Math.exp(off) - 1 : 1 - Math.exp(off)), 0)
  )
}

function impossibleOf({ gelTime, hardTime }: LabelFigures): string | null {
  if (!gelTime || !hardTime || hardTime.tempC > gelTime.tempC || hardTime.minutes > gelTime.minutes)
    return null
  return `Hard after ${formatMinutes(hardTime.minutes)} and gelled after ${formatMinutes(gelTime.minutes)} is impossible: nothing is hard before it gels.`
}

/** The speed a figure asks for at a heat off by so many sigmas, its logarithm; null when out of reach. */
function atHeat(base: ResinModel, label: LabelFigures, figure: RateFigure, sigmas: number): number | null {
  if (sigmas === 0 || figure === 'gelTime' || figure === 'hardTime') return null
  const factor = factorFor(scaled(base, 1, Math.exp(sigmas * HEAT_WIDTH)), label, figure)
  return typeof factor === 'number' ? Math.log(factor) : null
}

/** ln speed over ln heat, through the class's heat and as much of both sides as is known. */
function parabola(factor: number, sides: readonly (number | null)[]): (y: number) => number {
  const middle = Math.log(factor)
  const low = sides[0] ?? null
  const high = sides[2] ?? null
  const slope =
    low !== null && high !== null
      ? (high - low) / 2
      : low !== null
        ? middle - low
        : high !== null
          ? high - middle
          : 0
  const bend = low !== null && high !== null ? (high + low) / 2 - middle : 0
  return y => middle + slope * (y / HEAT_WIDTH) + bend * (y / HEAT_WIDTH) ** 2
}

function conflictOf(figures: readonly FigureSays[]): LabelFit['conflict'] {
  const numbers = figures.filter(f => typeof f.factor === 'number')
  const fast = [...numbers].sort((a, b) => a.off - b.off)[0]
  const slow = [...numbers].sort((a, b) => b.off - a.off)[0]
  if (!fast || !slow || fast === slow) return null
  const sigma = (f: FigureSays): number => RATE_FIGURES.find(r => r.figure === f.figure)!.sigma
  if (slow.off - fast.off <= NINETY * Math.hypot(sigma(fast), sigma(slow))) return null
  return { fast, slow, times: (fast.factor as number) / (slow.factor as number) }
}

/** Plain sentences for what does not go together on a label; none when all does. */
export function labelWords(fit: LabelFit): readonly string[] {
  const { conflict, figures } = fit
  const out: string[] = fit.impossible === null ? [] : [fit.impossible]
  for (const f of figures)
    if (typeof f.factor === 'string')
      out.push(`The ${f.called} asks for a resin ${beyondWords(f)} than its class: it is left out.`)
  if (conflict) {
    const { fast, slow, times } = conflict
    out.push(
      `${capital(fast.called)} says ${pace(fast.factor as number)}, ${slow.called} says ${pace(slow.factor as number)}: they differ by a factor ${decimals(times, 1)}. Taken: ${pace(fit.factor)}, with ${decimals(fit.heat * 100, 0)} % of the class’s heat.`
    )
  }
  return out
}

function beyondWords({ factor, beyond }: FigureSays): string {
  const times = beyond === null ? null : beyond > 1 ? beyond : 1 / beyond
  return `${times === null ? `more than ${FAR}` : decimals(times, 0)} times ${factor}`
}

function pace(factor: number): string {
  const times = (x: number): string => decimals(x, x < 3 ? 1 : 0)
  if (factor > 0.97 && factor < 1.03) return 'as fast as the class'
  return factor >= 1
    ? `${times(factor)} times faster than the class`
    : `${times(1 / factor)} times slower than the class`
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1)
}
