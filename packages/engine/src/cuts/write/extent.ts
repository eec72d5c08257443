import type { Move, Toolpath } from '../toolpath.ts'
import { sweepOf } from './arc.ts'
import { startOf } from './free.ts'
import type { Box, CutterRun } from './program.ts'

/** The box that the tip of the cutter stays in over these paths, mm; what bulges of an arc counts. */
export function extentOf(paths: readonly Toolpath[]): Box {
  const box = new Extent()
  for (const { moves } of paths)
    for (const [i, move] of moves.entries()) {
      if (move.kind === 'dwell') continue
      box.take(move.x, move.y, move.z)
      const from = move.kind === 'arc' ? startOf(moves, i) : null
      if (move.kind === 'arc' && from !== null) box.bulge(from, move)
    }
  return box
}

/** The box of what is cut: rapid moves left out, but for the places that cuts start from. */
export function cutExtentOf(paths: readonly Toolpath[]): Box {
  const box = new Extent()
  for (const { moves } of paths)
    for (const [i, move] of moves.entries()) {
      if (move.kind !== 'line' && move.kind !== 'arc') continue
      const from = startOf(moves, i)
      if (from !== null) box.take(from.x, from.y, move.z)
      box.take(move.x, move.y, move.z)
      if (move.kind === 'arc' && from !== null) box.bulge(from, move)
    }
  return box
}

export function pathsOf(runs: readonly CutterRun[]): Toolpath[] {
  return runs.flatMap(r => r.parts.map(p => p.path))
}

class Extent implements Box {
  minX = Number.POSITIVE_INFINITY
  maxX = Number.NEGATIVE_INFINITY
  minY = Number.POSITIVE_INFINITY
  maxY = Number.NEGATIVE_INFINITY
  minZ = Number.POSITIVE_INFINITY
  maxZ = Number.NEGATIVE_INFINITY

  take(x: number, y: number, z: number): void {
    this.minX = Math.min(this.minX, x)
    this.maxX = Math.max(this.maxX, x)
    this.minY = Math.min(this.minY, y)
    this.maxY = Math.max(this.maxY, y)
    this.minZ = Math.min(this.minZ, z)
    this.maxZ = Math.max(this.maxZ, z)
  }

  /** The four outermost points of the circle, where the arc passes them. */
  bulge(from: { x: number; y: number }, arc: Extract<Move, { kind: 'arc' }>): void {
    const r = Math.hypot(from.x - arc.cx, from.y - arc.cy)
    const start = Math.atan2(from.y - arc.cy, from.x - arc.cx)
    const sweep = sweepOf(from, arc)
    for (let k = 0; k < 4; k++) {
      const turn = (k * Math.PI) / 2 - start
      const along = (((sweep < 0 ? -turn : turn) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI)
      if (along > Math.abs(sweep)) continue
      const x = [1, 0, -1, 0][k]!
      const y = [0, 1, 0, -1][k]!
      this.take(arc.cx + r * x, arc.cy + r * y, arc.z)
    }
  }
}
