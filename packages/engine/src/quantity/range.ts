/**
 * The door check of the models.
 *
 * Returns `value` when `low <= value <= high`; else throws a RangeError that names what was given and what is
 * allowed. NaN and, with finite bounds, infinities are refused. `unit` is left out when `what` says it.
 */
export function inRange(what: string, value: number, low: number, high: number, unit = ''): number {
  if (!(value >= low && value <= high)) {
    const of = unit === '' ? '' : ` ${unit}`
    throw new RangeError(`${what} is ${value}${of}; allowed ${low} to ${high}${of}`)
  }
  return value
}

/** As {@link inRange}, and a whole number. */
export function wholeInRange(what: string, value: number, low: number, high: number): number {
  if (!Number.isInteger(value)) throw new RangeError(`${what} is ${value}; a whole number is asked for`)
  return inRange(what, value, low, high)
}
