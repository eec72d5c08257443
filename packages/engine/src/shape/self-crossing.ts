import { edgeTree, meetingEdges } from './edge-tree.ts'
import { orientation } from './orientation.ts'
import type { Ring } from './region.ts'

interface Place {
  readonly x: number
  readonly y: number
}

/**
 * A place where a ring crosses itself or runs back along itself; null when it does neither. Touching itself at
 * a point without passing through is no crossing. Points repeated in a row do not matter.
 *
 * Exact for the coordinates given: sides by the sign of {@link orientation}; where a point of one stretch lies
 * on another, the two cross if they leave the point in alternating directions.
 *
 * Limits: about n·log n; n² for long slanted lines side by side (see `meetingEdges`).
 */
export function selfCrossing(ring: Ring): Place | null {
  const line = withoutRepeats(ring)
  const n = line.length / 2
  if (n < 2) return null
  if (n === 2) return { x: line[2]!, y: line[3]! }
  const tree = edgeTree([line])
  let found: Place | null = null
  meetingEdges(tree, (i, j) => {
    if (j === i + 1) found = foldBack(line, n, i)
    else if (i === 0 && j === n - 1) found = foldBack(line, n, j)
    else found = crossingOf(line, n, i, j)
    return found !== null
  })
  return found
}

// Where edge i and the next one run over each other: a spike at their common point.
function foldBack(line: Ring, n: number, i: number): Place | null {
  const a = 2 * i
  const b = 2 * ((i + 1) % n)
  const c = 2 * ((i + 2) % n)
  if (orientation(line[a]!, line[a + 1]!, line[c]!, line[c + 1]!, line[b]!, line[b + 1]!) !== 0) return null
  const ahead =
    (line[a]! - line[b]!) * (line[c]! - line[b]!) +
    (line[a + 1]! - line[b + 1]!) * (line[c + 1]! - line[b + 1]!)
  return ahead > 0 ? { x: line[b]!, y: line[b + 1]! } : null
}

function crossingOf(line: Ring, n: number, i: number, j: number): Place | null {
  const side = (edge: number, point: number): number => {
    const a = 2 * edge
    const b = 2 * ((edge + 1) % n)
    const p = 2 * point
    return orientation(line[a]!, line[a + 1]!, line[b]!, line[b + 1]!, line[p]!, line[p + 1]!)
  }
  const i1 = (i + 1) % n
  const j1 = (j + 1) % n
  const [ja, jb, ia, ib] = [side(i, j), side(i, j1), side(j, i), side(j, i1)]
  if ((ja > 0 && jb > 0) || (ja < 0 && jb < 0) || (ia > 0 && ib > 0) || (ia < 0 && ib < 0)) return null
  if (ja === 0 && jb === 0) return overlap(line, i, i1, j, j1)
  if (ja !== 0 && jb !== 0 && ia !== 0 && ib !== 0) {
    const t = ja / (ja - jb)
    return {
      x: line[2 * j]! + t * (line[2 * j1]! - line[2 * j]!),
      y: line[2 * j + 1]! + t * (line[2 * j1 + 1]! - line[2 * j + 1]!)
    }
  }
  // One edge touches the other at a point of the ring: look at how both stretches pass that point.
  const at = ja === 0 ? j : jb === 0 ? j1 : ia === 0 ? i : i1
  const on = (edge: number, one: number): [number, number] =>
    same(line, edge, at)
      ? [(edge + n - 1) % n, one]
      : same(line, one, at)
        ? [edge, (one + 1) % n]
        : [edge, one]
  const [a, b] = on(i, i1)
  const [c, d] = on(j, j1)
  return between(line, at, a, b, c) !== between(line, at, a, b, d)
    ? { x: line[2 * at]!, y: line[2 * at + 1]! }
    : null
}

// Collinear edges: the middle of what they share, null when that is a single point or nothing.
function overlap(line: Ring, i: number, i1: number, j: number, j1: number): Place | null {
  const c = Math.abs(line[2 * i1]! - line[2 * i]!) >= Math.abs(line[2 * i1 + 1]! - line[2 * i + 1]!) ? 0 : 1
  const at = (k: number) => line[2 * k + c]!
  const ends = [i, i1, j, j1].sort((p, q) => at(p) - at(q))
  const low = Math.max(Math.min(at(i), at(i1)), Math.min(at(j), at(j1)))
  const high = Math.min(Math.max(at(i), at(i1)), Math.max(at(j), at(j1)))
  if (!(high > low)) return null
  const [p, q] = [ends[1]!, ends[2]!]
  return { x: (line[2 * p]! + line[2 * q]!) / 2, y: (line[2 * p + 1]! + line[2 * q + 1]!) / 2 }
}

// Whether, seen from point `at`, the direction to d comes between the directions to a and b, counter-clockwise.
function between(line: Ring, at: number, a: number, b: number, d: number): boolean {
  const turn = (p: number, q: number) =>
    orientation(
      line[2 * at]!,
      line[2 * at + 1]!,
      line[2 * p]!,
      line[2 * p + 1]!,
      line[2 * q]!,
      line[2 * q + 1]!
    )
  const whole = turn(a, b)
  if (whole > 0) return turn(a, d) > 0 && turn(d, b) > 0
  if (whole < 0) return !(turn(b, d) > 0 && turn(d, a) > 0)
  return turn(a, d) > 0
}

function same(line: Ring, p: number, q: number): boolean {
  return line[2 * p] === line[2 * q] && line[2 * p + 1] === line[2 * q + 1]
}

function withoutRepeats(ring: Ring): Ring {
  const out = new Float64Array(ring.length)
  let size = 0
  for (let k = 0; k < ring.length; k += 2) {
    if (size > 0 && out[size - 2] === ring[k] && out[size - 1] === ring[k + 1]) continue
    out[size++] = ring[k]!
    out[size++] = ring[k + 1]!
  }
  while (size > 2 && out[0] === out[size - 2] && out[1] === out[size - 1]) size -= 2
  return out.subarray(0, size)
}
