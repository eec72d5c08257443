import type { Bounds } from '../shape/region.ts'

/** Sizes of paper, mm: ISO 216 A4 and the letter size of ANSI/ASME Y14.1 (8.5 × 11 in; memory). */
export const PAPERS = {
  A4: [210, 297],
  letter: [215.9, 279.4]
} as const
export type Paper = keyof typeof PAPERS

/** What one sheet shows of a drawing too large for it: a window, and the numbers of the sheets it joins. */
export interface Tile {
  readonly number: number
  readonly window: Bounds
  readonly left: number | null
  readonly right: number | null
  readonly near: number | null
  readonly far: number | null
}

export interface Tiling {
  readonly widthMm: number
  readonly heightMm: number
  readonly tiles: readonly Tile[]
}

/** What is kept free round the window, mm: the check bar at the left, words and the other bar below; printers leave 5 blank. */
export const MARGIN = { left: 18, right: 7, far: 7, near: 48 } as const
/** By how much neighbouring sheets overlap, mm. */
export const OVERLAP_MM = 12

/** The fewest sheets that show `scope` in true size, upright or lying; sheets without anything on them are left out. */
export function tilingOf(scope: Bounds, paper: Paper, shows: (window: Bounds) => boolean): Tiling {
  const [short, long] = PAPERS[paper]
  const upright = grid(scope, short, long)
  const lying = grid(scope, long, short)
  const use = lying.columns * lying.rows < upright.columns * upright.rows ? lying : upright
  const windows: { readonly column: number; readonly row: number; readonly window: Bounds }[] = []
  for (let row = 0; row < use.rows; row++)
    for (let column = 0; column < use.columns; column++) {
      const minX = use.minX + column * (use.w - OVERLAP_MM)
      // The first row is the far one, as one reads.
      const minY = use.minY + (use.rows - 1 - row) * (use.h - OVERLAP_MM)
      const window = { minX, minY, maxX: minX + use.w, maxY: minY + use.h }
      if (shows(window)) windows.push({ column, row, window })
    }
  const numberAt = (column: number, row: number) => {
    const k = windows.findIndex(w => w.column === column && w.row === row)
    return k < 0 ? null : k + 1
  }
  return {
    widthMm: use.widthMm,
    heightMm: use.heightMm,
    tiles: windows.map(({ column, row, window }, k) => ({
      number: k + 1,
      window,
      left: numberAt(column - 1, row),
      right: numberAt(column + 1, row),
      far: numberAt(column, row - 1),
      near: numberAt(column, row + 1)
    }))
  }
}

function grid(scope: Bounds, widthMm: number, heightMm: number) {
  const w = widthMm - MARGIN.left - MARGIN.right
  const h = heightMm - MARGIN.near - MARGIN.far
  const need = (span: number, one: number) =>
    Math.max(1, Math.ceil((span - OVERLAP_MM) / (one - OVERLAP_MM) - 1e-9))
  const columns = need(scope.maxX - scope.minX, w)
  const rows = need(scope.maxY - scope.minY, h)
  // What is to spare goes to all sides alike.
  const spareX = columns * (w - OVERLAP_MM) + OVERLAP_MM - (scope.maxX - scope.minX)
  const spareY = rows * (h - OVERLAP_MM) + OVERLAP_MM - (scope.maxY - scope.minY)
  return {
    widthMm,
    heightMm,
    w,
    h,
    columns,
    rows,
    minX: scope.minX - spareX / 2,
    minY: scope.minY - spareY / 2
  }
}
