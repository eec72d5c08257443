/** Less than this is no need, g: what sums of shares are off by. */
export const HAIR_G = 1e-6
/** Least step of mass, g: finer than any pack is labelled. */
export const LEAST_STEP_G = 0.01
/** Of a step: what sums of sizes are off by in floating point. */
export const HAIR = 1e-6

/** Greatest common measure of two masses, g (Euclid); less than {@link LEAST_STEP_G} where there is none. */
export function commonMassG(a: number, b: number): number {
  if (b < LEAST_STEP_G / 2) return a
  return commonMassG(b, Math.max(0, a - Math.floor(a / b + HAIR) * b))
}
