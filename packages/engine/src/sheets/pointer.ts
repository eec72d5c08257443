import { inside } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import { LINK_MM } from './core-strip.ts'
import type { Mark } from './mark.ts'
import { line } from './mark.ts'
import type { PageView } from './page-data.ts'

/** How far inside the outline the pointer stays, mm: on the very edge nothing is left of the piece. */
const HAIR_MM = 0.2
const HALVINGS = 20

function tenth(mm: number): number {
  return Math.round(mm * 10) / 10
}

/** Whether the outline holds a place with a hair round it. */
export function wellInside(outline: Region, x: number, y: number): boolean {
  return [-HAIR_MM, HAIR_MM].every(d => inside(outline, x + d, y) && inside(outline, x, y + d))
}

/**
 * Where the pointer comes to on its way from a place inside to another, in tenths of a millimetre: the last place
 * on the straight way that is inside by a hair.
 */
export function pointerTo(
  outline: Region,
  from: readonly [number, number],
  to: readonly [number, number]
): [number, number] {
  const at = (t: number): [number, number] => [
    tenth(from[0] + t * (to[0] - from[0])),
    tenth(from[1] + t * (to[1] - from[1]))
  ]
  if (wellInside(outline, ...at(1))) return at(1)
  let [good, bad] = [0, 1]
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (good + bad) / 2
    if (wellInside(outline, ...at(middle))) good = middle
    else bad = middle
  }
  return at(good)
}

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
