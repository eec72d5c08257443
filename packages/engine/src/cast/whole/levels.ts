import type { Stack } from '../../stack/stack.ts'

/** Heights of a mould's cells, and how they lie on heights as cast. */
export interface Levels {
  /** Faces between layers of cells, heights as cast, mm, from 0 up; one more than there are layers. */
  readonly facesMm: readonly number[]
  /** Heights of the layers when the resin is liquid, m: a pour stands higher before it shrinks. */
  readonly dzM: readonly number[]
}

/** How finely a mould is divided. */
export interface Fineness {
  /** Cells aimed at across the depth of a pour, and the highest cell, mm. */
  readonly across: number
  readonly highestMm: number
  /** Width of a cell aimed at, mm, least columns across the narrower side, most cells in all. */
  readonly wideMm: number
  readonly leastColumns: number
  readonly mostCells: number
}

/** Full: within about 0.3 K of half the cells (cost table in docs/speed.md). Quick: previews, bands, searches. */
export const FULL_FINENESS: Fineness = {
  across: 12,
  highestMm: 2.5,
  wideMm: 5,
  leastColumns: 24,
  mostCells: 500_000
}
export const QUICK_FINENESS: Fineness = {
  across: 5,
  highestMm: 6,
  wideMm: 10,
  leastColumns: 12,
  mostCells: 40_000
}

/** Heights nearer together than this are one, mm. */
const SAME_MM = 0.3
/** A depth below this takes part as one layer of cells, mm. */
const THIN_MM = 0.5

/**
 * Layers of cells whose faces lie on the levels of pours, tops and undersides of timber, formers and zones of stones.
 * `stretch` multiplies the depth of each pour (by index): liquid over cured, or a depth that is tried.
 */
export function levelsOf(stack: Stack, fineness: Fineness, stretch: readonly number[]): Levels {
  const pours = castPours(stack)
  const top = Math.max(...pours.map(p => p.level), ...stack.geometry.timbers.map(t => t.high))
  const marks = [0, top]
  for (const p of pours) marks.push(p.floor, p.level)
  for (const t of stack.geometry.timbers) marks.push(t.base, t.edge, t.high)
  for (const f of stack.geometry.formers) marks.push(f.from, f.to ?? top)
  stack.piece.pours.forEach(pour => {
    for (const s of pour.stones) marks.push(s.from ?? 0, s.to ?? top)
  })
  const at = [...new Set(marks)].filter(z => z >= 0 && z <= top).sort((a, b) => a - b)
  // Levels of pours are kept as they are, others give way to them.
  const held = new Set(pours.flatMap(p => [p.floor, p.level]))
  const faces = at.filter(
    (z, i) =>
      held.has(z) ||
      i === 0 ||
      (z - at[i - 1]! > SAME_MM && !at.some(y => held.has(y) && Math.abs(y - z) < SAME_MM))
  )
  const out: number[] = [0]
  const dzM: number[] = []
  for (let i = 1; i < faces.length; i++) {
    const [low, high] = [out[out.length - 1]!, faces[i]!]
    if (high - low < 1e-6) continue
    const mid = (low + high) / 2
    const within = pours.filter(p => p.floor < mid && p.level > mid)
    const times = Math.max(1e-3, ...within.map(p => stretch[p.index] ?? 1), within.length === 0 ? 1 : 0)
    const depth = Math.min(...within.map(p => p.level - p.floor), high)
    const cell = Math.min(fineness.highestMm, Math.max(THIN_MM, depth / fineness.across))
    const count = Math.max(1, Math.round(((high - low) * times) / cell))
    for (let k = 1; k <= count; k++) {
      out.push(low + ((high - low) * k) / count)
      dzM.push(((high - low) * times) / count / 1000)
    }
  }
  return { facesMm: out, dzM }
}

/** The pours into the mould, in the order of the document. */
export function castPours(stack: Stack): Stack['pours'][number][] {
  return stack.pours.filter((p, i) => stack.piece.pours[i]!.kind === 'cast' && p.liquidDepth >= 0.05)
}
