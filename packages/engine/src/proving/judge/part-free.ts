import { inside } from '../../shape/measure.ts'
import type { Region } from '../../shape/region.ts'
import type { Block } from '../sweep/block.ts'

/** A piece of the part that nothing holds any more. */
export interface CutFree {
  readonly areaMm2: number
  /** The move with which it came free. */
  readonly move: number
  /** A place in it. */
  readonly x: number
  readonly y: number
}

/** Smaller pieces are chips, mm². */
const LEAST_MM2 = 25

/**
 * What of the part came free of the waste that holds it: pieces of what stands inside the outline that hang together
 * with none of the waste, the largest piece of which is taken to be held. What stands is looked at at every so many
 * cells (0.5 mm); cells that share a side hang together. The move is found by putting cells back, the last cut first,
 * until the piece hangs on again.
 *
 * Limits: a slot narrower than the step between cells may be taken for whole, a bridge narrower for none; pieces that
 * lay loose before the program are not spoken of.
 * Check: a disc cut out of a slab, with and without tabs, and the move at which its ring closes (test).
 */
export function cutFree(block: Block, outline: Region): CutFree[] {
  const { cutThrough, sampleNx: nx, sampleEvery: every } = block
  if (!cutThrough.some(m => m >= 0)) return []
  block.ensure(0, 0, block.nx - 1, block.ny - 1)
  const n = cutThrough.length
  const { x0, y0, sx, sy } = block.frame
  const parent = new Int32Array(n).fill(-1)
  const root = (p: number): number => {
    while (parent[p] !== p) {
      parent[p] = parent[parent[p]!]!
      p = parent[p]!
    }
    return p
  }
  const hang = (p: number) => {
    parent[p] = p
    const i = p % nx
    for (const q of [p - nx, i > 0 ? p - 1 : -1, i + 1 < nx ? p + 1 : -1, p + nx])
      if (q >= 0 && q < n && parent[q]! >= 0) parent[root(q)] = root(p)
  }
  for (let p = 0; p < n; p++) {
    const k = block.columnAt((p % nx) * every, Math.floor(p / nx) * every)
    if (cutThrough[p] === -1 && block.columns.through[k]! > Number.NEGATIVE_INFINITY) hang(p)
  }
  // The largest piece of the waste, and the pieces inside the outline.
  const own = new Map<number, number>()
  const waste = new Map<number, number>()
  const inPart = new Uint8Array(n)
  for (let p = 0; p < n; p++) {
    if (parent[p]! < 0) continue
    const x = x0 + sx * block.xOf((p % nx) * every)
    const y = y0 + sy * block.yOf(Math.floor(p / nx) * every)
    inPart[p] = inside(outline, x, y) ? 1 : 0
    const of = inPart[p] === 1 ? own : waste
    const r = root(p)
    of.set(r, (of.get(r) ?? 0) + 1)
  }
  const held = [...waste].sort((a, b) => b[1] - a[1])[0]?.[0]
  if (held === undefined) return []
  const cell2 = (every * block.cellMm) ** 2
  const loose = [...own].filter(([r, cells]) => r !== held && cells * cell2 >= LEAST_MM2)
  if (loose.length === 0) return []
  const pieces = loose.map(([r, cells]) => ({ seed: r, areaMm2: cells * cell2, move: -1 }))
  const cut: number[] = []
  for (let p = 0; p < n; p++) if (cutThrough[p]! >= 0) cut.push(p)
  cut.sort((a, b) => cutThrough[b]! - cutThrough[a]!)
  for (const p of cut) {
    hang(p)
    for (const piece of pieces)
      if (piece.move < 0 && root(piece.seed) === root(held)) piece.move = cutThrough[p]!
  }
  return pieces
    .filter(f => f.move >= 0)
    .map(f => ({
      areaMm2: f.areaMm2,
      move: f.move,
      x: block.xOf((f.seed % nx) * every),
      y: block.yOf(Math.floor(f.seed / nx) * every)
    }))
    .sort((a, b) => b.areaMm2 - a.areaMm2)
}
