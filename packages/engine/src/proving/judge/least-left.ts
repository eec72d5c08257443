import { HOLLOW_MM } from '../sweep/asker.ts'
import type { Block } from '../sweep/block.ts'
import { SmallMap } from './small-map.ts'

/** The least that is left over a layer or a hollow under what was cut. Place in program coordinates, mm. */
export interface LeastLeft {
  /** "pour 1", "timber 0", or "void". */
  readonly over: string
  readonly mm: number
  readonly x: number
  readonly y: number
}

/** Of every layer and hollow under the floor of what was cut: how much was left over it at the least. */
export function leastLeft(block: Block): { least: LeastLeft[]; depth: SmallMap } {
  const { nx, top } = block
  const depth = new SmallMap(nx, block.ny)
  // By column: how low it was cut anywhere, and where.
  const { columns } = block
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
      const below = spans[n + 1]
      const open = below === undefined ? s.from > block.bedMm + HOLLOW_MM : s.from - below.to > 1e-6
      if (open && s.from < t - 1e-4) say('void', t - s.from)
    })
  }
  return { least: [...best.values()].sort((a, b) => a.mm - b.mm), depth }
}
