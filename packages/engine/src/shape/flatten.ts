/**
 * Curves as chords that stray from them by at most a stated tolerance.
 *
 * Elliptical arcs are carried as centre plus two conjugate half-diameters u and v,
 *
 *   P(t) = C + u·cos t + v·sin t,      t from t0 to t0 + dt
 *
 * which every affine map keeps exactly: it only has to map C, u and v.
 *
 * All functions call `emit` with each point after the start; the last one is the end of the curve.
 */
export interface Arc {
  readonly cx: number
  readonly cy: number
  readonly ux: number
  readonly uy: number
  readonly vx: number
  readonly vy: number
  readonly t0: number
  readonly dt: number
}

/** How an arc of the unit circle is divided: `count` chords, inner points on radius `rho`, ends on radius 1. */
export interface ArcDivision {
  readonly count: number
  readonly rho: number
}

/**
 * Divides an arc of angle β into chords whose area is the arc's own.
 *
 * A chord over the angle 2δ strays by e = R(1 − cos δ), so δ = acos(1 − e/R) = 2 asin √(e/2R) (textbook). Points
 * on the arc alone would lose area; so the inner points move outward to the radius ρ at which the polygon
 * sector has the area of the arc's sector,
 *
 *   ½ sin 2δ · [2ρ + (n − 2)ρ²] = ½ β            (ends on radius 1, n chords, 2δ = β/n)
 *
 * and the number grows until ρ − 1 too is within the tolerance: the error is two-sided, at most the tolerance
 * on either side, and the ends (tangent points) stay where they are. An affine map scales all areas alike, so
 * this holds for ellipses; there the stray is at most the unit circle's times the greater half-axis.
 *
 * `relativeTol` is the tolerance over the greater half-axis. Check: quarter circle in two chords, ρ = π/(2√2).
 */
export function divideArc(angleRad: number, relativeTol: number): ArcDivision {
  const beta = Math.abs(angleRad)
  // Never coarser than a quarter turn a chord, never fewer than two: one chord could not keep the area.
  let count = Math.max(2, Math.ceil(beta / (Math.PI / 2) - 1e-9))
  if (relativeTol < 1) count = Math.max(count, Math.ceil(beta / (4 * Math.asin(Math.sqrt(relativeTol / 2)))))
  for (; ; count++) {
    const rho = areaRadius(beta, count)
    if (rho - 1 <= relativeTol || count > 64) return { count, rho }
  }
}

// The positive root of (n − 2)ρ² + 2ρ − β/sin(β/n) = 0, in the form that also holds for n = 2.
function areaRadius(beta: number, count: number): number {
  const c = beta / Math.sin(beta / count)
  return c / (1 + Math.sqrt(1 + (count - 2) * c))
}

/** Greater half-axis of the ellipse with conjugate half-diameters u and v: the larger singular value of [u v]. */
export function greaterHalfAxis(ux: number, uy: number, vx: number, vy: number): number {
  const uu = ux * ux + uy * uy
  const vv = vx * vx + vy * vy
  const uv = ux * vx + uy * vy
  return Math.sqrt((uu + vv + Math.hypot(uu - vv, 2 * uv)) / 2)
}

/** Number of chords {@link flattenArc} will make. */
export function arcChords(arc: Arc, tolMm: number): number {
  const a = greaterHalfAxis(arc.ux, arc.uy, arc.vx, arc.vy)
  return divideArc(arc.dt, a > 0 ? tolMm / a : 2).count
}

/** An elliptical arc as chords within `tolMm` on either side, of the arc's own area (see {@link divideArc}). */
export function flattenArc(arc: Arc, tolMm: number, emit: (x: number, y: number) => void): void {
  const { cx, cy, ux, uy, vx, vy, t0, dt } = arc
  const a = greaterHalfAxis(ux, uy, vx, vy)
  const { count, rho } = divideArc(dt, a > 0 ? tolMm / a : 2)
  for (let k = 1; k <= count; k++) {
    const t = t0 + (dt * k) / count
    const r = k === count ? 1 : rho
    const c = r * Math.cos(t)
    const s = r * Math.sin(t)
    emit(cx + ux * c + vx * s, cy + uy * c + vy * s)
  }
}

/**
 * Chords that keep a Bézier of degree d within `tol`: equal steps of the parameter,
 *
 *   n = ⌈√(d(d − 1)·M / (8·tol))⌉,    M = max |P_k − 2P_{k+1} + P_{k+2}|
 *
 * because |B''| ≤ d(d − 1)·M everywhere and a chord over a step h strays by at most h²·max|B''|/8 (the error of
 * linear interpolation). Source: Wang 1984, "The subdivision method for finding the intersection between two
 * Bézier curves or surfaces", Zhejiang University Journal (memory); the proof is the two lines above.
 * Points lie on the curve, so the error is on its inner side.
 */
function bezierChords(degree: 2 | 3, greatestSecondDifference: number, tol: number): number {
  return Math.max(1, Math.ceil(Math.sqrt((degree * (degree - 1) * greatestSecondDifference) / (8 * tol))))
}

/** Number of chords {@link flattenCubic} will make. */
export function cubicChords(p: readonly number[], tol: number): number {
  const [x0, y0, x1, y1, x2, y2, x3, y3] = p as CubicPoints
  const m = Math.max(
    Math.hypot(x0 - 2 * x1 + x2, y0 - 2 * y1 + y2),
    Math.hypot(x1 - 2 * x2 + x3, y1 - 2 * y2 + y3)
  )
  return bezierChords(3, m, tol)
}

type CubicPoints = [number, number, number, number, number, number, number, number]
type QuadraticPoints = [number, number, number, number, number, number]

/** A cubic Bézier, p = x0,y0,...,x3,y3, as chords within `tol`. */
export function flattenCubic(p: readonly number[], tol: number, emit: (x: number, y: number) => void): void {
  const [x0, y0, x1, y1, x2, y2, x3, y3] = p as CubicPoints
  const n = cubicChords(p, tol)
  for (let k = 1; k < n; k++) {
    const t = k / n
    const s = 1 - t
    const a = s * s * s
    const b = 3 * s * s * t
    const c = 3 * s * t * t
    const d = t * t * t
    emit(a * x0 + b * x1 + c * x2 + d * x3, a * y0 + b * y1 + c * y2 + d * y3)
  }
  emit(x3, y3)
}

/** Number of chords {@link flattenQuadratic} will make. */
export function quadraticChords(p: readonly number[], tol: number): number {
  const [x0, y0, x1, y1, x2, y2] = p as QuadraticPoints
  return bezierChords(2, Math.hypot(x0 - 2 * x1 + x2, y0 - 2 * y1 + y2), tol)
}

/** A quadratic Bézier, p = x0,y0,x1,y1,x2,y2, as chords within `tol`. */
export function flattenQuadratic(
  p: readonly number[],
  tol: number,
  emit: (x: number, y: number) => void
): void {
  const [x0, y0, x1, y1, x2, y2] = p as QuadraticPoints
  const n = quadraticChords(p, tol)
  for (let k = 1; k < n; k++) {
    const t = k / n
    const s = 1 - t
    emit(s * s * x0 + 2 * s * t * x1 + t * t * x2, s * s * y0 + 2 * s * t * y1 + t * t * y2)
  }
  emit(x2, y2)
}
