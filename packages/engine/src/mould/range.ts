/**
 * The door check of the mould models.
 *
 * Returns `value` when `low <= value <= high`; else throws a RangeError that names what was given and what is
 * allowed. NaN and, with finite bounds, infinities are refused.
 */
export function inRange(what: string, value: number, low: number, high: number, unit: string): number {
  if (!(value >= low && value <= high)) {
    throw new RangeError(`${what} is ${value} ${unit}; allowed ${low} to ${high} ${unit}`)
  }
  return value
}

/** As {@link inRange}, and a whole number. */
export function wholeInRange(what: string, value: number, low: number, high: number): number {
  if (!Number.isInteger(value)) throw new RangeError(`${what} is ${value}; a whole number is asked for`)
  return inRange(what, value, low, high, '')
}
