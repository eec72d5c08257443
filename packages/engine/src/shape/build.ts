import { clipRings, FARTHEST_MM } from './clip.ts'
import { divideArc } from './flatten.ts'
import type { Region, Ring } from './region.ts'
import { regionOfSound } from './region.ts'

/** Most points a corner may be divided into: a tolerance finer than this asks for is a slip. */
const MOST_CHORDS = 100_000

/**
 * A circle as a polygon. Every chord and every corner stays within `tolMm` of the circle, on either side; the
 * polygon has the area of the circle and its points on the axes lie on the circle, so that bounds are true
 * (see `divideArc`).
 * @throws Error for a diameter or tolerance that is not positive and finite
 */
export function circle(diameterMm: number, tolMm: number, cx = 0, cy = 0): Region {
  refuseBad('diameter', diameterMm)
  return rounded(diameterMm, diameterMm, diameterMm / 2, tolMm, cx, cy)
}

/**
 * A rectangle about its centre, corners rounded with the radius `cornerMm`; its sides are exact, its corners
 * as in {@link circle}.
 * @throws Error for a side or tolerance that is not positive and finite, or a corner over half the shorter side
 */
export function rectangle(
  widthMm: number,
  heightMm: number,
  cornerMm: number,
  tolMm: number,
  cx = 0,
  cy = 0
): Region {
  refuseBad('width', widthMm)
  refuseBad('height', heightMm)
  const most = Math.min(widthMm, heightMm) / 2
  if (!(cornerMm >= 0 && cornerMm <= most)) {
    throw new Error(`a corner radius of ${cornerMm} mm; allowed are 0 to ${most} mm, half the shorter side`)
  }
  return rounded(widthMm, heightMm, cornerMm, tolMm, cx, cy)
}

function rounded(w: number, h: number, r: number, tolMm: number, cx: number, cy: number): Region {
  if (!(tolMm > 0)) throw new Error(`a tolerance of ${tolMm} mm; it must be above 0`)
  for (const far of [cx - w / 2, cx + w / 2, cy - h / 2, cy + h / 2]) {
    if (!(Math.abs(far) <= FARTHEST_MM)) {
      throw new Error(`a shape that reaches to ${far} mm; allowed are −${FARTHEST_MM} to ${FARTHEST_MM} mm`)
    }
  }
  const { count, rho } = r === 0 ? { count: 0, rho: 1 } : divideArc(Math.PI / 2, tolMm / r)
  if (count > MOST_CHORDS) {
    throw new Error(`a tolerance of ${tolMm} mm needs ${count} chords a corner; at most ${MOST_CHORDS}`)
  }
  const points: number[] = []
  const put = (x: number, y: number) => {
    const n = points.length
    if (n > 0 && points[n - 2] === x && points[n - 1] === y) return
    points.push(x, y)
  }
  // Corners from the lower right on, counter-clockwise; each arc starts a quarter turn after the one before.
  const quarter = [
    [1, 0],
    [0, 1],
    [-1, 0],
    [0, -1]
  ] as const
  for (let q = 0; q < 4; q++) {
    const [ux, uy] = quarter[(q + 3) % 4]!
    const [vx, vy] = quarter[q]!
    const mx = cx + (w / 2 - r) * (ux + vx)
    const my = cy + (h / 2 - r) * (uy + vy)
    put(mx + r * ux, my + r * uy)
    for (let k = 1; k < count; k++) {
      const t = ((Math.PI / 2) * k) / count
      const c = rho * r * Math.cos(t)
      const s = rho * r * Math.sin(t)
      put(mx + c * ux + s * vx, my + c * uy + s * vy)
    }
    put(mx + r * vx, my + r * vy)
  }
  const n = points.length
  if (points[0] === points[n - 2] && points[1] === points[n - 1]) points.length = n - 2
  return regionOfSound([Float64Array.from(points)])
}

function refuseBad(what: string, mm: number): void {
  if (!(mm > 0 && mm <= 2 * FARTHEST_MM)) {
    throw new Error(`a ${what} of ${mm} mm; it must be above 0 and at most ${2 * FARTHEST_MM}`)
  }
}

/**
 * A polygon by its corners (x0,y0,x1,y1,... in either turning sense) less its holes. What the outline winds
 * about counts as inside, so an outline that crosses itself is filled; `check.ts` finds such outlines.
 * @throws Error for fewer than three corners, or a coordinate that is not a finite number within range
 */
export function polygon(points: Ring, holes: readonly Ring[] = []): Region {
  for (const ring of [points, ...holes]) {
    if (ring.length < 6 || ring.length % 2 !== 0) {
      throw new Error(`a polygon needs at least three corners; found ${ring.length} numbers`)
    }
  }
  const outer = clipRings('union', [points], null, 'nonzero')
  if (holes.length === 0) return regionOfSound(outer)
  return regionOfSound(clipRings('difference', outer, clipRings('union', holes, null, 'nonzero'), 'nonzero'))
}
