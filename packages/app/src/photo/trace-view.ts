import type { Point } from '../../../engine/src/draw/perspective.ts'
import type { SheetScale } from '../../../engine/src/draw/unwarp.ts'

/** What of the plan a pad shows: the place at its middle, mm, and px of the screen a mm. */
export interface View {
  readonly middle: Point
  readonly scale: number
}

/** Width and height of a pad, px of the screen. */
export type Size = readonly [number, number]

interface Box {
  readonly minX: number
  readonly minY: number
  readonly maxX: number
  readonly maxY: number
}

/** Least and greatest px a mm: a table top whole, a hair's breadth. */
const SCALES = [0.05, 60] as const
/** Air about what is shown whole, share of the pad. */
const AIR = 0.06
/** Least px between lines of the grid. */
const LEAST_GRID_PX = 9
/** Lines in a row at most: a pad of 4000 px with lines 9 px apart. */
const MOST_LINES = 500

export function sheetOf(v: View, [width, height]: Size): SheetScale {
  return {
    unitsPerMm: v.scale,
    originX: width / 2 - v.middle[0] * v.scale,
    originY: height / 2 + v.middle[1] * v.scale
  }
}

export function toPad(s: SheetScale, [x, y]: Point): [number, number] {
  return [s.originX + x * s.unitsPerMm, s.originY - y * s.unitsPerMm]
}

export function toPlan(s: SheetScale, [px, py]: Point): [number, number] {
  return [(px - s.originX) / s.unitsPerMm, (s.originY - py) / s.unitsPerMm]
}

/** The view that shows a box of the plan whole. */
export function whole(box: Box, [width, height]: Size): View {
  const wide = Math.max(1, box.maxX - box.minX)
  const high = Math.max(1, box.maxY - box.minY)
  const scale = (1 - 2 * AIR) * Math.min(width / wide, height / high)
  return { middle: [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2], scale: scaled(scale) }
}

/** The view `times` as large; the place under `about` stays there. */
export function zoomed(v: View, size: Size, about: Point, times: number): View {
  const scale = scaled(v.scale * times)
  const [x, y] = toPlan(sheetOf(v, size), about)
  return {
    scale,
    middle: [x - (about[0] - size[0] / 2) / scale, y + (about[1] - size[1] / 2) / scale]
  }
}

/** The view pulled by px of the screen. */
export function pulled(v: View, dx: number, dy: number): View {
  return { ...v, middle: [v.middle[0] - dx / v.scale, v.middle[1] + dy / v.scale] }
}

/** Both boxes in one. */
export function together(a: Box, b: Box | null): Box {
  if (b === null) return a
  return {
    minX: Math.min(a.minX, b.minX),
    minY: Math.min(a.minY, b.minY),
    maxX: Math.max(a.maxX, b.maxX),
    maxY: Math.max(a.maxY, b.maxY)
  }
}

/** How far apart the lines of the grid are, mm: 1, 10, 100 as they fit. */
export function gridStep(v: View): number {
  return [1, 10, 100, 1000].find(mm => mm * v.scale >= LEAST_GRID_PX) ?? 10_000
}

/** The grid as path data: fine lines and every tenth. */
export function gridPaths(v: View, size: Size): { fine: string; coarse: string } {
  const stepMm = gridStep(v)
  const s = sheetOf(v, size)
  const [x0, y1] = toPlan(s, [0, 0])
  const [x1, y0] = toPlan(s, [size[0], size[1]])
  let [fine, coarse] = ['', '']
  const line = (k: number, d: string) => {
    if (k % 10 === 0) coarse += d
    else fine += d
  }
  const first = Math.ceil(x0 / stepMm)
  for (let k = first; k * stepMm <= x1 && k < first + MOST_LINES; k++)
    line(k, `M${toPad(s, [k * stepMm, 0])[0].toFixed(1)} 0V${size[1]}`)
  const low = Math.ceil(y0 / stepMm)
  for (let k = low; k * stepMm <= y1 && k < low + MOST_LINES; k++)
    line(k, `M0 ${toPad(s, [0, k * stepMm])[1].toFixed(1)}H${size[0]}`)
  return { fine, coarse }
}

/** Rings of the plan as path data on the pad. */
export function ringsOnPad(s: SheetScale, rings: readonly Float64Array[]): string {
  let d = ''
  for (const ring of rings) {
    for (let k = 0; k < ring.length; k += 2) {
      const [x, y] = toPad(s, [ring[k]!, ring[k + 1]!])
      d += `${k === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`
    }
    d += 'Z'
  }
  return d
}

function scaled(scale: number): number {
  return Math.min(SCALES[1], Math.max(SCALES[0], scale))
}
