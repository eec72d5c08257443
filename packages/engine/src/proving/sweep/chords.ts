/** Greatest distance of a chord from its arc, mm. */
const CHORD_MM = 0.002

/**
 * Calls back with the chords of an arc about (a, b) in the plane of its first two axes, rising evenly along the third.
 * Ending where it starts it is a full turn.
 *
 *   chord of an angle θ: sagitta r·(1 − cos(θ/2)) ≤ tol = 0.002 mm
 *
 * Limits: a wall that an arc cuts is swept up to tol nearer the middle of the arc than it is, 2/3·tol in the mean: a
 * hundredth of a cell of 0.2 mm, a 25th of the least that is told apart. Arcs of more than 100,000 chords are coarser.
 * Check: area within the chords of a circle against πr², and the ring at three sizes of cell (test).
 */
export function forChords(
  p0: number,
  q0: number,
  h0: number,
  p1: number,
  q1: number,
  h1: number,
  a: number,
  b: number,
  clockwise: boolean,
  chord: (p: number, q: number, h: number) => void
): void {
  const from = Math.atan2(q0 - b, p0 - a)
  let turn = Math.atan2(q1 - b, p1 - a) - from
  const full = Math.abs(p1 - p0) < 1e-9 && Math.abs(q1 - q0) < 1e-9
  if (clockwise) {
    while (turn >= -1e-12) turn -= 2 * Math.PI
    if (full) turn = -2 * Math.PI
  } else {
    while (turn <= 1e-12) turn += 2 * Math.PI
    if (full) turn = 2 * Math.PI
  }
  const r0 = Math.hypot(p0 - a, q0 - b)
  const r1 = Math.hypot(p1 - a, q1 - b)
  const r = Math.max(r0, r1, 1e-9)
  const most = 2 * Math.acos(Math.max(0, 1 - Math.min(1, CHORD_MM / r)))
  const n = Math.max(1, Math.min(100_000, Math.ceil(Math.abs(turn) / Math.max(most, 1e-4))))
  for (let k = 1; k < n; k++) {
    const t = k / n
    const at = from + t * turn
    const rk = r0 + t * (r1 - r0)
    chord(a + rk * Math.cos(at), b + rk * Math.sin(at), h0 + t * (h1 - h0))
  }
  chord(p1, q1, h1)
}
