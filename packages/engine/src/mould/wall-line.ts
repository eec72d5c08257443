import { perimeter } from '../shape/measure.ts'
import type { Ring } from '../shape/region.ts'

/** The line a mould's wall stands on: one ring of the edge of its inside. mm. */
export interface WallLine {
  /** Lengths of the straight edges in order; null for a curve. */
  readonly edgesMm: readonly number[] | null
  /** Length of the line, which is the inside of the wall. */
  readonly lengthMm: number
  /** Length of the outer foot of a wall as thick as said. */
  readonly outerLengthMm: number
  /** Its outer foot, corners mitred: for the size of the base. */
  readonly outer: Float64Array
}

/** More edges than this are a curve: nobody saws more walls for one mould (judgement). */
const MOST_EDGES = 40
/** A wall is at least so long, mm: shorter cannot be sawn and fixed by itself (judgement). */
const LEAST_EDGE_MM = 5
/** A point so near to the line through its neighbours is no corner, mm: the clipper's grid, twenty times. */
const STRAIGHT_MM = 0.002
/** Sagitta of a chord over the tolerance: chords of curves stray to both sides, 2, and a tenth for rounding. */
const CHORD = 2.2
/** Longest mitre, in thicknesses: beyond it (corners of less than 28 degrees) the point is cut off. */
const MOST_MITRE = 4

/**
 * Reads a ring as the line of a wall.
 *
 *   turn at a corner      θ, positive where the inside is convex
 *   outer foot            each corner moves out by t along both edges' normals; P + 2·t·Σ tan(θ/2)
 *   sagitta of an edge    L/2·tan(θ/4), θ the lesser turn at its ends (both the same way)
 *
 * A line is a curve where, collinear points dropped, it has more than 40 edges, an edge under 5 mm, or an edge
 * whose sagitta is within the tolerance to which curves were divided: then it is a chord.
 * Check: square of side a: outer foot 4·a + 8·t. Circle: outer foot longer by 2·π·t.
 *
 * @param ring counter-clockwise outside, clockwise about a hole: walls stand to its right
 */
export function wallLine(ring: Ring, thicknessMm: number, tolMm: number): WallLine {
  const corners = cornersOf(ring)
  const n = corners.length / 2
  const edges = new Float64Array(n)
  const turns = new Float64Array(n)
  for (let k = 0; k < n; k++) edges[k] = Math.max(1e-9, Math.hypot(...along(corners, k)))
  for (let k = 0; k < n; k++) {
    const [ax, ay] = along(corners, (k + n - 1) % n)
    const [bx, by] = along(corners, k)
    turns[k] = Math.atan2(ax * by - ay * bx, ax * bx + ay * by)
  }
  const mitres = turns.map(turn => Math.max(-MOST_MITRE, Math.min(MOST_MITRE, Math.tan(turn / 2))))
  const lengthMm = perimeter({ rings: [ring] })
  const curve =
    n > MOST_EDGES ||
    edges.some((length, k) => {
      const [from, to] = [turns[k]!, turns[(k + 1) % n]!]
      const least = from * to > 0 ? Math.min(Math.abs(from), Math.abs(to)) : 0
      const sagitta = (length / 2) * Math.tan(least / 4)
      return length < LEAST_EDGE_MM || (least > 0 && sagitta <= CHORD * Math.max(tolMm, STRAIGHT_MM))
    })
  return {
    edgesMm: curve ? null : [...edges],
    lengthMm,
    outerLengthMm: Math.max(0, lengthMm + 2 * thicknessMm * mitres.reduce((sum, m) => sum + m, 0)),
    outer: outerFoot(corners, edges, mitres, thicknessMm)
  }
}

/** The edge after corner k. */
function along(corners: Float64Array, k: number): [x: number, y: number] {
  const to = (2 * k + 2) % corners.length
  return [corners[to]! - corners[2 * k]!, corners[to + 1]! - corners[2 * k + 1]!]
}

// To the right of an edge (ux, uy) lies (uy, −ux); the corner also runs on along the edge by t·tan(θ/2).
function outerFoot(
  corners: Float64Array,
  edges: Float64Array,
  mitres: Float64Array,
  thickness: number
): Float64Array {
  const out = new Float64Array(corners.length)
  const n = edges.length
  for (let k = 0; k < n; k++) {
    const p = (k + n - 1) % n
    const [dx, dy] = along(corners, p)
    const [ux, uy] = [dx / edges[p]!, dy / edges[p]!]
    out[2 * k] = corners[2 * k]! + thickness * (uy + mitres[k]! * ux)
    out[2 * k + 1] = corners[2 * k + 1]! + thickness * (-ux + mitres[k]! * uy)
  }
  return out
}

// Drops points that lie on the line through their neighbours, until none does.
function cornersOf(ring: Ring): Float64Array {
  let points = [...ring]
  for (;;) {
    const kept: number[] = []
    const n = points.length
    for (let k = 0; k < n; k += 2) {
      const [px, py] = kept.length > 0 ? kept.slice(-2) : points.slice(-2)
      const [x, y] = [points[k]!, points[k + 1]!]
      const [qx, qy] = [points[(k + 2) % n]!, points[(k + 3) % n]!]
      const base = Math.hypot(qx - px!, qy - py!)
      const off = Math.abs((qx - px!) * (y - py!) - (qy - py!) * (x - px!)) / Math.max(base, 1e-12)
      const between = (x - px!) * (qx - x) + (y - py!) * (qy - y) >= 0
      if (!(off <= STRAIGHT_MM && between) || n - k + kept.length <= 6) kept.push(x, y)
    }
    if (kept.length === n) return Float64Array.from(kept)
    points = kept
  }
}
