import type { Homography, Point } from '../../../engine/src/draw/perspective.ts'
import { mmPerPx, mmToPx, pxToMm } from '../../../engine/src/draw/perspective.ts'
import { traced } from '../../../engine/src/draw/trace.ts'
import { w } from '../text/words.ts'
import { laid, layPhoto, photoSays, picture } from './desk-photo.ts'
import { MOST_TRACE } from './laying.ts'
import { edgeNear } from './picture.ts'
import { placeInTrace } from './trace-ring.ts'

/** How a press catches the edge: within how many px of the photo; null: not at all. */
export type Catch = number | null

/** Px of the screen a hand trembles while it draws. */
const TREMBLE_PX = 1.5
/** Range of stray that `traced` takes, mm. */
const STRAY_MM = [0.3, 20] as const

/** The place of the photo under a place of the plan, on the edge where one is caught; null beyond the photo. */
function caught(map: Homography, [x, y]: Point, within: Catch): { at: Point; missed: boolean } | null {
  const now = picture.value
  const px = mmToPx(map, x, y)
  if (now === null || px === null) return null
  const [wide, high] = now.sizePx
  if (!(px[0] >= 0 && px[1] >= 0 && px[0] <= wide && px[1] <= high)) return null
  if (within === null) return { at: px, missed: false }
  const edge = edgeNear(now, px[0], px[1], within)
  return edge === null ? { at: px, missed: true } : { at: [edge.x, edge.y], missed: false }
}

function say(missed: boolean, within: Catch): void {
  photoSays.value = missed && within !== null ? w.photo.noEdge(within) : ''
}

/** Sets a point of the trace at a place of the plan; `nearMm` from a stretch it comes between its ends. */
export function setPoint(map: Homography, place: Point, within: Catch, nearMm: number): void {
  const now = laid.value
  const got = caught(map, place, within)
  if (now === null) return
  if (got === null) {
    photoSays.value = w.photo.beyond
    return
  }
  if (now.trace.length >= MOST_TRACE) {
    photoSays.value = w.photo.full(MOST_TRACE)
    return
  }
  const k = placeInTrace(now.trace, got.at, nearMm / mmPerPx(map, got.at[0], got.at[1]))
  layPhoto({ trace: [...now.trace.slice(0, k), got.at, ...now.trace.slice(k)] })
  say(got.missed, within)
}

/** Moves a point of the trace to a place of the plan. Beyond the photo it stays. */
export function movePoint(map: Homography, k: number, place: Point, within: Catch): void {
  const now = laid.value
  const got = caught(map, place, within)
  if (now === null || got === null) return
  layPhoto({ trace: now.trace.map((p, j) => (j === k ? got.at : p)) })
  say(got.missed, within)
}

export function removePoint(k: number): void {
  const now = laid.value
  if (now === null || now.trace[k] === undefined) return
  layPhoto({ trace: now.trace.filter((_, j) => j !== k) })
  photoSays.value = ''
}

/** Lays a drawn line, mm of the plan, as points of the trace: tidied, then caught. `mm` is a px of the screen. */
export function setStroke(map: Homography, stroke: readonly Point[], within: Catch, mm: number): void {
  const now = laid.value
  if (now === null) return
  const strayMm = Math.min(STRAY_MM[1], Math.max(STRAY_MM[0], TREMBLE_PX * mm))
  const line = traced(stroke, { strayMm, closeMm: 0 })
  if ('problem' in line) {
    photoSays.value = w.photo.cannot(line.problem)
    return
  }
  const points = line.points.map(p => caught(map, p, within)).filter(p => p !== null)
  if (now.trace.length + points.length > MOST_TRACE) {
    photoSays.value = w.photo.full(MOST_TRACE)
    return
  }
  layPhoto({ trace: [...now.trace, ...points.map(p => p.at)] })
  photoSays.value = points.length < line.points.length ? w.photo.beyond : ''
}

/** The trace on the plan, mm; points beyond the horizon are null. */
export function traceOnPlan(map: Homography, trace: readonly Point[]): readonly (Point | null)[] {
  return trace.map(p => pxToMm(map, p[0], p[1]))
}
