import type { Patch } from '../piece/patch.ts'
import type { PieceDocument } from '../piece/piece-schema.ts'
import type { ShapeDocument } from '../piece/shape-field.ts'
import { intersection } from '../shape/combine.ts'
import { ringArea } from '../shape/measure.ts'
import { regionOfRings, regionOfSound } from '../shape/region.ts'
import { selfCrossing } from '../shape/self-crossing.ts'
import { freshName, takenNames } from './entry-name.ts'
import { polygonOf } from './shape-split.ts'

type Points = readonly (readonly [number, number])[]

/** Two edges of one timber, or words why not. `underside` is missing where both lines are the same. */
export type LiveEdge =
  | { readonly outline: ShapeDocument; readonly underside?: ShapeDocument }
  | { readonly problem: string }

/** Nearer than this everywhere, mm, the lower line is the upper one: the side is upright. */
const SAME_MM = 0.2
/** Least height of a timber between its back and its live edge, mm. */
const LEAST_DEPTH_MM = 1

/**
 * A timber with a live edge: between the straight line `back`, sawn or at the wall, and the edge as it grew. `top`
 * is the line of its upper edge as it lies in the mould, `bottom` that of its lower edge; both run from one end of
 * `back` to the other, either way round, on the same side of it. Past the ends of `back` they are cut off square;
 * where they stop short they go on level. All mm on the plan.
 */
export function liveEdge(
  top: Points,
  bottom: Points,
  back: readonly [Points[number], Points[number]]
): LiveEdge {
  const upper = closed(top, back)
  if ('problem' in upper) return { problem: `the upper line: ${upper.problem}` }
  if (apart(top, bottom) < SAME_MM) return { outline: upper.shape }
  const lower = closed(bottom, back)
  if ('problem' in lower) return { problem: `the lower line: ${lower.problem}` }
  if (upper.side !== lower.side)
    return { problem: 'the two lines lie on different sides of the straight back' }
  return { outline: upper.shape, underside: lower.shape }
}

/** What a new timber needs beside its edges. */
export interface NewTimber {
  readonly species: string
  readonly thickness: number | string
  readonly id?: string
  readonly moisture?: number | string
}

/** A patch that adds a timber with a live edge, named as wished or "live edge". */
export function liveEdgeTimber(
  document: PieceDocument,
  edge: LiveEdge,
  timber: NewTimber
): { readonly patch: Patch } | { readonly problem: string } {
  if ('problem' in edge) return edge
  if ((document.timbers?.length ?? 0) >= 200) return { problem: '200 timbers already; allowed: at most 200' }
  const id = freshName(takenNames(document), timber.id ?? 'live edge')
  const value = { ...timber, id, ...edge }
  return {
    patch:
      document.timbers === undefined
        ? [{ op: 'add', path: '/timbers', value: [value] }]
        : [{ op: 'add', path: '/timbers/-', value }]
  }
}

type Closed = { readonly shape: ShapeDocument; readonly side: 1 | -1 } | { readonly problem: string }

function closed(line: Points, [a, b]: readonly [Points[number], Points[number]]): Closed {
  const long = Math.hypot(b[0] - a[0], b[1] - a[1])
  if (!(long >= LEAST_DEPTH_MM)) return { problem: 'a back without length; mark its two ends apart' }
  if (line.length < 2 || line.length > 20_000 || !line.flat().every(c => Math.abs(c) <= 10_000))
    return { problem: `${line.length} points; allowed: 2 to 20000 within 10000 mm` }
  const [ux, uy] = [(b[0] - a[0]) / long, (b[1] - a[1]) / long]
  // Along the back, and away from it.
  let own = line.map(([x, y]): [number, number] => [
    (x - a[0]) * ux + (y - a[1]) * uy,
    (y - a[1]) * ux - (x - a[0]) * uy
  ])
  if (own[0]![0] > own[own.length - 1]![0]) own = own.reverse()
  const lean = own.reduce((sum, p) => sum + p[1], 0)
  const side = lean >= 0 ? 1 : -1
  const first = own[0]!
  const last = own[own.length - 1]!
  if (first[0] > 0) own = [[0, first[1]], ...own]
  if (last[0] < long) own = [...own, [long, last[1]]]
  const ring = Float64Array.from([...own.flat(), Math.max(long, last[0]), 0, Math.min(0, first[0]), 0])
  const cross = selfCrossing(ring)
  if (cross) return { problem: `it crosses itself or the back ${cross.x.toFixed(1)} mm along the back` }
  const depth = Math.max(...own.map(p => side * p[1]))
  if (depth < LEAST_DEPTH_MM)
    return { problem: `it lies on the back; allowed: at least ${LEAST_DEPTH_MM} mm off` }
  const strip = regionOfSound([Float64Array.from([0, -20_000, long, -20_000, long, 20_000, 0, 20_000])])
  const part = intersection(regionOfRings([ring]), strip)
  const outer = part.rings.filter(r => ringArea(r) > 0)
  if (outer.length !== 1) return { problem: `it gives ${outer.length} pieces between the ends of the back` }
  const onPlan = outer[0]!.slice()
  for (let k = 0; k < onPlan.length; k += 2) {
    const [s, t] = [onPlan[k]!, onPlan[k + 1]!]
    onPlan[k] = a[0] + s * ux - t * uy
    onPlan[k + 1] = a[1] + s * uy + t * ux
  }
  return { shape: polygonOf(regionOfSound([onPlan])), side }
}

// The greatest distance of a point of one line from the points of the other: enough to tell same from not.
function apart(a: Points, b: Points): number {
  if (a.length !== b.length) return Number.POSITIVE_INFINITY
  return Math.max(0, ...a.map((p, i) => Math.hypot(p[0] - b[i]![0], p[1] - b[i]![1])))
}
