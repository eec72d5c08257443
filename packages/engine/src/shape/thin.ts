import { segmentDistance2 } from './edge-tree.ts'

/**
 * Lines with fewer points: of each stretch between two kept points the farthest is kept if it lies more than
 * `tolMm` from their segment (Ramer 1972, Computer Graphics and Image Processing 1:244; Douglas & Peucker 1973,
 * Cartographica 10:112; memory). So every point left out lies within the tolerance of its segment.
 *
 * Limits: n·log n on outlines, n² at worst; the result may cross itself where the line passes itself closely.
 */
export function thinnedLine(line: Float64Array, tolMm: number): Float64Array {
  const n = line.length / 2
  if (n < 3) return line
  const closed = line[0] === line[2 * n - 2] && line[1] === line[2 * n - 1]
  const keep = new Uint8Array(n)
  keep[0] = 1
  keep[n - 1] = 1
  const stack = [0, n - 1]
  if (closed) {
    const far = farthestFrom(line, 0)
    keep[far] = 1
    stack.splice(0, 2, 0, far, far, n - 1)
  }
  const limit = tolMm * tolMm
  while (stack.length > 0) {
    const to = stack.pop()!
    const from = stack.pop()!
    const ax = line[2 * from]!
    const ay = line[2 * from + 1]!
    const bx = line[2 * to]!
    const by = line[2 * to + 1]!
    let far = -1
    let most = limit
    for (let k = from + 1; k < to; k++) {
      const d = segmentDistance2(ax, ay, bx, by, line[2 * k]!, line[2 * k + 1]!)
      if (d > most) {
        most = d
        far = k
      }
    }
    if (far < 0) continue
    keep[far] = 1
    stack.push(from, far, far, to)
  }
  const out = new Float64Array(2 * n)
  let size = 0
  for (let k = 0; k < n; k++) {
    if (!keep[k]) continue
    out[size++] = line[2 * k]!
    out[size++] = line[2 * k + 1]!
  }
  return out.subarray(0, size)
}

/** A closed ring, thinned likewise; fewer than three points are left when it was smaller than the tolerance. */
export function thinnedRing(ring: Float64Array, tolMm: number): Float64Array {
  const n = ring.length / 2
  if (n < 3) return ring
  // From the leftmost point round to it again: a corner that is surely kept.
  const start = leftmost(ring)
  const line = new Float64Array(2 * n + 2)
  line.set(ring.subarray(2 * start))
  line.set(ring.subarray(0, 2 * start + 2), 2 * (n - start))
  const thin = thinnedLine(line, tolMm)
  return thin.subarray(0, thin.length - 2)
}

function leftmost(ring: Float64Array): number {
  let best = 0
  for (let k = 2; k < ring.length; k += 2) {
    const dx = ring[k]! - ring[2 * best]!
    if (dx < 0 || (dx === 0 && ring[k + 1]! < ring[2 * best + 1]!)) best = k / 2
  }
  return best
}

function farthestFrom(line: Float64Array, from: number): number {
  let best = from
  let most = 0
  for (let k = 0; k < line.length; k += 2) {
    const d = (line[k]! - line[2 * from]!) ** 2 + (line[k + 1]! - line[2 * from + 1]!) ** 2
    if (d > most) {
      most = d
      best = k / 2
    }
  }
  return best
}
