import type { Complaints } from './complaint.ts'

/**
 * Middle of an arc (NISTIR 6556, 3.5.3), in its plane.
 *
 * Axes p and q are taken so that the third axis looks at the reader when p runs right and q up: x y (G17), z x (G18),
 * y z (G19). Clockwise is then as seen from the positive end of the third axis.
 *
 * Radius form, from (p0, q0) to (p1, q1): with d the chord and h = √(R² − d²/4), the middle lies h to the right of the
 * way for a clockwise arc of at most half a turn (R > 0), to the left counter-clockwise; R < 0 turns the side.
 * Check: the standard's example, from (7, 7) to (10, 16) about (10, 11), radius 5.
 */
export interface Middle {
  p: number
  q: number
}

/** How far the distances of start and end from the middle may differ (3.5.3.2). */
export const RADIUS_WITHIN_MM = 0.002
export const RADIUS_WITHIN_INCH = 0.0002

/** Writes the middle of a radius-form arc; complains where there is none. */
export function middleByRadius(
  out: Middle,
  complaints: Complaints,
  column: number,
  p0: number,
  q0: number,
  p1: number,
  q1: number,
  radius: number,
  clockwise: boolean,
  within: number
): void {
  const dp = p1 - p0
  const dq = q1 - q0
  const chord = Math.hypot(dp, dq)
  if (chord === 0)
    complaints.fail(
      column,
      'An arc given by its radius ends where it starts: its middle is not known.',
      'start and end alike',
      'another end, or I J K'
    )
  const size = Math.abs(radius)
  const half = chord / 2
  if (half > size + within)
    complaints.fail(
      column,
      'The radius is too small to reach the end of the arc.',
      `a radius of ${shown(size)} mm for a chord of ${shown(chord)} mm`,
      `at least ${shown(half)} mm`
    )
  const h = size <= half ? 0 : Math.sqrt(size * size - half * half)
  const side = clockwise === radius > 0 ? h / chord : -h / chord
  out.p = (p0 + p1) / 2 + side * dq
  out.q = (q0 + q1) / 2 - side * dp
}

/** Complains when start and end do not lie equally far from the middle. */
export function checkMiddle(
  m: Middle,
  complaints: Complaints,
  column: number,
  p0: number,
  q0: number,
  p1: number,
  q1: number,
  within: number
): void {
  const r0 = Math.hypot(p0 - m.p, q0 - m.q)
  const r1 = Math.hypot(p1 - m.p, q1 - m.q)
  if (r0 === 0)
    complaints.fail(
      column,
      'The middle of the arc is its start: it has no radius.',
      'a radius of 0',
      'a middle away from the start'
    )
  // A hair more than the tolerance: what is written as exactly the tolerance must pass in spite of rounding.
  if (!(Math.abs(r0 - r1) <= within + 1e-9))
    complaints.fail(
      column,
      'Start and end of the arc do not lie equally far from its middle.',
      `${shown(r0)} and ${shown(r1)} mm`,
      `at most ${shown(within)} mm apart`
    )
}

/** Length of an arc, mm, with its rise along the third axis. */
export function arcLength(
  m: Middle,
  p0: number,
  q0: number,
  p1: number,
  q1: number,
  clockwise: boolean,
  rise: number
): number {
  const a0 = Math.atan2(q0 - m.q, p0 - m.p)
  const a1 = Math.atan2(q1 - m.q, p1 - m.p)
  let turn = clockwise ? a0 - a1 : a1 - a0
  if (turn <= 0) turn += 2 * Math.PI
  if (p0 === p1 && q0 === q1) turn = 2 * Math.PI
  return Math.hypot(turn * Math.hypot(p0 - m.p, q0 - m.q), rise)
}

const shown = (mm: number): string => String(Number(mm.toFixed(4)))
