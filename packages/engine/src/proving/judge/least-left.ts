import { HOLLOW_MM } from '../sweep/asker.ts'
import type { Block } from '../sweep/block.ts'
import type { Span } from '../sweep/column.ts'
import { SmallMap } from './small-map.ts'

/** The least that is left over a layer or a hollow under what was cut. Place in program coordinates, mm. */
export interface LeastLeft {
  /** "pour 1", "timber 0", or "void". */
  readonly over: string
  readonly mm: number
  readonly x: number
  readonly y: number
}

/** Cells of the picture of what is left, along its longer side: a channel is to be seen as wide as it is. */
const COVER_CELLS = 600

/**
 * Of every layer and hollow under the floor of what was cut: how much was left over it at the least; pictures of the
 * depth taken off, and of what is left over the next layer or hollow under the floor.
 */
export function leastLeft(block: Block): { least: LeastLeft[]; depth: SmallMap; cover: SmallMap } {
  const { nx, top } = block
  const depth = new SmallMap(nx, block.ny)
  const cover = new SmallMap(nx, block.ny, COVER_CELLS)
  // By column: how low it was cut anywhere, and where.
  const { columns } = block
  const bounds = new Array<Float64Array | undefined>(columns.count).fill(undefined)
  const lowest = new Float64Array(columns.count).fill(Number.POSITIVE_INFINITY)
  const cellOf = new Int32Array(columns.count)
  block.forTiles((i0, j0, i1, j1) => {
    for (let j = j0; j < j1; j++)
      for (let i = i0; i < i1; i++) {
        const p = j * nx + i
        const t = top[p]!
        const k = block.columnAt(i, j)
        const taken = columns.top[k]! - t
        if (taken <= 1e-4) continue
        depth.add(i, j, taken)
        const under = bounds[k] ?? boundsOf(block, k)
        bounds[k] = under
        // From high to low: the first under the floor is the next.
        let n = 0
        while (n < under.length && under[n]! >= t - 1e-4) n++
        if (n < under.length) cover.addLeast(i, j, t - under[n]!)
        if (lowest[k]! <= t) continue
        lowest[k] = t
        cellOf[k] = p
      }
  })
  const best = new Map<string, LeastLeft>()
  for (let k = 0; k < lowest.length; k++) {
    const t = lowest[k]!
    if (t === Number.POSITIVE_INFINITY) continue
    const spans = columns.spans(k)
    const p = cellOf[k]!
    const say = (over: string, mm: number) => {
      const known = best.get(over)
      if (known === undefined || mm < known.mm)
        best.set(over, { over, mm, x: block.xOf(p % nx), y: block.yOf(Math.floor(p / nx)) })
    }
    spans.forEach((s, n) => {
      if (s.to < t - 1e-4) say(s.key, t - s.to)
      if (openUnder(block, spans, n) && s.from < t - 1e-4) say('void', t - s.from)
    })
  }
  return { least: [...best.values()].sort((a, b) => a.mm - b.mm), depth, cover }
}

// Whether a hollow lies under a stretch of a column.
function openUnder(block: Block, spans: readonly Span[], n: number): boolean {
  const below = spans[n + 1]
  const { from } = spans[n]!
  return below === undefined ? from > block.bedMm + HOLLOW_MM : from - below.to > 1e-6
}

// Tops of layers and of hollows in a column, from high to low.
function boundsOf(block: Block, k: number): Float64Array {
  const spans = block.columns.spans(k)
  return Float64Array.from(
    spans.flatMap((s, n) => (openUnder(block, spans, n) ? [s.to, s.from] : [s.to]))
  ).sort((a, b) => b - a)
}
