import type { Homography, Point } from '../../../engine/src/draw/perspective.ts'
import { pxToMm } from '../../../engine/src/draw/perspective.ts'
import type { Patch } from '../../../engine/src/piece/patch.ts'
import { ringArea } from '../../../engine/src/shape/measure.ts'
import { selfCrossing } from '../../../engine/src/shape/self-crossing.ts'
import { addPatch, newName, timberLike } from '../card/new-entry.ts'
import { tenth } from '../sheet/place.ts'
import { w } from '../text/words.ts'
import type { Json } from '../worker/document.ts'

/** Least area that is taken for a part of a piece, mm². */
const LEAST_MM2 = 10
/** Farthest a place of the plan may lie, mm. */
const FARTHEST_MM = 20_000

/** The corners of the traced ring on the plan, mm to 0.1; or what is wrong with it, in words. */
export function tracedRing(
  trace: readonly Point[],
  map: Homography
): [number, number][] | { readonly problem: string } {
  const out: [number, number][] = []
  for (const [u, v] of trace) {
    const p = pxToMm(map, u, v)
    if (p === null || !(Math.hypot(p[0], p[1]) <= FARTHEST_MM)) return { problem: w.photo.problem.beyond }
    const at: [number, number] = [tenth(p[0]), tenth(p[1])]
    const last = out[out.length - 1]
    if (last === undefined || last[0] !== at[0] || last[1] !== at[1]) out.push(at)
  }
  const [first, last] = [out[0], out[out.length - 1]]
  if (out.length > 1 && first![0] === last![0] && first![1] === last![1]) out.pop()
  if (out.length < 3) return { problem: w.photo.problem.few(out.length) }
  const ring = Float64Array.from(out.flat())
  const cross = selfCrossing(ring)
  if (cross !== null) return { problem: w.photo.problem.crosses(cross.x, cross.y) }
  if (Math.abs(ringArea(ring)) < LEAST_MM2)
    return {
      problem: w.photo.problem.small(Math.abs(ringArea(ring)), LEAST_MM2)
    }
  return out
}

/**
 * Where a press belongs in a traced line of px: beside a stretch between two neighbours, nearer than `nearPx`, it
 * comes between them; elsewhere, and ahead of an end however near, at the end. The stretch back to the first point is
 * not looked at: there the line grows.
 */
export function placeInTrace(trace: readonly Point[], [u, v]: Point, nearPx: number): number {
  let [least, found] = [nearPx * nearPx, trace.length]
  for (let k = 0; k + 1 < trace.length; k++) {
    const [a, b] = [trace[k]!, trace[k + 1]!]
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
    const length2 = dx * dx + dy * dy
    const along = (u - a[0]) * dx + (v - a[1]) * dy
    const d = (dx * (v - a[1]) - dy * (u - a[0])) ** 2 / length2
    if (along > 0 && along < length2 && d < least) [least, found] = [d, k + 1]
  }
  return found
}

/** The patch that adds a timber of this ring: species, thickness and moisture as the piece has them already. */
export function timberPatch(
  document: Json,
  polygon: readonly (readonly [number, number])[],
  word: string
): Patch {
  const value = { id: newName(document, word), ...timberLike(document), outline: { polygon } }
  return addPatch(document, 'timbers', value)
}

export function outlinePatch(document: Json, polygon: readonly (readonly [number, number])[]): Patch {
  return [{ op: document['outline'] === undefined ? 'add' : 'replace', path: '/outline', value: { polygon } }]
}
