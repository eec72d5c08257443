import { LINK_MM } from './core-strip.ts'
import type { Mark } from './mark.ts'
import { line } from './mark.ts'
import type { PageView } from './page-data.ts'

/** The sheet's spot of a place on the plan. */
function pointerSpot(view: PageView, x: number, y: number): readonly [number, number] {
  return [view.originX + (view.face === 'back' ? -x : x) * view.scale, view.originY + y * view.scale]
}

/**
 * The pointer on a plan: a ring with a point, the line of the section B-B through it, and on the wide sheet the
 * thin line that ties it to the core strip.
 */
export function pointerMarks(view: PageView, x: number, y: number): Mark[] {
  const [px, py] = pointerSpot(view, x, y)
  const link = view.heightMm - LINK_MM
  const marks: Mark[] = [
    { kind: 'circle', ink: 'pointer', at: [px, py], radiusMm: 1.9 },
    { kind: 'circle', ink: 'pointer', at: [px, py], radiusMm: 0.55, filled: true }
  ]
  if (view.id === 'wide')
    marks.push({
      kind: 'path',
      ink: 'pointer',
      lines: [Float64Array.of(px, py + 1.9, px, link, view.widthMm, link)]
    })
  else marks.push(line('pointer', [px, py + 1.9], [px, py + 4]))
  return marks
}
