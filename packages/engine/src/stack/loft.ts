import { union } from '../shape/combine.ts'
import { area, bounds, ringArea } from '../shape/measure.ts'
import { orientation } from '../shape/orientation.ts'
import type { Ring } from '../shape/region.ts'

/**
 * The side of a timber whose lower and upper edges differ: a strip of triangles between two rings.
 *
 * The strip is stitched by the shorter diagonal (Christiansen & Sederberg 1978, SIGGRAPH 12:187; memory): at
 * each place the walk advances on the ring that leaves the shorter connecting edge, from the closest pair of
 * points on. Diagonals are compared as they are, which follows edges that run beside each other, and with both
 * rings stretched to one box, which holds corner to corner where the lower edge is much smaller; the stitching
 * with the shorter connecting edges is taken. A level cut through the strip at a share t of the height is the polygon of points
 * (1−t)·A_i + t·B_j, so its area is exactly quadratic in t and volumes are exact.
 *
 * Limits: edges that wander far from each other, or differ in how often they turn back, give a strip that
 * crosses itself; {@link crosses} tells.
 */
export interface Loft {
  /** Pairs of the walk: pair k joins lower point i[k] and upper point j[k]. */
  readonly i: Int32Array
  readonly j: Int32Array
  readonly lower: Ring
  readonly upper: Ring
  /** Area at share t: a[0] + a[1]·t + a[2]·t², mm² (signed: holes negative). */
  readonly area: readonly [number, number, number]
}

/** Stitches two rings of the same turning sense. O(n + m). Throws when either has fewer than three points. */
export function loft(lower: Ring, upper: Ring): Loft {
  if (lower.length < 6 || upper.length < 6)
    throw new Error(`a ring needs three points; found ${Math.min(lower.length, upper.length) / 2}`)
  const plain = stitched(lower, upper)
  const boxed = stitched(inUnitBox(lower), inUnitBox(upper))
  const { i, j } = spread(lower, upper, plain) <= spread(lower, upper, boxed) ? plain : boxed
  const at = (t: number) => ringArea(ringOf(lower, upper, i, j, t))
  const a0 = ringArea(lower)
  const a1 = ringArea(upper)
  const half = at(0.5)
  // Through the three areas at t = 0, 1/2, 1.
  const area: [number, number, number] = [a0, 4 * half - 3 * a0 - a1, 2 * a0 + 2 * a1 - 4 * half]
  return { i, j, lower, upper, area }
}

type Stitching = Pick<Loft, 'i' | 'j'>

function stitched(lower: Ring, upper: Ring): Stitching {
  const n = lower.length / 2
  const m = upper.length / 2
  const j0 = closest(upper, lower[0]!, lower[1]!)
  const i = new Int32Array(n + m)
  const j = new Int32Array(n + m)
  let a = 0
  let b = 0
  for (let k = 0; k < n + m; k++) {
    const ia = a % n
    const jb = (j0 + b) % m
    i[k] = ia
    j[k] = jb
    const ia1 = (a + 1) % n
    const jb1 = (j0 + b + 1) % m
    const advanceLower = b >= m || (a < n && squared(lower, ia1, upper, jb) <= squared(lower, ia, upper, jb1))
    if (advanceLower) a++
    else b++
  }
  return { i, j }
}

// ∫ of the squared length of the connecting edges along both rings, mm³.
function spread(lower: Ring, upper: Ring, { i, j }: Stitching): number {
  let sum = 0
  for (let k = 0; k < i.length; k++) {
    const next = k + 1 === i.length ? 0 : k + 1
    const step =
      i[next] === i[k] ? squared(upper, j[k]!, upper, j[next]!) : squared(lower, i[k]!, lower, i[next]!)
    sum +=
      (Math.sqrt(step) * (squared(lower, i[k]!, upper, j[k]!) + squared(lower, i[next]!, upper, j[next]!))) /
      2
  }
  return sum
}

function inUnitBox(ring: Ring): Ring {
  const b = bounds({ rings: [ring] })
  const [w, h] = [b.maxX - b.minX || 1, b.maxY - b.minY || 1]
  return ring.map((v, k) => (k % 2 === 0 ? (v - b.minX) / w : (v - b.minY) / h))
}

/** The level cut at share t of the height, 0 at the lower ring and 1 at the upper. */
export function loftRing(l: Loft, t: number): Ring {
  return ringOf(l.lower, l.upper, l.i, l.j, t)
}

/** Area of the level cut at share t, mm². */
export function loftArea(l: Loft, t: number): number {
  return l.area[0] + t * (l.area[1] + t * l.area[2])
}

/** ∫ area dt from t0 to t1, mm² (times the height it is a volume). */
export function loftAreaIntegral(l: Loft, t0: number, t1: number): number {
  const [a, b, c] = l.area
  const whole = (t: number) => t * (a + t * (b / 2 + (t * c) / 3))
  return whole(t1) - whole(t0)
}

/**
 * Shares t at which the vertical line through (x, y) pierces the strip, sorted, written into `out`; returns how
 * many. Sides are judged by exact signs and a line through an edge between two triangles counts to one of
 * them, so none is missed and none counted twice.
 */
export function loftCrossings(l: Loft, x: number, y: number, out: number[]): number {
  const { lower, upper, i, j } = l
  const count = i.length
  out.length = 0
  const rungSide = (k: number) =>
    side(lower[2 * i[k]!]!, lower[2 * i[k]! + 1]!, upper[2 * j[k]!]!, upper[2 * j[k]! + 1]!, x, y)
  let s = rungSide(0)
  for (let k = 0; k < count; k++) {
    const next = k + 1 === count ? 0 : k + 1
    const ahead = rungSide(next)
    const before = s
    s = ahead
    // Between the two rungs only where they have the point on different sides.
    if (before === ahead) continue
    const ax = lower[2 * i[k]!]!
    const ay = lower[2 * i[k]! + 1]!
    const bx = upper[2 * j[k]!]!
    const by = upper[2 * j[k]! + 1]!
    const onLower = i[next] !== i[k]
    const cx = onLower ? lower[2 * i[next]!]! : upper[2 * j[next]!]!
    const cy = onLower ? lower[2 * i[next]! + 1]! : upper[2 * j[next]! + 1]!
    const edge = onLower ? -side(ax, ay, cx, cy, x, y) : side(bx, by, cx, cy, x, y)
    if (edge !== before) continue
    const det = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay)
    if (det === 0) continue
    const u = ((x - ax) * (cy - ay) - (cx - ax) * (y - ay)) / det
    const v = ((bx - ax) * (y - ay) - (x - ax) * (by - ay)) / det
    out.push(Math.min(1, Math.max(0, u + (onLower ? 0 : v))))
  }
  out.sort((p, q) => p - q)
  return out.length
}

function side(ax: number, ay: number, bx: number, by: number, x: number, y: number): 1 | -1 {
  return orientation(ax, ay, bx, by, x, y) >= 0 ? 1 : -1
}

/** Share of its area by which a level cut may differ from what it encloses before the strip counts as crossing itself. */
const CROSSING_SHARE = 1e-3

/**
 * Whether the strip crosses itself, so that its level cuts enclose other than their signed area.
 *
 * When all its triangles turn the same way on the plan it lies there like a belt, and its level cuts are simple
 * curves. Else three level cuts are resolved and their areas compared.
 */
export function crosses(l: Loft): boolean {
  if (turnsOneWay(l)) return false
  const coarse = thinned(l)
  return [0.25, 0.5, 0.75].some(t => {
    const ring = loftRing(coarse, t)
    const signed = ringArea(ring)
    const whole = area(union({ rings: [signed > 0 ? ring : turned(ring)] }))
    return Math.abs(whole - Math.abs(signed)) > CROSSING_SHARE * Math.abs(signed)
  })
}

/** Most pairs looked at: edges drawn finer wander no less for being looked at more coarsely. */
const MOST_PAIRS = 2000

function thinned(l: Loft): Loft {
  const step = Math.ceil(l.i.length / MOST_PAIRS)
  if (step === 1) return l
  return { ...l, i: l.i.filter((_, k) => k % step === 0), j: l.j.filter((_, k) => k % step === 0) }
}

function turnsOneWay(l: Loft): boolean {
  const { lower, upper, i, j } = l
  let way = 0
  for (let k = 0; k < i.length; k++) {
    const next = k + 1 === i.length ? 0 : k + 1
    const onLower = i[next] !== i[k]
    const s = orientation(
      lower[2 * i[k]!]!,
      lower[2 * i[k]! + 1]!,
      upper[2 * j[k]!]!,
      upper[2 * j[k]! + 1]!,
      onLower ? lower[2 * i[next]!]! : upper[2 * j[next]!]!,
      onLower ? lower[2 * i[next]! + 1]! : upper[2 * j[next]! + 1]!
    )
    if (s === 0) continue
    if (way !== 0 && s > 0 !== way > 0) return false
    way = s
  }
  return true
}

function turned(ring: Ring): Ring {
  const out = new Float64Array(ring.length)
  for (let k = 0; k < ring.length; k += 2) {
    out[k] = ring[ring.length - 2 - k]!
    out[k + 1] = ring[ring.length - 1 - k]!
  }
  return out
}

function ringOf(lower: Ring, upper: Ring, i: Int32Array, j: Int32Array, t: number): Ring {
  const out = new Float64Array(2 * i.length)
  for (let k = 0; k < i.length; k++) {
    out[2 * k] = (1 - t) * lower[2 * i[k]!]! + t * upper[2 * j[k]!]!
    out[2 * k + 1] = (1 - t) * lower[2 * i[k]! + 1]! + t * upper[2 * j[k]! + 1]!
  }
  return out
}

function closest(ring: Ring, x: number, y: number): number {
  let best = 0
  let least = Number.POSITIVE_INFINITY
  for (let k = 0; k < ring.length / 2; k++) {
    const d = (ring[2 * k]! - x) ** 2 + (ring[2 * k + 1]! - y) ** 2
    if (d < least) {
      least = d
      best = k
    }
  }
  return best
}

function squared(a: Ring, i: number, b: Ring, j: number): number {
  return (a[2 * i]! - b[2 * j]!) ** 2 + (a[2 * i + 1]! - b[2 * j + 1]!) ** 2
}
