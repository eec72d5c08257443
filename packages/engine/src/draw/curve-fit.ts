/**
 * A smooth curve through a run of points: cubic Bézier pieces, each fitted by least squares, joined in direction.
 *
 * Schneider, "An algorithm for automatically fitting digitized curves", Graphics Gems, 1990 (memory): points get
 * parameters by chord length; the two inner control points lie on the end tangents, their distances solve a
 * 2 × 2 system; parameters are improved by Newton's method; where the worst point still strays too far, the run
 * is parted there and both halves are fitted with a common tangent.
 */
export type Cubic = [number, number, number, number, number, number, number, number]

/** Improvements of the parameters before a run is parted. */
const ROUNDS = 6

/**
 * Cubics that pass within `tol` of each of the points from `first` to `last` of `p` (x0, y0, x1, y1, ...), no two
 * neighbours alike. `start` and `end` are unit tangents into the run at either end, null to take them from it.
 */
export function fitCubics(
  p: Float64Array,
  first: number,
  last: number,
  tol: number,
  start: readonly [number, number] | null,
  end: readonly [number, number] | null
): Cubic[] {
  const out: Cubic[] = []
  const runs = [{ first, last, start, end }]
  // The later half is put down first, so that pieces come in order.
  while (runs.length > 0) {
    const run = runs.pop()!
    const t1 = run.start ?? tangent(p, run.first, Math.min(run.last, run.first + REACH))
    const t2 = run.end ?? tangent(p, run.last, Math.max(run.first, run.last - REACH))
    const { cubic, worst } = fit(p, run.first, run.last, tol, t1, t2)
    if (worst < 0) {
      out.push(cubic)
      continue
    }
    const lo = Math.max(run.first, worst - REACH)
    const hi = Math.min(run.last, worst + REACH)
    const middle = unit(p[2 * lo]! - p[2 * hi]!, p[2 * lo + 1]! - p[2 * hi + 1]!)
    runs.push({ first: worst, last: run.last, start: [-middle[0], -middle[1]], end: run.end ?? t2 })
    runs.push({ first: run.first, last: worst, start: run.start ?? t1, end: middle })
  }
  return out
}

/** Points looked along for a tangent: a hand's tremble is a few points long (practice). */
const REACH = 10

/** The direction from point `from` towards point `to`. */
export function tangent(p: Float64Array, from: number, to: number): [number, number] {
  return unit(p[2 * to]! - p[2 * from]!, p[2 * to + 1]! - p[2 * from + 1]!)
}

function unit(x: number, y: number): [number, number] {
  const d = Math.hypot(x, y)
  return d > 0 ? [x / d, y / d] : [1, 0]
}

type Tangent = readonly [number, number]

// The best cubic, and the point where it strays beyond `tol` the most; -1 when none does.
function fit(p: Float64Array, first: number, last: number, tol: number, t1: Tangent, t2: Tangent) {
  const n = last - first + 1
  const u = new Float64Array(n)
  for (let k = 1; k < n; k++) {
    const a = 2 * (first + k)
    u[k] = u[k - 1]! + Math.hypot(p[a]! - p[a - 2]!, p[a + 1]! - p[a - 1]!)
  }
  const long = u[n - 1]!
  for (let k = 1; k < n; k++) u[k]! /= long
  let cubic = solve(p, first, last, u, t1, t2, long)
  if (n <= 2) return { cubic, worst: -1 }
  for (let round = 0; ; round++) {
    let worst = -1
    let most = tol * tol
    for (let k = 1; k < n - 1; k++) {
      const d2 =
        (at(cubic, 0, u[k]!) - p[2 * (first + k)]!) ** 2 +
        (at(cubic, 1, u[k]!) - p[2 * (first + k) + 1]!) ** 2
      if (d2 > most) {
        most = d2
        worst = first + k
      }
    }
    if (worst < 0) return { cubic, worst }
    // Far off, no parameter helps.
    if (round === ROUNDS || most > 16 * tol * tol) return { cubic, worst }
    for (let k = 1; k < n - 1; k++) u[k] = nearer(cubic, p[2 * (first + k)]!, p[2 * (first + k) + 1]!, u[k]!)
    for (let k = 1; k < n; k++) u[k] = Math.max(u[k]!, u[k - 1]!)
    cubic = solve(p, first, last, u, t1, t2, long)
  }
}

function solve(
  p: Float64Array,
  first: number,
  last: number,
  u: Float64Array,
  t1: Tangent,
  t2: Tangent,
  long: number
): Cubic {
  const [x0, y0, x3, y3] = [p[2 * first]!, p[2 * first + 1]!, p[2 * last]!, p[2 * last + 1]!]
  let [c00, c01, c11, r0, r1] = [0, 0, 0, 0, 0]
  const dot = t1[0] * t2[0] + t1[1] * t2[1]
  for (let k = 0; k < u.length; k++) {
    const t = u[k]!
    const s = 1 - t
    const [b1, b2] = [3 * s * s * t, 3 * s * t * t]
    const [near, far] = [s * s * s + b1, t * t * t + b2]
    const dx = p[2 * (first + k)]! - x0 * near - x3 * far
    const dy = p[2 * (first + k) + 1]! - y0 * near - y3 * far
    c00 += b1 * b1
    c01 += b1 * b2 * dot
    c11 += b2 * b2
    r0 += b1 * (dx * t1[0] + dy * t1[1])
    r1 += b2 * (dx * t2[0] + dy * t2[1])
  }
  const det = c00 * c11 - c01 * c01
  let a1 = det === 0 ? 0 : (r0 * c11 - r1 * c01) / det
  let a2 = det === 0 ? 0 : (c00 * r1 - c01 * r0) / det
  // A handle that is none, or longer than the run, would loop: a third of the chord is the usual stand-in.
  const chord = Math.hypot(x3 - x0, y3 - y0)
  if (!(a1 > 1e-6 * chord && a2 > 1e-6 * chord && a1 <= long && a2 <= long)) a1 = a2 = chord / 3
  return [x0, y0, x0 + a1 * t1[0], y0 + a1 * t1[1], x3 + a2 * t2[0], y3 + a2 * t2[1], x3, y3]
}

function at(c: Cubic, axis: 0 | 1, t: number): number {
  const s = 1 - t
  return (
    s * s * s * c[axis]! +
    3 * s * s * t * c[2 + axis]! +
    3 * s * t * t * c[4 + axis]! +
    t * t * t * c[6 + axis]!
  )
}

// One step of Newton's method towards the parameter nearest to a point.
function nearer(c: Cubic, x: number, y: number, t: number): number {
  const s = 1 - t
  const first = (k: 0 | 1) =>
    3 * (s * s * (c[2 + k]! - c[k]!) + 2 * s * t * (c[4 + k]! - c[2 + k]!) + t * t * (c[6 + k]! - c[4 + k]!))
  const second = (k: 0 | 1) =>
    6 * (s * (c[4 + k]! - 2 * c[2 + k]! + c[k]!) + t * (c[6 + k]! - 2 * c[4 + k]! + c[2 + k]!))
  const [ex, ey, fx, fy] = [at(c, 0, t) - x, at(c, 1, t) - y, first(0), first(1)]
  const below = fx * fx + fy * fy + ex * second(0) + ey * second(1)
  return below > 0 ? Math.min(1, Math.max(0, t - (ex * fx + ey * fy) / below)) : t
}
