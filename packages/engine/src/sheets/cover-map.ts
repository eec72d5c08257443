import type { Work } from '../findings/work.ts'
import type { ProgramSet } from '../programs/program-set.ts'
import type { StepProof } from '../programs/prove-set.ts'
import type { SmallMap } from '../proving/judge/small-map.ts'
import type { Mark, Paint } from './mark.ts'
import { box, text } from './mark.ts'
import { overName } from './over-name.ts'
import type { SettingSize } from './setting-sheet.ts'
import { settingView } from './setting-sheet.ts'
import type { View } from './view.ts'
import { onSheet } from './view.ts'

/** Bands of what is left, mm: from, below. The least is drawn strongest. */
export const COVER_BANDS: readonly (readonly [fromMm: number, toMm: number, paint: Paint])[] = [
  [0, 2, 'cover-1'],
  [2, 4, 'cover-2'],
  [4, 8, 'cover-3'],
  [8, 16, 'cover-4'],
  [16, Number.POSITIVE_INFINITY, 'cover-5']
]

/** The least that is left over a layer or hollow in a setting. mm, in the coordinates of the setting. */
export interface LeastOver {
  /** What the maker calls it. */
  readonly over: string
  readonly mm: number
  readonly x: number
  readonly y: number
  readonly files: readonly string[]
}

/** A map over the drawing of a setting. */
export interface CutMap {
  readonly marks: readonly Mark[]
  /** Bands that are met, in order. */
  readonly bands: readonly number[]
  readonly least: readonly LeastOver[]
}

/** Rings at the places where least is left, mm; figures beside them. */
const RING_MM = 1.6
const FIGURE_MM = 3.25

/**
 * What the programs of a setting (one alone, where it is named) leave over the next layer or hollow under their floors,
 * in bands, with a ring at the least over each. Flattening covers all and is left out until it is asked for. null: no
 * layer or hollow lies under what is cut.
 */
export function coverMap(
  work: Work,
  set: ProgramSet,
  proofs: readonly StepProof[],
  setting: number,
  size: SettingSize,
  only: string | null = null
): CutMap | null {
  const { view } = settingView(work, set.machining.settings[setting]!, size)
  const own = proofs.filter(
    p => p.setting === setting && (only === null ? !flattens(set, p) : p.programs.some(x => x.file === only))
  )
  const marks: Mark[] = []
  const bands = new Set<number>()
  const least = new Map<string, LeastOver>()
  for (const { proof, programs } of own) {
    const { cover, cellMm, minX, minY } = proof
    const grid = { map: cover, pixelMm: cover.every * cellMm, minX, minY }
    for (const [n, rings] of bandRings(grid, view)) {
      bands.add(n)
      marks.push({ kind: 'region', rings, paint: COVER_BANDS[n]![2], hatch: null, edge: null })
    }
    for (const l of proof.leastLeft) {
      const over = overName(work, l.over)
      if (l.mm >= (least.get(over)?.mm ?? Number.POSITIVE_INFINITY)) continue
      least.set(over, { over, mm: l.mm, x: l.x, y: l.y, files: programs.map(p => p.file) })
    }
  }
  if (bands.size === 0) return null
  const sorted = [...least.values()].sort((a, b) => a.mm - b.mm)
  sorted.forEach((l, i) => {
    const at = onSheet(view, l.x, l.y)
    marks.push(
      { kind: 'circle', ink: 'outline', at, radiusMm: RING_MM },
      text([at[0] + RING_MM + 1, at[1] + RING_MM], String(i + 1), {
        heightMm: FIGURE_MM,
        strong: true
      })
    )
  })
  return { marks, bands: [...bands].sort((a, b) => a - b), least: sorted }
}

/**
 * Where the programs of a setting leave what is to be cut away, or take what is to stand. null: nowhere.
 */
export function offMap(
  work: Work,
  set: ProgramSet,
  proofs: readonly StepProof[],
  setting: number,
  size: SettingSize
): { readonly marks: readonly Mark[]; readonly leftMm: number; readonly cutAwayMm: number } | null {
  const { view } = settingView(work, set.machining.settings[setting]!, size)
  const marks: Mark[] = []
  let [leftMm, cutAwayMm] = [0, 0]
  for (const { proof } of proofs.filter(p => p.setting === setting)) {
    if (proof.comparison === null) continue
    const { left, cutAway } = proof.comparison
    leftMm = Math.max(leftMm, left.mostMm)
    cutAwayMm = Math.max(cutAwayMm, cutAway.mostMm)
    for (const [{ map }, paint] of [
      [left, 'left'],
      [cutAway, 'cut-away']
    ] as const) {
      const rings = runs(
        { map, pixelMm: map.every * proof.cellMm, minX: proof.minX, minY: proof.minY },
        view,
        v => v > 0
      )
      if (rings.length > 0) marks.push({ kind: 'region', rings, paint, hatch: null, edge: null })
    }
  }
  return marks.length === 0 ? null : { marks, leftMm, cutAwayMm }
}

function flattens(set: ProgramSet, { programs }: StepProof): boolean {
  return set.programs
    .filter(p => programs.some(q => q.file === p.file))
    .every(p => p.made.every(m => m.operation.kind === 'flatten'))
}

interface Grid {
  readonly map: SmallMap
  readonly pixelMm: number
  readonly minX: number
  readonly minY: number
}

function bandRings(grid: Grid, view: View): [band: number, rings: Float64Array[]][] {
  return COVER_BANDS.flatMap(([from, to], n): [number, Float64Array[]][] => {
    const rings = runs(grid, view, v => v > 0 && v >= from && v < to)
    return rings.length === 0 ? [] : [[n, rings]]
  })
}

// Pixels as boxes on the sheet: those side by side in one, and what is alike in the row below joined to it.
function runs(
  { map, pixelMm, minX, minY }: Grid,
  view: View,
  of: (value: number) => boolean
): Float64Array[] {
  const { nx, ny, values } = map
  const out: Float64Array[] = []
  let open = new Map<string, [i0: number, i1: number, j0: number]>()
  const close = ([i0, i1, j0]: [number, number, number], j: number) => {
    const [x0, y0] = onSheet(view, minX + i0 * pixelMm, minY + j0 * pixelMm)
    const [x1, y1] = onSheet(view, minX + i1 * pixelMm, minY + j * pixelMm)
    out.push(box(x0, y0, x1, y1))
  }
  for (let j = 0; j <= ny; j++) {
    const row = new Map<string, [number, number, number]>()
    for (let i = 0; j < ny && i < nx; i++) {
      if (!of(values[j * nx + i]!)) continue
      const start = i
      while (i < nx && of(values[j * nx + i]!)) i++
      const key = `${start} ${i}`
      row.set(key, [start, i, open.get(key)?.[2] ?? j])
    }
    for (const [key, run] of open) if (!row.has(key)) close(run, j)
    open = row
  }
  return out
}
