import type { Region } from './region.ts'

/**
 * The edges of rings, sorted into rows of equal height, so that what lies level with a place is found at once. An edge
 * stands in every row it reaches.
 */
export interface EdgeRows extends Rows {
  /** x0, y0, x1, y1 of each edge. */
  readonly at: Float64Array
  /** Row after row, where its edges begin in `at`. */
  readonly rows: Int32Array
  /** Where each row begins in `rows`; one more at the end. */
  readonly starts: Int32Array
}

interface Rows {
  readonly minY: number
  readonly maxY: number
  readonly perRow: number
  readonly count: number
}

/** Most rows; fewer where there are few edges. */
const MOST_ROWS = 512

export function edgeRows(rings: readonly Float64Array[]): EdgeRows {
  const at = edgesOf(rings)
  let minY = Number.POSITIVE_INFINITY
  let maxY = Number.NEGATIVE_INFINITY
  for (let k = 1; k < at.length; k += 2) {
    minY = Math.min(minY, at[k]!)
    maxY = Math.max(maxY, at[k]!)
  }
  const count = maxY > minY ? Math.min(MOST_ROWS, Math.max(1, at.length >> 3)) : 1
  const place = { minY, maxY, perRow: maxY > minY ? (maxY - minY) / count : 1, count }
  const starts = new Int32Array(count + 1)
  for (let e = 0; e < at.length; e += 4) {
    const last = rowAt(place, Math.max(at[e + 1]!, at[e + 3]!))
    for (let row = rowAt(place, Math.min(at[e + 1]!, at[e + 3]!)); row <= last; row++) starts[row + 1]!++
  }
  for (let row = 0; row < count; row++) starts[row + 1]! += starts[row]!
  const rows = new Int32Array(starts[count]!)
  const next = starts.slice(0, count)
  for (let e = 0; e < at.length; e += 4) {
    const last = rowAt(place, Math.max(at[e + 1]!, at[e + 3]!))
    for (let row = rowAt(place, Math.min(at[e + 1]!, at[e + 3]!)); row <= last; row++) rows[next[row]!++] = e
  }
  return { ...place, at, rows, starts }
}

/** The row a height falls in; the first and the last for what lies beyond. */
export function rowAt({ minY, perRow, count }: Rows, y: number): number {
  const row = Math.floor((y - minY) / perRow)
  return row < 0 ? 0 : row < count ? row : count - 1
}

function edgesOf(rings: readonly Float64Array[]): Float64Array {
  const out = new Float64Array(rings.reduce((sum, r) => sum + 2 * r.length, 0))
  let at = 0
  for (const ring of rings) {
    const n = ring.length
    for (let k = 0, p = n - 2; k < n; p = k, k += 2) {
      out[at++] = ring[p]!
      out[at++] = ring[p + 1]!
      out[at++] = ring[k]!
      out[at++] = ring[k + 1]!
    }
  }
  return out
}

/** Regions of fewer edges are searched whole. */
const LEAST_EDGES = 48
/** A region is sorted when it is asked for the third time: sorting costs about as much as a few searches. */
const PATIENCE = 2

const known = new WeakMap<Region, { asked: number; rows: EdgeRows | null }>()

/** The sorted edges of a region that is searched again and again; null while searching it whole is as good. */
export function rowsOf(region: Region): EdgeRows | null {
  let points = 0
  for (const ring of region.rings) points += ring.length
  if (points < 2 * LEAST_EDGES) return null
  const kept = known.get(region)
  if (kept === undefined) {
    known.set(region, { asked: 1, rows: null })
    return null
  }
  if (kept.rows === null && kept.asked++ >= PATIENCE) kept.rows = edgeRows(region.rings)
  return kept.rows
}
