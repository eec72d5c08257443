import type { Homography, Point } from './plane-map.ts'
import { apply, divided, inverse, multiply, nullVector, pxToMm } from './plane-map.ts'

export type { Homography, Point } from './plane-map.ts'
export { mmToPx, pxToMm } from './plane-map.ts'
export { unwarpSize } from './unwarp.ts'

/** Words for the person who set the marks: what was found, what is allowed. */
export interface Refused {
  readonly problem: string
}

/** Least distance of two marks, px: nearer, a click's own error of about a px is more than 5 %. */
const LEAST_SIDE_PX = 20
/** Least height of any three marks over their longest side: flatter, the marks are as good as on one line. */
const LEAST_FLATNESS = 0.02

/**
 * From the four corners of a rectangle `widthMm` × `heightMm` in the picture, in the order near left, near right,
 * far right, far left (see {@link cornersInOrder}). The near left corner becomes (0, 0).
 *
 * Limits: one plane only (what stands above it shifts), and a lens that bends straight lines is not corrected:
 * take the picture from some way off and keep the work away from its rim (practice).
 *
 * Normalised direct linear transformation (Hartley & Zisserman, Multiple View Geometry, algorithm 4.2; memory):
 * four points fix the eight ratios, so the null vector is found by elimination with complete pivoting.
 */
export function fromRectangle(
  marks: readonly Point[],
  widthMm: number,
  heightMm: number
): Homography | Refused {
  const wrong = marksFault(marks) ?? lengthFault('width', widthMm) ?? lengthFault('height', heightMm)
  if (wrong !== null) return { problem: wrong }
  const plan: Point[] = [
    [0, 0],
    [widthMm, 0],
    [widthMm, heightMm],
    [0, heightMm]
  ]
  const from = normaliser(marks)
  const to = normaliser(plan)
  const rows = marks.flatMap((m, k) => {
    const [u, v] = apply(from, m[0], m[1])!
    const [x, y] = apply(to, plan[k]![0], plan[k]![1])!
    return [
      [u, v, 1, 0, 0, 0, -u * x, -v * x, -x],
      [0, 0, 0, u, v, 1, -u * y, -v * y, -y]
    ]
  })
  const h = nullVector(rows)
  if (h === null) return { problem: 'the marks lie on one line: mark the four corners of the rectangle' }
  return scaled(multiply(inverse(to)!, multiply(h, from)), middle(marks))
}

/**
 * From two points `distanceMm` apart, for a picture taken squarely from above: `a` becomes (0, 0), and what is
 * upright in the picture stays upright.
 */
export function fromDistance(a: Point, b: Point, distanceMm: number): Homography | Refused {
  if (![...a, ...b].every(Number.isFinite))
    return { problem: 'a mark that is no number; mark both points again' }
  const px = Math.hypot(b[0] - a[0], b[1] - a[1])
  const wrong = lengthFault('distance', distanceMm)
  if (wrong !== null) return { problem: wrong }
  if (!(px >= LEAST_SIDE_PX))
    return {
      problem: `marks ${px.toFixed(1)} px apart; allowed: at least ${LEAST_SIDE_PX} px, better half the picture`
    }
  const s = distanceMm / px
  return [s, 0, -s * a[0], 0, -s, s * a[1], 0, 0, 1]
}

/** Laid on the plan: its origin at `at`, turned counter-clockwise by `turnDeg`. */
export function laidAt(h: Homography, at: Point, turnDeg: number): Homography {
  const c = Math.cos((turnDeg * Math.PI) / 180)
  const s = Math.sin((turnDeg * Math.PI) / 180)
  return multiply([c, -s, at[0], s, c, at[1], 0, 0, 1], h)
}

/**
 * How many mm of the plan one px of click error means at a px of the picture, in the worst direction: the larger
 * singular value of the Jacobian. Infinity at and beyond the horizon.
 */
export function mmPerPx(h: Homography, u: number, v: number): number {
  const p = pxToMm(h, u, v)
  if (p === null) return Number.POSITIVE_INFINITY
  const w = h[6] * u + h[7] * v + h[8]
  const xu = (h[0] - h[6] * p[0]) / w
  const xv = (h[1] - h[7] * p[0]) / w
  const yu = (h[3] - h[6] * p[1]) / w
  const yv = (h[4] - h[7] * p[1]) / w
  const squares = xu * xu + xv * xv + yu * yu + yv * yv
  const det = xu * yv - xv * yu
  return Math.sqrt((squares + Math.sqrt(Math.max(0, squares * squares - 4 * det * det))) / 2)
}

/**
 * The error to expect of a place, mm: each mark and the place itself clicked `clickPx` off (one standard
 * deviation, each direction alone), errors added as squares. First order: by moving each mark by ±½ px.
 * Infinity where a moved mark puts the place beyond the horizon.
 */
export function errorMm(
  marks: readonly Point[],
  widthMm: number,
  heightMm: number,
  place: Point,
  clickPx = 1
): number {
  const h = fromRectangle(marks, widthMm, heightMm)
  if ('problem' in h) return Number.POSITIVE_INFINITY
  let squares = 0
  const add = (one: readonly number[] | null, other: readonly number[] | null) => {
    squares +=
      one === null || other === null
        ? Number.POSITIVE_INFINITY
        : (one[0]! - other[0]!) ** 2 + (one[1]! - other[1]!) ** 2
  }
  for (const [du, dv] of [
    [0.5, 0],
    [0, 0.5]
  ] as const) {
    add(pxToMm(h, place[0] + du, place[1] + dv), pxToMm(h, place[0] - du, place[1] - dv))
    marks.forEach((_, k) => {
      const at = (sign: number) => {
        const moved = marks.map((m, j): Point => (j === k ? [m[0] + sign * du, m[1] + sign * dv] : m))
        const other = fromRectangle(moved, widthMm, heightMm)
        return 'problem' in other ? null : pxToMm(other, place[0], place[1])
      }
      add(at(1), at(-1))
    })
  }
  return clickPx * Math.sqrt(squares)
}

/**
 * Four clicks made in any order, as near left, near right, far right, far left: round their middle, beginning
 * with the one that lies most to the lower left of the picture. Turn the list by one for a turned picture.
 */
export function cornersInOrder(marks: readonly Point[]): Point[] {
  const [cx, cy] = middle(marks)
  // Pixels count down: the angle against the clock as seen.
  const round = [...marks].sort((p, q) => Math.atan2(cy - p[1], p[0] - cx) - Math.atan2(cy - q[1], q[0] - cx))
  let first = 0
  round.forEach((p, k) => {
    if (p[0] - p[1] < round[first]![0] - round[first]![1]) first = k
  })
  return [...round.slice(first), ...round.slice(0, first)]
}

function marksFault(marks: readonly Point[]): string | null {
  if (marks.length !== 4) return `${marks.length} marks; allowed: the four corners of a rectangle`
  if (!marks.flat().every(c => Number.isFinite(c) && Math.abs(c) <= 1e6))
    return 'a mark outside any picture; mark the corner again'
  const names = ['near left', 'near right', 'far right', 'far left']
  for (let i = 0; i < 4; i++)
    for (let j = i + 1; j < 4; j++) {
      const px = Math.hypot(marks[i]![0] - marks[j]![0], marks[i]![1] - marks[j]![1])
      if (px < LEAST_SIDE_PX)
        return `the marks ${names[i]} and ${names[j]} lie ${px.toFixed(1)} px apart; allowed: at least ${LEAST_SIDE_PX} px`
    }
  const turns = [0, 1, 2, 3].map(k => {
    const [a, b, c] = [marks[(k + 3) % 4]!, marks[k]!, marks[(k + 1) % 4]!]
    const cross = (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0])
    const side = (p: Point, q: Point) => Math.hypot(p[0] - q[0], p[1] - q[1])
    const longest = Math.max(side(a, b), side(b, c), side(a, c))
    return cross / (longest * longest)
  })
  const flat = turns.findIndex(t => Math.abs(t) < LEAST_FLATNESS)
  if (flat >= 0)
    return `the mark ${names[flat]} lies on the line of its neighbours: mark the corners themselves`
  if (turns.every(t => t > 0)) return `the marks run the wrong way round; allowed: ${names.join(', ')}`
  if (turns.some(t => t > 0)) return `the marks cross each other; allowed: ${names.join(', ')}`
  return null
}

function lengthFault(what: string, mm: number): string | null {
  return mm >= 1 && mm <= 10_000 ? null : `a ${what} of ${mm} mm; allowed: 1 to 10000 mm`
}

function middle(points: readonly Point[]): Point {
  const n = points.length
  return [points.reduce((s, p) => s + p[0], 0) / n, points.reduce((s, p) => s + p[1], 0) / n]
}

// Moves the middle to the origin and scales the mean distance from it to √2.
function normaliser(points: readonly Point[]): Homography {
  const [cx, cy] = middle(points)
  const mean = points.reduce((sum, p) => sum + Math.hypot(p[0] - cx, p[1] - cy), 0) / points.length
  const s = Math.SQRT2 / mean
  return [s, 0, -s * cx, 0, s, -s * cy, 0, 0, 1]
}

function scaled(h: Homography, [u, v]: Point): Homography {
  return divided(h, h[6] * u + h[7] * v + h[8])
}
