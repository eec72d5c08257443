/**
 * A part laid on two round pins with clearance: how far it can lie off.
 *
 *   turn        φ = (c1 + c2)/(2·L)                     rad, greatest
 *   place       e(P) ≤ c1/2 + r1·φ                      a bound, attained in line with the pins beyond the first
 *   exactly     e(P) = max |(a − v·θ, b1 + u·θ)|,  θ = (b2 − b1)/L,  a² + bi² ≤ (ci/2)²
 *   pitch       |ΔL| ≤ (c1 + c2)/2                      else it jams or does not go on
 *   slot, or a pin flattened to a land b:  e = (−b + √(b² + D² − d²))/2 in line, φ unchanged
 *
 *   c1, c2  clearance on the diameter, mm    L  distance of the pins, mm    r1, r2  distance of P from a pin, mm
 *   D, d    diameters of hole and pin, mm           u, v  place along and across the line, from the first pin, mm
 *   a, bi   shift of the holes in line (both alike: the part is rigid) and across, mm
 *
 * Source: derived (machining.md B6): the holes shift against their pins by c/2 at most, in opposite senses across the
 * line for the turn. The greatest of a convex function stands on the rim of what is allowed, so one angle is searched.
 * Check: c 0.05 and 0.05, L 200: 0.25 mrad, at 300 mm 0.10 mm; a seeded simulation of a rigid part on two pins.
 *
 * Limits: rigid part, round holes square to the face; small turns (sin φ = φ to 1e-6 below 0.1 rad).
 */
export interface TwoPins {
  readonly clearance1Mm: number
  readonly clearance2Mm: number
  readonly pitchMm: number
}

/** Greatest turn, rad; half a turn where the pins stand on one place: then nothing holds it. */
export function turnRad({ clearance1Mm, clearance2Mm, pitchMm }: TwoPins): number {
  return pitchMm > 0 ? (clearance1Mm + clearance2Mm) / (2 * pitchMm) : Math.PI
}

/** Bound on how far a place `rMm` from the first pin can lie off, mm. */
export function boundMm(pins: TwoPins, rMm: number): number {
  return pins.clearance1Mm / 2 + rMm * turnRad(pins)
}

/** Shifts in line that are tried, from none to all the play. */
const TRIED = 24

/** How far a place can lie off, mm: `uMm` along the line from the first pin to the second, `vMm` across it. */
export function offMm(pins: TwoPins, uMm: number, vMm: number): number {
  const { clearance1Mm, clearance2Mm, pitchMm } = pins
  if (pitchMm <= 0) return boundMm(pins, Math.hypot(uMm, vMm))
  const [free1, free2] = [clearance1Mm / 2, clearance2Mm / 2]
  const least = Math.min(free1, free2)
  let most = 0
  for (let k = 0; k <= TRIED; k++) {
    const a = least * Math.sin((Math.PI / 2) * (k / TRIED))
    const b1 = Math.sqrt(Math.max(0, free1 * free1 - a * a))
    for (const sign of [1, -1]) {
      const b2 = sign * Math.sqrt(Math.max(0, free2 * free2 - a * a))
      const turn = (b2 - b1) / pitchMm
      most = Math.max(most, Math.hypot(Math.abs(a) + Math.abs(vMm * turn), b1 + uMm * turn))
    }
  }
  return most
}

/** How far the distance of the holes may differ from that of the pins, mm. */
export function pitchTakenMm({ clearance1Mm, clearance2Mm }: TwoPins): number {
  return (clearance1Mm + clearance2Mm) / 2
}

/**
 * How far a part may lie off in line with a pin flattened to a land, to either side, mm.
 * Check: a land as wide as the pin gives half the clearance.
 */
export function landFreedomMm(holeMm: number, pinMm: number, landMm: number): number {
  return (-landMm + Math.sqrt(landMm ** 2 + holeMm ** 2 - pinMm ** 2)) / 2
}
