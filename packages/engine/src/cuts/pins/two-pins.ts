/**
 * A part laid on two round pins with clearance: how far it can lie off.
 *
 *   turn        φ = (c1 + c2)/(2·L)                     rad, greatest
 *   place       e(P) ≤ ci/2 + ri·φ                      from either pin; the lesser of both holds
 *   pitch       |ΔL| ≤ (c1 + c2)/2                      else it jams or does not go on
 *   slot, or a pin flattened to a land b:  e = (−b + √(b² + D² − d²))/2 in line, φ unchanged
 *
 *   c1, c2  clearance on the diameter, mm    L  distance of the pins, mm    r1, r2  distance of P from a pin, mm
 *   D, d    diameters of hole and pin, mm
 *
 * Source: derived (machining.md B6): the holes shift against their pins by c/2 at most, in opposite senses across the
 * line for the turn. Attained at places in line with the pins on the far side of one.
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

/** How far a place can lie off, mm: `r1Mm` and `r2Mm` from the pins. */
export function offMm(pins: TwoPins, r1Mm: number, r2Mm: number): number {
  const turn = turnRad(pins)
  return Math.min(pins.clearance1Mm / 2 + r1Mm * turn, pins.clearance2Mm / 2 + r2Mm * turn)
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
