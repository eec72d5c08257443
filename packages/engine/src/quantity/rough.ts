import { decimals, formatMass, formatMinutes } from './format.ts'

/**
 * Figures as sure as what they rest on. Predicted times go by rates known within ± 30 %: two figures are all they
 * carry.
 */

/** Minutes up to which a time is said in steps of five, min; under two steps it stands as it is. */
const FINE_MIN = 180
const STEP_MIN = 5
/** From this many hours a time is said in days. */
const MOST_HOURS = 100

/**
 * A predicted time: "25 min", "2 h 25", "17 h", "4.3 d". `down` never says more than it is: for what must be done
 * within it.
 */
export function roughTime(min: number, way: 'nearest' | 'down' = 'nearest'): string {
  const round = way === 'down' ? Math.floor : Math.round
  if (min < 2 * STEP_MIN) return formatMinutes(round(min))
  if (min < FINE_MIN) return formatMinutes(STEP_MIN * round(min / STEP_MIN))
  const hours = min / 60
  return hours < MOST_HOURS
    ? `${decimals(twoFigures(hours, round), 1)} h`
    : `${decimals(twoFigures(hours / 24, round), 1)} d`
}

/** The same in a sentence, where the rounding shows: "about 17 h". */
export function aboutTime(min: number, way: 'nearest' | 'down' = 'nearest'): string {
  return min < FINE_MIN ? roughTime(min, way) : `about ${roughTime(min, way)}`
}

/** A mass that a maker puts on by hand, two figures: "430 g", "1.4 kg". `up` never says less than it is. */
export function roughMass(g: number, way: 'nearest' | 'up' = 'nearest'): string {
  return kilos(g < 1 ? g : twoFigures(g, way === 'up' ? Math.ceil : Math.round))
}

/** Grams below a kilogram, else kilograms with two decimals at most: "804 g", "3.91 kg". */
export function kilos(g: number): string {
  return Math.abs(g) < 1000 ? formatMass(g) : `${decimals(g / 1000, 2)} kg`
}

/** A number with the sign of a minus, not of a hyphen. */
export function trueMinus(words: string): string {
  return words.replace(/^-/, '−')
}

// 1e-9: what is two figures already stays so.
function twoFigures(x: number, round: (y: number) => number): number {
  const step = 10 ** (Math.floor(Math.log10(x)) - 1)
  const nudge = round === Math.floor ? 1e-9 : round === Math.ceil ? -1e-9 : 0
  return round(x / step + nudge) * step
}
