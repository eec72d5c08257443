/**
 * The door check of the timber models.
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
