import { signal } from '@preact/signals'
import type { PlanMap } from '../../../engine/src/draw/pull.ts'
import type { PageView } from '../../../engine/src/sheets/page-data.ts'
import type { SectionPath } from '../../../engine/src/sheets/section-cut.ts'

/** Where the pointer stands on the plan, mm; null: where the plan has most to show. */
export const pointer = signal<readonly [number, number] | null>(null)
export const levels = signal<'finished' | 'as cast'>('finished')
export const stretched = signal(false)
/** Whether the piece stands in the round where the plan lies else. */
export const inRound = signal(false)
/** Whether the highest temperatures lie over the plan, and on which height as cast, mm; null: where it is hottest. */
export const heatOn = signal(false)
export const heatZ = signal<number | null>(null)
/** The maker's own line of the section; null: the one that shows most. */
export const ownLine = signal<SectionPath | null>(null)

/** A place of the plan on a sheet, mm from its upper left corner, y down as SVG has it. */
export function toSheet(v: PageView, x: number, y: number): readonly [number, number] {
  return [v.originX + (v.face === 'back' ? -x : x) * v.scale, v.heightMm - v.originY - y * v.scale]
}

/** The place of the plan under a place on the sheet. */
function toPlan(v: PageView, sx: number, sy: number): readonly [number, number] {
  const x = (sx - v.originX) / v.scale
  return [v.face === 'back' ? -x : x, (v.heightMm - sy - v.originY) / v.scale]
}

/** The place of the plan under a pointer event on a drawing; null when the drawing is not shown. */
export function eventPlace(
  svg: SVGSVGElement,
  v: PageView,
  e: { clientX: number; clientY: number }
): readonly [number, number] | null {
  const matrix = svg.getScreenCTM()
  if (matrix === null) return null
  const spot = new DOMPoint(e.clientX, e.clientY).matrixTransform(matrix.inverse())
  return toPlan(v, spot.x, spot.y)
}

/** A ring of the plan as path data on a sheet. */
export function ringPath(v: PageView, rings: readonly Float64Array[]): string {
  let d = ''
  for (const ring of rings) {
    for (let k = 0; k < ring.length; k += 2) {
      const [x, y] = toSheet(v, ring[k]!, ring[k + 1]!)
      d += `${k === 0 ? 'M' : 'L'}${x.toFixed(2)} ${y.toFixed(2)}`
    }
    d += 'Z'
  }
  return d
}

/** A map of the plan as a transform of what is drawn on a sheet. */
export function sheetTransform(v: PageView, [a, b, c, d, e, f]: PlanMap): string {
  const side = v.face === 'back' ? -1 : 1
  const [x0, y0] = [v.originX, v.heightMm - v.originY]
  return `matrix(${[
    a,
    -side * b,
    -side * c,
    d,
    x0 - a * x0 + side * c * y0 + side * v.scale * e,
    y0 + side * b * x0 - d * y0 - v.scale * f
  ]
    .map(n => n.toFixed(5))
    .join(' ')})`
}

/** A place by hand: to a tenth of a millimetre. A zero is never negative. */
export function tenth(mm: number): number {
  return Math.round(mm * 10) / 10 + 0
}

/** A place that lies on another part's line: to the precision of the document, a thousandth of a millimetre. */
export function thousandth(mm: number): number {
  return Math.round(mm * 1000) / 1000 + 0
}
