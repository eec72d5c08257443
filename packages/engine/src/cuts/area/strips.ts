/** A part of a long piece that is worked at one place of the bed, along its longer axis, mm. */
export interface Strip {
  readonly fromMm: number
  readonly toMm: number
}

/**
 * A piece longer than the machine travels, moved along on pins: strips of equal length that overlap by `overlapMm`, as
 * few as do. All moves are by the same pitch, so that one place of the pins serves them. One strip where all of it is
 * within the travel.
 *
 * n = ⌈(L − o) / (T − o)⌉ strips of length (L + (n − 1)·o) / n.
 *
 * Check: test/cuts/area/strips.test.ts (count, length and overlap by hand; the closed form by counting up).
 *
 * @throws Error for a travel that is not larger than the overlap, or for no length
 */
export function strips(fromMm: number, toMm: number, travelMm: number, overlapMm: number): Strip[] {
  if (!(travelMm > overlapMm && overlapMm >= 0))
    throw new Error(`strips of ${travelMm} mm that overlap by ${overlapMm} mm; the overlap must be shorter`)
  const long = toMm - fromMm
  if (!(long > 0)) throw new Error(`strips over ${long} mm; the length must be above 0`)
  const count = Math.max(1, Math.ceil((long - overlapMm) / (travelMm - overlapMm) - 1e-9))
  const each = (long + (count - 1) * overlapMm) / count
  const pitch = each - overlapMm
  return Array.from({ length: count }, (_, i) => ({
    fromMm: fromMm + i * pitch,
    toMm: i === count - 1 ? toMm : fromMm + i * pitch + each
  }))
}
