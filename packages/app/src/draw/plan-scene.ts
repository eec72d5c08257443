import type { Frame } from '../../../engine/src/draw/frame.ts'
import { turned } from '../../../engine/src/draw/shape-place.ts'
import type { Handle } from '../../../engine/src/draw/shape-resize.ts'
import type { Box, Guide, SnapScene } from '../../../engine/src/draw/snap.ts'
import { boxOf, snapBox, snapPoint } from '../../../engine/src/draw/snap.ts'
import { tenth, thousandth } from '../sheet/place.ts'
import type { PlannedView } from '../worker/views.ts'

type Pair = readonly [number, number]

/** Boxes of all that can be taken hold of on the plan, by the pointer of its entry, mm. */
export function partBoxes(planned: PlannedView): ReadonlyMap<string, Box> {
  const { geometry } = planned.model
  const boxes = new Map<string, Box>()
  geometry.timbers.forEach((t, i) => {
    boxes.set(`/timbers/${i}`, boxOf(...t.upper.rings))
  })
  for (const c of planned.cuts) boxes.set(c.at, boxOf(...c.rings))
  for (const h of planned.parts) {
    const [cos, sin] = turned(1, 0, h.round ? 0 : h.turnDeg).map(Math.abs) as [number, number]
    const [halfX, halfY] = [
      (cos * h.lengthMm + sin * h.widthMm) / 2,
      (sin * h.lengthMm + cos * h.widthMm) / 2
    ]
    boxes.set(h.at, { minX: h.x - halfX, maxX: h.x + halfX, minY: h.y - halfY, maxY: h.y + halfY })
  }
  return boxes
}

/** What the part `at` is drawn to: centre lines of the piece, its own edge, all other parts, whole millimetres. */
export function sceneFor(planned: PlannedView, boxes: ReadonlyMap<string, Box>, at: string): SnapScene {
  const outline = boxOf(...planned.model.geometry.outline.rings)
  return {
    centre: [(outline.minX + outline.maxX) / 2, (outline.minY + outline.maxY) / 2],
    others: [outline, ...[...boxes].filter(([key]) => key !== at).map(([, b]) => b)],
    mould: boxOf(...planned.model.geometry.mould.rings),
    gridMm: 1
  }
}

/** A move of a box, drawn to the scene unless it goes free; to a tenth of a millimetre. */
export function snappedMove(
  box: Box,
  by: Pair,
  scene: SnapScene | null,
  toleranceMm: number
): { readonly by: Pair; readonly guides: readonly Guide[] } {
  const [dx, dy] = [tenth(by[0]), tenth(by[1])]
  if (scene === null) return { by: [dx, dy], guides: [] }
  const moving = { minX: box.minX + dx, maxX: box.maxX + dx, minY: box.minY + dy, maxY: box.maxY + dy }
  const got = snapBox(moving, scene, toleranceMm)
  return { by: [thousandth(dx + got.dx), thousandth(dy + got.dy)], guides: got.guides }
}

/**
 * The place a handle is pulled to. Sides that lie along the plan are drawn to the scene, each handle only the way
 * it pulls; a turned part takes sizes of whole millimetres.
 */
export function snappedPull(
  frame: Frame,
  handle: Handle,
  to: Pair,
  scene: SnapScene | null,
  toleranceMm: number
): { readonly to: Pair; readonly guides: readonly Guide[] } {
  if (scene === null) return { to: [tenth(to[0]), tenth(to[1])], guides: [] }
  if (!Number.isInteger(frame.turnDeg / 90)) {
    const [u, v] = turned(to[0] - frame.x, to[1] - frame.y, -frame.turnDeg)
    const whole = (own: number, size: number) =>
      Math.sign(own) * (Math.round(Math.abs(own) + size / 2) - size / 2)
    const [x, y] = turned(whole(u, frame.widthMm), whole(v, frame.heightMm), frame.turnDeg)
    return { to: [frame.x + x, frame.y + y], guides: [] }
  }
  const got = snapPoint(to, scene, toleranceMm)
  const upright = Math.abs(turned(1, 0, frame.turnDeg)[0]) > 0.5
  const sides = { own: /left|right/.test(handle), other: /near|far/.test(handle) }
  const ways = upright ? { x: sides.own, y: sides.other } : { x: sides.other, y: sides.own }
  return {
    to: [thousandth(to[0] + (ways.x ? got.dx : 0)), thousandth(to[1] + (ways.y ? got.dy : 0))],
    guides: got.guides.filter(g => ways[g.axis])
  }
}

/** A single point drawn to the scene, or to a tenth of a millimetre where it goes free. */
export function snappedPoint(
  to: Pair,
  scene: SnapScene | null,
  toleranceMm: number
): { readonly to: Pair; readonly guides: readonly Guide[] } {
  if (scene === null) return { to: [tenth(to[0]), tenth(to[1])], guides: [] }
  const got = snapPoint(to, scene, toleranceMm)
  return { to: [thousandth(to[0] + got.dx), thousandth(to[1] + got.dy)], guides: got.guides }
}
