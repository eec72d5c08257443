import type { Move } from '../toolpath.ts'
import { sweepOf } from './arc.ts'

/** Two heights or places nearer than this are one, mm. */
export const SAME_MM = 1e-6

interface Place {
  readonly x: number
  readonly y: number
  readonly z: number
}

/**
 * The rapid moves straight down that end below `topMm` where this cutter has not cut down to that height before, by
 * index. The middle of the cutter has to stand in what it took away: that is needed, not enough; the sweep over the
 * stack proves the rest.
 *
 * @param radiusMm of the cutter
 */
export function unfreeDowns(moves: readonly Move[], topMm: number, radiusMm: number): number[] {
  const out: number[] = []
  let at: Place | null = null
  for (const [i, move] of moves.entries()) {
    if (move.kind === 'dwell') continue
    const down = move.kind === 'rapid' && at !== null && move.z < at.z - SAME_MM
    if (down && move.z < topMm - SAME_MM && !cutBefore(moves, i, move, radiusMm)) out.push(i)
    at = move
  }
  return out
}

// Looked for backwards: what was cut last lies nearest.
function cutBefore(moves: readonly Move[], until: number, place: Place, radiusMm: number): boolean {
  for (let i = until - 1; i > 0; i--) {
    const move = moves[i]!
    if (move.kind !== 'line' && move.kind !== 'arc') continue
    if (move.z > place.z + SAME_MM) continue
    const from = startOf(moves, i)
    if (from === null) continue
    const away =
      move.kind === 'line' || from.z > place.z + SAME_MM
        ? fromLine(place, from, move)
        : fromArc(place, from, move)
    if (away <= radiusMm + SAME_MM) return true
  }
  return false
}

/** Where a move starts: the end of the last one before it that went anywhere. */
export function startOf(moves: readonly Move[], i: number): Place | null {
  for (let k = i - 1; k >= 0; k--) {
    const move = moves[k]!
    if (move.kind !== 'dwell') return move
  }
  return null
}

// A line that comes down from above counts where it is low enough.
function fromLine(p: Place, from: Place, to: Place): number {
  const drop = from.z - to.z
  const first = from.z <= p.z + SAME_MM || drop <= 0 ? 0 : Math.min(1, (from.z - p.z) / drop)
  const dx = to.x - from.x
  const dy = to.y - from.y
  const square = dx * dx + dy * dy
  const t = square === 0 ? 1 : ((p.x - from.x) * dx + (p.y - from.y) * dy) / square
  const held = Math.min(1, Math.max(first, t))
  return Math.hypot(p.x - from.x - held * dx, p.y - from.y - held * dy)
}

function fromArc(p: Place, from: Place, arc: Extract<Move, { kind: 'arc' }>): number {
  const r = Math.hypot(from.x - arc.cx, from.y - arc.cy)
  const sweep = sweepOf(from, arc)
  const a = Math.atan2(p.y - arc.cy, p.x - arc.cx) - Math.atan2(from.y - arc.cy, from.x - arc.cx)
  const turned = (((sweep < 0 ? -a : a) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI)
  if (turned <= Math.abs(sweep)) return Math.abs(Math.hypot(p.x - arc.cx, p.y - arc.cy) - r)
  return Math.min(Math.hypot(p.x - from.x, p.y - from.y), Math.hypot(p.x - arc.x, p.y - arc.y))
}
