import { fromFixedUnit } from './unit.ts'

/** Fixed number of decimals, without a trailing zero beyond `least` decimals and without "-0". */
export function decimals(value: number, most: number, least = 0): string {
  let text = value.toFixed(most)
  if (text.includes('.')) {
    const cut = text.length - (most - least)
    let end = text.length
    while (end > cut && text[end - 1] === '0') end--
    text = text.slice(0, end)
    if (text.endsWith('.')) text = text.slice(0, -1)
  }
  return /^-0(\.0*)?$/.test(text) ? text.slice(1) : text
}

/** A length in mm as a maker reads it: one decimal, "14.0 mm"; below 1 mm two. */
export function formatMm(mm: number): string {
  return `${decimals(mm, Math.abs(mm) < 1 ? 2 : 1, 1)} mm`
}

/** Grams below 10 kg, else kilograms. */
export function formatMass(g: number): string {
  if (Math.abs(g) >= 10_000) return `${decimals(g / 1000, 1)} kg`
  return `${decimals(g, Math.abs(g) < 20 ? 1 : 0)} g`
}

/** Millilitres below 10 l, else litres. */
export function formatVolume(ml: number): string {
  if (Math.abs(ml) >= 10_000) return `${decimals(ml / 1000, 1)} l`
  return `${decimals(ml, Math.abs(ml) < 20 ? 1 : 0)} ml`
}

/** Whole degrees Celsius. */
export function formatC(c: number): string {
  return `${decimals(c, 0)} °C`
}

/** Minutes as a maker says them: "45 min", "3 h 20", "2 d 4 h". */
export function formatMinutes(min: number): string {
  const whole = Math.round(min)
  if (whole < 90) return `${whole} min`
  if (whole < 48 * 60) {
    const rest = whole % 60
    return rest === 0
      ? `${Math.floor(whole / 60)} h`
      : `${Math.floor(whole / 60)} h ${String(rest).padStart(2, '0')}`
  }
  const hours = Math.round(whole / 60)
  return hours % 24 === 0 ? `${hours / 24} d` : `${Math.floor(hours / 24)} d ${hours % 24} h`
}

/** Minutes of work in hours, never in days: "54 h 14"; "45 min" under an hour and a half. */
export function formatHours(min: number): string {
  const whole = Math.round(min)
  return whole < 90
    ? formatMinutes(min)
    : `${Math.floor(whole / 60)} h ${String(whole % 60).padStart(2, '0')}`
}

/**
 * A length as an inch fraction to the nearest 1/`denominator` inch: "1 1/2 in". For reading only: the
 * stored value stays in millimetres, so switching back and forth does not drift.
 */
export function formatInchFraction(mm: number, denominator = 16): string {
  const sixteenths = Math.round(fromFixedUnit(Math.abs(mm), 'in') * denominator)
  const sign = mm < 0 && sixteenths > 0 ? '-' : ''
  const whole = Math.floor(sixteenths / denominator)
  let top = sixteenths % denominator
  let bottom = denominator
  while (top > 0 && top % 2 === 0 && bottom % 2 === 0) {
    top /= 2
    bottom /= 2
  }
  if (top === 0) return `${sign}${whole} in`
  return whole === 0 ? `${sign}${top}/${bottom} in` : `${sign}${whole} ${top}/${bottom} in`
}

/** A mass as the scale shows it, with all its decimals: "276.0". */
export function scaleWords(g: number, places: number): string {
  return decimals(g, places, places)
}
