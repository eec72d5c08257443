import type { EdgeRows } from '../shape/edge-rows.ts'
import { edgeRows, rowAt } from '../shape/edge-rows.ts'

/**
 * The parts of lines that lie in an area (rings by the even-odd rule). Each stretch is cut where it crosses an
 * edge, and a part is kept when its middle lies inside: exact to rounding, and enough for a drawing. On an
 * edge itself either answer will do.
 */
export function clipLines(rings: readonly Float64Array[], lines: readonly Float64Array[]): Float64Array[] {
  const edges = edgeRows(rings)
  const out: Float64Array[] = []
  const shares: number[] = []
  for (const points of lines) {
    let current: number[] = []
    const flush = () => {
      if (current.length >= 4) out.push(Float64Array.from(current))
      current = []
    }
    for (let k = 0; k + 3 < points.length; k += 2) {
      const ax = points[k]!
      const ay = points[k + 1]!
      const bx = points[k + 2]!
      const by = points[k + 3]!
      crossings(edges, ax, ay, bx, by, shares)
      for (let s = 0; s + 1 < shares.length; s++) {
        const t0 = shares[s]!
        const t1 = shares[s + 1]!
        if (t1 - t0 < 1e-9) continue
        const tm = (t0 + t1) / 2
        if (!within(edges, ax + tm * (bx - ax), ay + tm * (by - ay))) {
          flush()
          continue
        }
        if (current.length === 0) current.push(ax + t0 * (bx - ax), ay + t0 * (by - ay))
        current.push(ax + t1 * (bx - ax), ay + t1 * (by - ay))
      }
    }
    flush()
  }
  return out
}

// Shares 0..1 of the way from a to b at which an edge is crossed, both ends included, sorted, into `shares`.
function crossings(edges: EdgeRows, ax: number, ay: number, bx: number, by: number, shares: number[]): void {
  const { at, rows, starts } = edges
  shares.length = 0
  shares.push(0, 1)
  const minX = Math.min(ax, bx)
  const maxX = Math.max(ax, bx)
  const minY = Math.min(ay, by)
  const maxY = Math.max(ay, by)
  if (maxY < edges.minY || minY > edges.maxY) return
  const first = rowAt(edges, minY)
  const last = rowAt(edges, maxY)
  for (let row = first; row <= last; row++) {
    for (let i = starts[row]!; i < starts[row + 1]!; i++) {
      const e = rows[i]!
      const py = at[e + 1]!
      const qy = at[e + 3]!
      // An edge that reaches over several rows is looked at in the first that both have.
      if (row > first && rowAt(edges, Math.min(py, qy)) < row) continue
      const px = at[e]!
      const qx = at[e + 2]!
      if ((px < minX && qx < minX) || (px > maxX && qx > maxX)) continue
      if ((py < minY && qy < minY) || (py > maxY && qy > maxY)) continue
      const across = (bx - ax) * (qy - py) - (by - ay) * (qx - px)
      if (across === 0) continue
      const t = ((px - ax) * (qy - py) - (py - ay) * (qx - px)) / across
      const u = ((px - ax) * (by - ay) - (py - ay) * (bx - ax)) / across
      if (t > 0 && t < 1 && u >= 0 && u <= 1) shares.push(t)
    }
  }
  if (shares.length > 2) shares.sort((a, b) => a - b)
}

function within(edges: EdgeRows, x: number, y: number): boolean {
  if (y < edges.minY || y > edges.maxY) return false
  const { at, rows, starts } = edges
  const row = rowAt(edges, y)
  let odd = false
  for (let i = starts[row]!; i < starts[row + 1]!; i++) {
    const e = rows[i]!
    const py = at[e + 1]!
    const qy = at[e + 3]!
    if (py > y === qy > y) continue
    const px = at[e]!
    if (px + ((y - py) / (qy - py)) * (at[e + 2]! - px) > x) odd = !odd
  }
  return odd
}

/**
 * The same line with points left out that stray less than `tolMm` from it (Douglas & Peucker 1973; memory).
 * The first and last point stay.
 */
export function thinned(points: Float64Array, tolMm: number): Float64Array {
  const n = points.length / 2
  if (n < 3) return points
  const keep = new Uint8Array(n)
  keep[0] = 1
  keep[n - 1] = 1
  const stack: [number, number][] = [[0, n - 1]]
  for (let span = stack.pop(); span !== undefined; span = stack.pop()) {
    const [a, b] = span
    let far = tolMm * tolMm
    let at = -1
    for (let k = a + 1; k < b; k++) {
      const d = strays2(points, a, b, k)
      if (d > far) {
        far = d
        at = k
      }
    }
    if (at < 0) continue
    keep[at] = 1
    stack.push([a, at], [at, b])
  }
  const out: number[] = []
  for (let k = 0; k < n; k++) if (keep[k] === 1) out.push(points[2 * k]!, points[2 * k + 1]!)
  return Float64Array.from(out)
}

// The distance of point k from the stretch from a to b, squared.
function strays2(points: Float64Array, a: number, b: number, k: number): number {
  const [ax, ay] = [points[2 * a]!, points[2 * a + 1]!]
  const dx = points[2 * b]! - ax
  const dy = points[2 * b + 1]! - ay
  const x = points[2 * k]! - ax
  const y = points[2 * k + 1]! - ay
  const long = dx * dx + dy * dy
  const t = long === 0 ? 0 : Math.min(1, Math.max(0, (x * dx + y * dy) / long))
  return (x - t * dx) ** 2 + (y - t * dy) ** 2
}

/** A ring thinned alike: it is split at its two points farthest apart along x or y, which stay. */
export function thinnedRing(ring: Float64Array, tolMm: number): Float64Array {
  const n = ring.length / 2
  if (n < 5) return ring
  let far = 0
  let most = -1
  for (let k = 1; k < n; k++) {
    const d = (ring[2 * k]! - ring[0]!) ** 2 + (ring[2 * k + 1]! - ring[1]!) ** 2
    if (d > most) {
      most = d
      far = k
    }
  }
  const first = thinned(ring.subarray(0, 2 * far + 2), tolMm)
  const back = new Float64Array(2 * (n - far) + 2)
  back.set(ring.subarray(2 * far))
  back[back.length - 2] = ring[0]!
  back[back.length - 1] = ring[1]!
  const second = thinned(back, tolMm)
  const out = new Float64Array(first.length + second.length - 4)
  out.set(first)
  out.set(second.subarray(2, second.length - 2), first.length)
  return out.length >= 6 ? out : ring
}
