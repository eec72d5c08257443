import type { Frame } from '../../../engine/src/draw/frame.ts'
import { movedFrame } from '../../../engine/src/draw/pull.ts'
import type { PageView } from '../../../engine/src/sheets/page-data.ts'
import { movePatch } from '../sheet/move.ts'
import { eventPlace } from '../sheet/place.ts'
import { chosen, edit, piece } from '../state/desk.ts'
import { w } from '../text/words.ts'
import type { PlannedView } from '../worker/views.ts'
import { drag, followHand, letGo, lift } from './drag.ts'
import { held } from './held.ts'
import { partBoxes, sceneFor, snappedMove } from './plan-scene.ts'

/** How near a line of the plan draws what is moved, mm on the sheet. */
export const SNAP_MM = 1.6
/** Least way of a drag, mm on the sheet: a press that trembles moves nothing. */
export const TREMBLE_MM = 0.6

/** Moves an entry on the plan, mm, as one edit. Whether anything was changed. */
export function movePart(at: string, name: string, dx: number, dy: number): boolean {
  const document = piece.value?.document
  if (document === undefined || (dx === 0 && dy === 0)) return false
  const patch = movePatch(document, at, dx, dy)
  edit(w.moved(name), patch)
  return patch.length > 0
}

/** Follows a hand that drags the part `at` from where it was pressed. `on` keeps the pointer while it does. */
export function dragPart(
  on: SVGElement,
  e: PointerEvent,
  planned: PlannedView,
  view: PageView,
  at: string,
  name: string
): void {
  const svg = on.ownerSVGElement
  const start = svg === null ? null : eventPlace(svg, view, e)
  const boxes = partBoxes(planned)
  const box = boxes.get(at)
  if (svg === null || start === null || box === undefined) return
  const scene = sceneFor(planned, boxes, at)
  const frame: Frame =
    held.value?.at === at
      ? held.value.frame
      : {
          x: (box.minX + box.maxX) / 2,
          y: (box.minY + box.maxY) / 2,
          widthMm: box.maxX - box.minX,
          heightMm: box.maxY - box.minY,
          turnDeg: 0
        }
  let by: readonly [number, number] = [0, 0]
  let under = false
  const moving = (m: PointerEvent) => {
    const now = eventPlace(svg, view, m)
    if (now === null) return
    const way = [now[0] - start[0], now[1] - start[1]] as const
    under ||= Math.hypot(...way) * view.scale > TREMBLE_MM
    if (!under) return
    const got = snappedMove(box, way, m.altKey ? null : scene, SNAP_MM / view.scale)
    by = got.by
    const moved = movedFrame(frame, by[0], by[1])
    lift(svg, view, at, moved.map)
    drag.value = { at, guides: got.guides, frame: moved.frame, changes: 'place' }
  }
  followHand(on, e.pointerId, moving, meant => {
    if (meant) chosen.value = at
    letGo(meant && under && movePart(at, name, by[0], by[1]))
  })
}
