import { circlePoints, MOST_POINTS } from './build.ts'

/**
 * Curves to chords, none farther from the curve than a stated tolerance. Each function appends the points
 * after the start to `out` as x, y, ... and ends exactly on the curve's end.
 */

/**
 * A cubic Bézier curve. n equal steps of its parameter stray at most e = M/(8·n²), with
 * M the largest second derivative: M = 6·max(|P0 − 2P1 + P2|, |P1 − 2P2 + P3|), since a second derivative of a
 * cubic is linear and so largest at an end. Hence n = ⌈√(M/(8·tol))⌉.
 *
 * Source: error of linear interpolation, |f''|·h²/8 (any text on numerical analysis).
 */
export function flattenCubic(
  out: number[],
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  x3: number,
  y3: number,
  tol: number
): void {
  const m =
    6 *
    Math.max(Math.hypot(x0 - 2 * x1 + x2, y0 - 2 * y1 + y2), Math.hypot(x1 - 2 * x2 + x3, y1 - 2 * y2 + y3))
  const n = steps(m, tol)
  for (let k = 1; k < n; k++) {
    const t = k / n
    const s = 1 - t
    const a = s * s * s
    const b = 3 * s * s * t
    const c = 3 * s * t * t
    const d = t * t * t
    out.push(a * x0 + b * x1 + c * x2 + d * x3, a * y0 + b * y1 + c * y2 + d * y3)
  }
  out.push(x3, y3)
}

/** A quadratic Bézier curve: its second derivative is constant, 2·|P0 − 2P1 + P2|. */
export function flattenQuadratic(
  out: number[],
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  tol: number
): void {
  const n = steps(2 * Math.hypot(x0 - 2 * x1 + x2, y0 - 2 * y1 + y2), tol)
  for (let k = 1; k < n; k++) {
    const t = k / n
    const s = 1 - t
    out.push(s * s * x0 + 2 * s * t * x1 + t * t * x2, s * s * y0 + 2 * s * t * y1 + t * t * y2)
  }
  out.push(x2, y2)
}

function steps(secondDerivative: number, tol: number): number {
  return Math.min(MOST_POINTS, Math.max(1, Math.ceil(Math.sqrt(secondDerivative / (8 * tol)))))
}

/**
 * An elliptical arc given by its ends, as SVG writes it (SVG 1.1, implementation notes F.6.5 and F.6.6):
 * radii of zero make a line; radii too small to reach are scaled up; equal ends draw nothing.
 * The arc is kept as an ellipse and stepped by its parameter: chords of a circle of the larger radius stray
 * no less than those of the ellipse.
 */
export function flattenArc(
  out: number[],
  x0: number,
  y0: number,
  rx: number,
  ry: number,
  turnDegrees: number,
  large: boolean,
  sweep: boolean,
  x1: number,
  y1: number,
  tol: number
): void {
  if (x0 === x1 && y0 === y1) return
  let a = Math.abs(rx)
  let b = Math.abs(ry)
  if (a === 0 || b === 0) {
    out.push(x1, y1)
    return
  }
  const phi = ((turnDegrees % 360) * Math.PI) / 180
  const cos = Math.cos(phi)
  const sin = Math.sin(phi)
  const hx = (x0 - x1) / 2
  const hy = (y0 - y1) / 2
  const px = cos * hx + sin * hy
  const py = -sin * hx + cos * hy
  const reach = (px / a) ** 2 + (py / b) ** 2
  if (reach > 1) {
    a *= Math.sqrt(reach)
    b *= Math.sqrt(reach)
  }
  const rest = (a * a * b * b - a * a * py * py - b * b * px * px) / (a * a * py * py + b * b * px * px)
  const root = (large === sweep ? -1 : 1) * Math.sqrt(Math.max(0, rest))
  const cxp = (root * a * py) / b
  const cyp = (-root * b * px) / a
  const cx = cos * cxp - sin * cyp + (x0 + x1) / 2
  const cy = sin * cxp + cos * cyp + (y0 + y1) / 2
  const start = Math.atan2((py - cyp) / b, (px - cxp) / a)
  let turn = Math.atan2((-py - cyp) / b, (-px - cxp) / a) - start
  if (sweep && turn < 0) turn += 2 * Math.PI
  else if (!sweep && turn > 0) turn -= 2 * Math.PI
  const n = Math.max(1, Math.ceil((circlePoints(Math.max(a, b), tol) * Math.abs(turn)) / (2 * Math.PI)))
  for (let k = 1; k < n; k++) {
    const t = start + (turn * k) / n
    const ex = a * Math.cos(t)
    const ey = b * Math.sin(t)
    out.push(cx + cos * ex - sin * ey, cy + sin * ex + cos * ey)
  }
  out.push(x1, y1)
}
