import type { InUse } from '../fits/in-use.ts'
import { inUseOf } from '../fits/in-use.ts'
import { loadedPiece } from '../fits/loaded-piece.ts'
import { supportProblems } from '../fits/supports.ts'
import type { Patch } from '../piece/patch.ts'
import { setValue } from './fix.ts'
import type { Work } from './work.ts'

/** Steps by which legs or rails are moved in a search, as shares of their distance from their middle. */
const STEP = 0.05
const MOST_STEPS = 20
/** Ways in which they are moved: both directions, or one. */
const WAYS = [
  [1, 1],
  [1, 0],
  [0, 1]
] as const

type Point = [number, number]

/**
 * The patch that moves all legs or rails outward from or inward to their middle, by as little as makes a piece lie
 * well; null where none of the places tried does.
 */
export function movedSupports(work: Work, well: (use: InUse) => boolean): Patch | null {
  const { supports } = work.piece
  const { stack } = work
  const loaded = loadedPiece(work)
  if (supports === undefined || loaded === null) return null
  const points = supports.legs ?? supports.rails!.flatMap(r => [r.from, r.to])
  const middle = [0, 1].map(k => points.reduce((sum, p) => sum + p[k]!, 0) / points.length)
  const { outline } = stack.geometry
  for (let n = 1; n <= MOST_STEPS; n++) {
    for (const by of [n * STEP, -n * STEP]) {
      if (by <= -1) continue
      for (const way of WAYS) {
        const shift = (p: readonly number[], of: readonly number[]): Point => [
          Math.round(p[0]! + by * way[0] * (of[0]! - middle[0]!)),
          Math.round(p[1]! + by * way[1] * (of[1]! - middle[1]!))
        ]
        const legs = supports.legs?.map(p => shift(p, p))
        // A rail keeps its length and its direction: it goes with its middle.
        const rails = supports.rails?.map(({ from, to }) => {
          const own = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]
          return { from: shift(from, own), to: shift(to, own) }
        })
        const moved = { ...supports, legs, rails }
        // Rounded to whole mm they may come to stand on one line, or beside the piece.
        if (supportProblems(moved, outline).length > 0 || !well(inUseOf(loaded, moved))) continue
        return legs !== undefined
          ? setValue(work.document, '/supports/legs', legs)
          : setValue(work.document, '/supports/rails', rails)
      }
    }
  }
  return null
}

/** Whether it neither sags nor tips past what is let pass. */
export function liesWell(use: InUse, leaningG: number): boolean {
  const sags = [use.sag, use.overhang].some(s => s !== null && s.mm > s.limitMm)
  return !sags && (use.tipsAtG === null || use.tipsAtG > Math.max(1, leaningG))
}
