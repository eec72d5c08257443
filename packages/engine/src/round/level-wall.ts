import { inside } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import type { Spot } from '../sheets/mark.ts'

/** How a level lies on the sheet: a place of the plan and how far up the level it is, 0 at its foot to 1. */
export interface LevelView {
  readonly put: (x: number, y: number, lift: number) => Spot
  /** Looked at from the back: what was the lower end lies on top, and outlines run the other way round. */
  readonly over: boolean
}

/** A stretch of wall that turns to the reader, on the sheet. */
export interface Wall {
  /** Along the foot and back along the top. */
  readonly area: Float64Array
  /** Its foot, where that is an edge; and its two upright ends. */
  readonly foot: readonly Float64Array[]
  readonly ends: readonly Float64Array[]
  /** How high its foot lies on the sheet: farther from the reader is higher. */
  readonly far: number
}

/** An edge as a key that finds it again. */
export function edgeKey(ring: Float64Array, p: number, k: number): string {
  return `${ring[p]} ${ring[p + 1]} ${ring[k]} ${ring[k + 1]}`
}

/** How far beyond an edge its neighbour is looked for, mm: more than two outlines stray from each other. */
const BESIDE_MM = 0.2

/**
 * The walls on a ring that turn to the reader and are not covered by another body of the same height beside them.
 * `goesOn`: edges that have a wall below them too, so that their foot is none; null where no foot is an edge.
 */
export function wallsOf(
  ring: Float64Array,
  from: number,
  to: number,
  view: LevelView,
  beside: readonly Region[],
  goesOn: ReadonlySet<string> | null
): Wall[] {
  const n = ring.length / 2
  const foot: Spot[] = []
  for (let k = 0; k < n; k++) foot.push(view.put(ring[2 * k]!, ring[2 * k + 1]!, from))
  const up = view.put(0, 0, to)[1] - view.put(0, 0, from)[1]
  const seen = foot.map((_, k) => turnsToReader(ring, foot, k, view.over) && !covered(ring, k, beside))
  const start = seen.findIndex((yes, k) => yes && !seen[(k + n - 1) % n])
  if (start < 0) return []
  const out: Wall[] = []
  for (let i = 0; i < n; ) {
    if (!seen[(start + i) % n]) {
      i++
      continue
    }
    const run = [(start + i) % n]
    const edges: Float64Array[] = []
    for (; i < n && seen[(start + i) % n]; i++) {
      const k = (start + i) % n
      const q = (k + 1) % n
      run.push(q)
      if (goesOn !== null && !goesOn.has(edgeKey(ring, 2 * k, 2 * q)))
        edges.push(Float64Array.of(...foot[k]!, ...foot[q]!))
    }
    const area = new Float64Array(4 * run.length)
    run.forEach((k, j) => {
      const [x, y] = foot[k]!
      area.set([x, y], 2 * j)
      area.set([x, y + up], 4 * run.length - 2 * j - 2)
    })
    const upright = ([x, y]: Spot) => Float64Array.of(x, y, x, y + up)
    out.push({
      area,
      foot: edges,
      ends: [upright(foot[run[0]!]!), upright(foot[run[run.length - 1]!]!)],
      far: Math.max(foot[run[0]!]![1], foot[run[run.length - 1]!]![1])
    })
  }
  return out
}

// On the sheet an outline runs counter-clockwise, its holes clockwise (the other way round when turned over): a wall
// turns to the reader where its edge runs to the right.
function turnsToReader(ring: Float64Array, foot: readonly Spot[], k: number, over: boolean): boolean {
  const q = (k + 1) % foot.length
  if (ring[2 * k] === ring[2 * q] && ring[2 * k + 1] === ring[2 * q + 1]) return false
  return (over ? -1 : 1) * (foot[q]![0] - foot[k]![0]) > 1e-9
}

function covered(ring: Float64Array, k: number, beside: readonly Region[]): boolean {
  const q = (2 * k + 2) % ring.length
  const [dx, dy] = [ring[q]! - ring[2 * k]!, ring[q + 1]! - ring[2 * k + 1]!]
  const long = Math.hypot(dx, dy)
  // Inside lies to the left of an edge.
  const x = (ring[2 * k]! + ring[q]!) / 2 + (BESIDE_MM * dy) / long
  const y = (ring[2 * k + 1]! + ring[q + 1]!) / 2 - (BESIDE_MM * dx) / long
  return beside.some(r => inside(r, x, y))
}
