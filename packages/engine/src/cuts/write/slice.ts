import type { Move, Pass, Toolpath } from '../toolpath.ts'
import { SAME_MM, startOf } from './free.ts'

/** The moves of one pass; of a path without passes: all of it. What stands before the first pass belongs to it. */
export interface Slice {
  readonly name: string | null
  readonly moves: readonly Move[]
  /** Where the cutter stands, high, before the first of them; null: nowhere yet. */
  readonly from: { readonly x: number; readonly y: number; readonly z: number } | null
}

export function slicesOf({ moves, passes }: Toolpath): Slice[] {
  if (passes.length === 0) return [{ name: null, moves, from: null }]
  return passes.map((pass, k) => {
    const from = k === 0 ? 0 : pass.from
    const to = passes[k + 1]?.from ?? moves.length
    return { name: pass.name, moves: moves.slice(from, to), from: startOf(moves, from) }
  })
}

/** One path of slices that may have lain apart: each is entered from above where its own began. */
export function joined(slices: readonly Slice[]): Toolpath {
  const moves: Move[] = []
  const passes: Pass[] = []
  for (const slice of slices) {
    if (slice.name !== null) passes.push({ name: slice.name, from: moves.length })
    const { from } = slice
    const at = startOf(moves, moves.length)
    const first = slice.moves.find(m => m.kind !== 'dwell')
    // It begins with a rapid move across: that leads there by itself.
    const leads = first?.kind === 'rapid' && from !== null && first.z >= from.z - SAME_MM
    if (from !== null && !leads && (at === null || at.x !== from.x || at.y !== from.y))
      moves.push({ kind: 'rapid', ...from })
    moves.push(...slice.moves)
  }
  return { moves, passes }
}
