import type { Region } from '../../shape/region.ts'
import type { Frame } from '../pins/frame.ts'
import { placed, pointToProgram } from '../pins/frame.ts'
import type { IndexHole, IndexPlan } from '../pins/index-plan.ts'
import type { ZeroPoint, zeroPoints } from '../pins/pin-plate.ts'

/** A hole as it lies, coordinates of the setting before the piece is moved along, mm. */
export interface PlacedHole extends Omit<IndexHole, 'x' | 'y'> {
  readonly x: number
  readonly y: number
}

/** Where a piece longer than the bed lies on it, and what is worked there. mm, coordinates of the setting. */
export interface Position {
  /** 1, 2, 3 ... along the axis. */
  readonly number: number
  readonly count: number
  readonly axis: 'x' | 'y'
  /** All strips of the setting in order; those at the ends reach past the casting. They overlap. */
  readonly strips: readonly { readonly fromMm: number; readonly toMm: number }[]
  /** How far the piece was moved since the first position, towards less. */
  readonly movedMm: number
  readonly pitchMm: number
  /** Travel of the machine along the axis and across, mm. */
  readonly travelMm: number
  readonly acrossMm: number
  /** Middle of the strip, which lies in the middle of the machine. */
  readonly middleMm: number
  /** Pins that the piece stands on, and holes that are made for the next position. */
  readonly stands: readonly PlacedHole[]
  readonly makes: readonly PlacedHole[]
}

/**
 * The positions of one setting. Each has the middle of its strip in the middle of the machine, where the zero is: the
 * piece is moved, the zero stays.
 *
 * @param first whether it is the setting in which the holes are made; later ones find them made
 */
export function positionsOf(frame: Frame, plan: IndexPlan, first: boolean): Position[] {
  const { axis } = plan
  const along = (u: number): number => {
    const [x, y] = pointToProgram(frame, axis === 'x' ? u : 0, axis === 'y' ? u : 0)
    return axis === 'x' ? x : y
  }
  const lying = (h: IndexHole): PlacedHole => {
    const [x, y] = pointToProgram(frame, h.x, h.y)
    return { ...h, x, y }
  }
  const turned = frame.mirror === axis
  const parts = plan.strips.map(s => {
    const ends = [along(s.fromMm), along(s.toMm)]
    return { fromMm: Math.min(...ends), toMm: Math.max(...ends) }
  })
  const pairs = plan.pairs.map(pair => pair.map(lying))
  if (turned) {
    parts.reverse()
    pairs.reverse()
  }
  const last = parts.length - 1
  const middle = (i: number) => (parts[i]!.fromMm + parts[i]!.toMm) / 2
  const reaching = parts.map((p, i) => ({
    fromMm: p.fromMm - (i === 0 ? plan.besideMm : 0),
    toMm: p.toMm + (i === last ? plan.besideMm : 0)
  }))
  return parts.map(
    (_, i): Position => ({
      number: i + 1,
      count: parts.length,
      axis,
      strips: reaching,
      movedMm: middle(i) - middle(0),
      pitchMm: plan.pitchMm,
      travelMm: plan.travelMm,
      acrossMm: plan.acrossMm,
      middleMm: middle(i),
      stands: (i > 0 ? pairs[i - 1] : first ? [] : pairs[0]) ?? [],
      makes: (first ? pairs[i] : []) ?? []
    })
  )
}

/** The frame of a position: as measured, then moved along. */
export function frameAt(frame: Frame, { axis, middleMm }: Position): Frame {
  return axis === 'x'
    ? { ...frame, shiftX: frame.shiftX - middleMm }
    : { ...frame, shiftY: frame.shiftY - middleMm }
}

/**
 * Places to touch before the first cut of a position: the zero, and the two index pins (in the first position the
 * places at which their holes will be made). `reachMm` is the end of the strip.
 */
export function touchOf(frame: Frame, position: Position): ReturnType<typeof zeroPoints> {
  const { stands, makes } = position
  const holes = stands.length > 0 ? stands : makes
  const { fromMm, toMm } = stripOf(position)
  const at = (k: 0 | 1): ZeroPoint => {
    const h = holes[k]!
    const [x, y] = placed(frame, h.x, h.y)
    return { name: `index ${stands.length > 0 ? 'pin' : 'hole'} ${k + 1}`, x, y, z: null }
  }
  return {
    points: [{ name: 'the zero', x: 0, y: 0, z: 0 }, at(0), at(1)],
    reachMm: (toMm - fromMm) / 2
  }
}

/** The strip of a position. */
export function stripOf({ strips, number }: Position): { readonly fromMm: number; readonly toMm: number } {
  return strips[number - 1]!
}

/** A region's box along the axis. */
export function spanAlong({ axis }: Position, { rings }: Region): readonly [low: number, high: number] {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (const ring of rings)
    for (let k = axis === 'x' ? 0 : 1; k < ring.length; k += 2) {
      low = Math.min(low, ring[k]!)
      high = Math.max(high, ring[k]!)
    }
  return [low, high]
}
