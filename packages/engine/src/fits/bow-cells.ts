import { keptOf } from '../quantity/kept.ts'
import { inside } from '../shape/measure.ts'
import type { Bounds } from '../shape/region.ts'
import type { CoreInterval } from '../stack/core.ts'
import { coresAfter } from '../stack/core.ts'
import type { Stack } from '../stack/stack.ts'

/**
 * The piece over its plan as a few hundred cores, each as it stands after every step that is asked for.
 *
 * The box of the outline is parted into {@link CELLS} by as many cells; a cell is looked at once, at a place that
 * wanders from cell to cell (steps of the golden ratio), so that an edge that runs along a column is met at the right
 * share of it. Cores that are the same at every step are kept once, with their number.
 *
 * Limits: what is narrower than a cell is met by chance; an edge along x or y to about a tenth of a cell (test).
 */
export interface Cells {
  readonly box: Bounds
  /** Cores by column along x, and by row along y; each of its cells with the share of the column it stands for. */
  readonly columns: readonly (readonly Cell[])[]
  readonly rows: readonly (readonly Cell[])[]
}

export interface Cell {
  readonly count: number
  /** One core for each of the counts asked. */
  readonly cores: readonly (readonly CoreInterval[])[]
}

/** Cells along each side of the box of the outline. */
export const CELLS = 16
const GOLDEN = 0.6180339887498949

/** @param counts events played, ascending: see {@link Stack.states} */
export function cellsOf(stack: Stack, box: Bounds, counts: readonly number[]): Cells {
  return keptOf(known, stack, [box.minX, box.minY, box.maxX, box.maxY, ...counts].join(' '), () =>
    laid(stack, box, counts)
  )
}

// A search for a better depth looks at the same cores again and again.
const known = new WeakMap<object, Map<string, Cells>>()

function laid(stack: Stack, box: Bounds, counts: readonly number[]): Cells {
  const { geometry, events } = stack
  const [dx, dy] = [(box.maxX - box.minX) / CELLS, (box.maxY - box.minY) / CELLS]
  const columns = Array.from(
    { length: CELLS },
    () => new Map<string, { count: number; cores: Cell['cores'] }>()
  )
  const rows = Array.from({ length: CELLS }, () => new Map<string, { count: number; cores: Cell['cores'] }>())
  for (let i = 0; i < CELLS; i++) {
    for (let j = 0; j < CELLS; j++) {
      const x = box.minX + (i + ((0.5 + j * GOLDEN) % 1)) * dx
      const y = box.minY + (j + ((0.5 + i * GOLDEN) % 1)) * dy
      if (!inside(geometry.outline, x, y)) continue
      const cores = coresAfter(geometry, events, x, y, counts)
      const key = keyOf(cores)
      for (const group of [columns[i]!, rows[j]!]) {
        const known = group.get(key)
        if (known === undefined) group.set(key, { count: 1, cores })
        else known.count++
      }
    }
  }
  return { box, columns: columns.map(m => [...m.values()]), rows: rows.map(m => [...m.values()]) }
}

/** Heights closer than this are one, mm: a slanted side is taken in steps of it. */
const SAME_MM = 0.5

function keyOf(cores: readonly (readonly CoreInterval[])[]): string {
  let key = ''
  let before: readonly CoreInterval[] | null = null
  for (const core of cores) {
    if (core === before) {
      key += '|'
      continue
    }
    before = core
    key += '|'
    for (const { from, to, material } of core)
      key += `${Math.round(from / SAME_MM)},${Math.round(to / SAME_MM)}${material.kind[0]}${material.index};`
  }
  return key
}
