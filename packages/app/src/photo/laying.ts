import type { Homography, Point, Refused } from '../../../engine/src/draw/perspective.ts'
import { errorMm, fromDistance, fromRectangle, laidAt, pxToMm } from '../../../engine/src/draw/perspective.ts'
import { w } from '../text/words.ts'

export type Way = 'rectangle' | 'distance'

/** How a photo lies on the plan, and what was traced over it. Places of the photo in px of `sizePx`. */
export interface Laid {
  readonly way: Way
  readonly sizePx: readonly [number, number]
  /** Corners of the rectangle in order near left, near right, far right, far left; or the two points. */
  readonly marks: readonly Point[]
  /** Sides of the rectangle: near and far, left and right. */
  readonly sidesMm: readonly [number, number]
  readonly distanceMm: number
  /** Where the first mark lies on the plan, mm; null until it is laid there. */
  readonly at: Point | null
  /** How the photo is turned about its first mark, degrees against the clock. */
  readonly turnDeg: number
  readonly trace: readonly Point[]
}

/** Sides of A4 (ISO 216), mm. */
export const A4_MM = [210, 297] as const
/** How far off a mark is set, px, one standard deviation: with the loupe it falls on the right px (practice). */
const CLICK_PX = 1
/** Most points of a trace: what keeps a laying within what the server takes. */
export const MOST_TRACE = 1500

export const marksOf = (way: Way): 2 | 4 => (way === 'rectangle' ? 4 : 2)

/** A photo of which nothing is known yet. */
export function unlaid(sizePx: readonly [number, number]): Laid {
  return {
    way: 'rectangle',
    sizePx,
    marks: [],
    sidesMm: A4_MM,
    distanceMm: 100,
    at: null,
    turnDeg: 0,
    trace: []
  }
}

/** From px of the photo to mm of the plan; a problem while marks are missing or impossible. */
export function mapOf(laid: Laid): Homography | Refused {
  const own = ownMap(laid)
  return 'problem' in own ? own : laidAt(own, laid.at ?? [0, 0], laid.turnDeg)
}

function ownMap(laid: Laid): Homography | Refused {
  const needs = marksOf(laid.way)
  if (laid.marks.length !== needs) return { problem: w.photo.problem.marks(laid.marks.length, needs) }
  return laid.way === 'rectangle'
    ? fromRectangle(laid.marks, ...laid.sidesMm)
    : fromDistance(laid.marks[0]!, laid.marks[1]!, laid.distanceMm)
}

/**
 * The error to expect at a place of the photo, mm: each mark and the place itself {@link CLICK_PX} off in each
 * direction, added as squares. Infinity while it is not laid.
 *
 * For two points a and b, L px apart along e, a place p lies at s·(p − a) with s = distance/L. First order: p gives
 * s² twice; b changes L alone, (s·|p − a|/L)²; a across e gives s², along e (s·|e − (p − a)/L|)².
 */
export function errorAt(laid: Laid, place: Point): number {
  if (laid.way === 'rectangle') return errorMm(laid.marks, ...laid.sidesMm, place, CLICK_PX)
  const [a, b] = laid.marks
  if ('problem' in ownMap(laid) || a === undefined || b === undefined) return Number.POSITIVE_INFINITY
  const length = Math.hypot(b[0] - a[0], b[1] - a[1])
  const e = [(b[0] - a[0]) / length, (b[1] - a[1]) / length] as const
  const way = [(place[0] - a[0]) / length, (place[1] - a[1]) / length] as const
  const squares = 3 + way[0] ** 2 + way[1] ** 2 + (e[0] - way[0]) ** 2 + (e[1] - way[1]) ** 2
  return (laid.distanceMm / length) * CLICK_PX * Math.sqrt(squares)
}

/** Sides so turned that the longer one is the one seen longer: a sheet lies either way. */
export function sidesAsSeen(
  marks: readonly Point[],
  [one, other]: readonly [number, number]
): readonly [number, number] {
  if (marks.length !== 4) return [one, other]
  const side = (i: number, j: number) => Math.hypot(marks[i]![0] - marks[j]![0], marks[i]![1] - marks[j]![1])
  const wide = side(0, 1) + side(2, 3) > side(1, 2) + side(3, 0)
  return wide === one > other ? [one, other] : [other, one]
}

/** The place for the first mark, whole mm, that brings the middle of the photo to `middle` of the plan. */
export function middleAt(laid: Laid, middle: Point): Point {
  const own = ownMap(laid)
  if ('problem' in own) return laid.at ?? middle
  const turned = laidAt(own, [0, 0], laid.turnDeg)
  const p = pxToMm(turned, laid.sizePx[0] / 2, laid.sizePx[1] / 2)
  if (p === null) return middle
  return [Math.round(middle[0] - p[0]) + 0, Math.round(middle[1] - p[1]) + 0]
}

/** What was kept with the photo; null for anything that is not a laying. Px follow the size of the picture. */
export function readLaid(value: unknown, sizePx: readonly [number, number]): Laid | null {
  if (typeof value !== 'object' || value === null) return null
  const v = value as Partial<Record<keyof Laid, unknown>>
  const size = point(v.sizePx, 1, 1e5)
  if (size === null || (v.way !== 'rectangle' && v.way !== 'distance')) return null
  const px = (list: unknown, most: number): Point[] | null => {
    if (!Array.isArray(list) || list.length > most) return null
    const out = list.map(p => point(p, -1e6, 1e6))
    return out.some(p => p === null)
      ? null
      : out.map(p => [(p![0] * sizePx[0]) / size[0], (p![1] * sizePx[1]) / size[1]])
  }
  const marks = px(v.marks, marksOf(v.way))
  const trace = px(v.trace, MOST_TRACE)
  const sidesMm = point(v.sidesMm, 1, 10_000)
  const at = v.at === null ? null : point(v.at, -20_000, 20_000)
  const distanceMm = number(v.distanceMm, 1, 10_000)
  const turnDeg = number(v.turnDeg, -360, 360)
  if (marks === null || trace === null || sidesMm === null) return null
  if (at === null && v.at !== null) return null
  if (distanceMm === null || turnDeg === null) return null
  return { way: v.way, sizePx, marks, sidesMm, distanceMm, at, turnDeg, trace }
}

function number(v: unknown, low: number, high: number): number | null {
  return typeof v === 'number' && v >= low && v <= high ? v : null
}

function point(v: unknown, low: number, high: number): Point | null {
  if (!Array.isArray(v) || v.length !== 2) return null
  const [x, y] = [number(v[0], low, high), number(v[1], low, high)]
  return x === null || y === null ? null : [x, y]
}
