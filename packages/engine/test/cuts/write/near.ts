/** A move by its ends, for distances; a full turn where an arc ends where it starts. */
export interface Way {
  readonly from: readonly [number, number, number]
  readonly to: readonly [number, number, number]
  readonly centre: readonly [number, number] | null
  readonly clockwise: boolean
}

const TURN = 2 * Math.PI
const mod = (a: number) => ((a % TURN) + TURN) % TURN

function turnOf(w: Way): { start: number; sweep: number; r: number } {
  const [cx, cy] = w.centre!
  const start = Math.atan2(w.from[1] - cy, w.from[0] - cx)
  const end = Math.atan2(w.to[1] - cy, w.to[0] - cx)
  const same = w.from[0] === w.to[0] && w.from[1] === w.to[1]
  const up = same ? TURN : mod(w.clockwise ? start - end : end - start)
  return { start, sweep: w.clockwise ? -up : up, r: Math.hypot(w.from[0] - cx, w.from[1] - cy) }
}

/** The place at the share `t` of a move. */
export function placeAt(w: Way, t: number): [number, number, number] {
  const z = w.from[2] + (w.to[2] - w.from[2]) * t
  if (w.centre === null)
    return [w.from[0] + (w.to[0] - w.from[0]) * t, w.from[1] + (w.to[1] - w.from[1]) * t, z]
  const { start, sweep, r } = turnOf(w)
  return [w.centre[0] + r * Math.cos(start + sweep * t), w.centre[1] + r * Math.sin(start + sweep * t), z]
}

/** Distance of a place from a move; of a helix an upper bound. */
export function away(p: readonly [number, number, number], w: Way): number {
  const d = w.to.map((v, k) => v - w.from[k]!)
  const tries: number[] = [0, 1]
  if (w.centre === null) {
    const square = d[0]! ** 2 + d[1]! ** 2 + d[2]! ** 2
    if (square > 0) tries.push(d.reduce((s, v, k) => s + v * (p[k]! - w.from[k]!), 0) / square)
  } else {
    const { start, sweep } = turnOf(w)
    const a = Math.atan2(p[1] - w.centre[1], p[0] - w.centre[0])
    tries.push(mod(sweep < 0 ? start - a : a - start) / Math.abs(sweep))
  }
  if (d[2] !== 0) tries.push((p[2] - w.from[2]) / d[2]!)
  let least = Number.POSITIVE_INFINITY
  for (const t of tries) {
    const q = placeAt(w, Math.min(1, Math.max(0, t)))
    least = Math.min(least, Math.hypot(q[0] - p[0], q[1] - p[1], q[2] - p[2]))
  }
  return least
}
