import { decimals } from '../../quantity/format.ts'
import { circle } from '../../shape/build.ts'
import { stroke } from '../../shape/offset.ts'
import { flattenPath } from '../area/flatten-path.ts'
import { slotPath } from '../area/slot-path.ts'
import { borePath } from '../line/bore.ts'
import { angleToProgram, pointToProgram, zToProgram } from '../pins/frame.ts'
import type { Pin, PinPlan } from '../pins/pin-plan.ts'
import type { Place } from './bench.ts'
import { cutTo, shareOf } from './in-position.ts'
import type { Wanted } from './operation.ts'

/** How far the edge of a surfacing bit runs past the stock, mm (practice). */
const BEYOND_MM = 2

/** Flattens the face that is up. */
export function wantedOfFlatten(place: Place): Wanted[] {
  const { stack, tolMm } = place.bench
  const state = stack.states[place.step]!
  const { frame } = place.on
  const floorMm = zToProgram(frame, frame.zSign > 0 ? state.highZ : state.lowZ)
  const topMm = place.topMm
  if (floorMm >= topMm - 1e-6) return []
  const { position } = place.on
  const region = cutTo(position, place.region(stack.geometry.mould))
  const along = angleToProgram(frame, stack.piece.timbers[0]?.grain ?? 0)
  return [
    {
      kind: 'flatten',
      name: `flatten the ${place.on.setting.up}`,
      need: { kind: 'flatten', depthMm: topMm - floorMm },
      operation: 'flatten',
      topMm,
      floorMm,
      met: place.metIn(region, floorMm),
      path: job =>
        flattenPath({ ...job, tolMm }, region, {
          alongDeg: position === null ? along : forward(along, position.axis),
          beyondMm: BEYOND_MM
        })
    }
  ]
}

// Rows of the next strip begin where the one before has flattened: never on what still stands.
function forward(alongDeg: number, axis: 'x' | 'y'): number {
  const a = (alongDeg * Math.PI) / 180
  return (axis === 'x' ? Math.cos(a) : Math.sin(a)) < -1e-9 ? alongDeg + 180 : alongDeg
}

/** The holes right through the waste on which the piece is found again once it is moved along. */
export function wantedOfIndexHoles(place: Place): Wanted[] {
  const makes = place.on.position?.makes ?? []
  return makes.map((hole): Wanted => {
    const { x, y, holeMm, diameterMm } = hole
    const { topMm, throughMm: floorMm } = place
    const bore = { x, y, diameterMm: holeMm, through: true, name: 'index hole' }
    return {
      kind: 'index holes',
      name: `index hole, Ø ${decimals(diameterMm, 1)}`,
      need: {
        kind: 'clear',
        insideRadiusMm: Number.POSITIVE_INFINITY,
        widthMm: 0.9 * holeMm,
        depthMm: topMm - floorMm
      },
      operation: 'clear',
      topMm,
      floorMm,
      met: place.metIn(circle(holeMm, 0.01, x, y), floorMm),
      path: job => borePath(job, [bore])
    }
  })
}

/** The holes of the pins, those of one size with one cutter. */
export function wantedOfPins(place: Place, plan: PinPlan): Wanted[] {
  const groups = new Map<string, Pin[]>()
  const { position, frame } = place.on
  for (const pin of plan.pins) {
    const [x, y] = pointToProgram(frame, pin.x, pin.y)
    const u = position?.axis === 'y' ? y : x
    const half = (pin.holeMm + pin.slotMm) / 2
    if (shareOf(position, u - half, u + half) !== 'all') continue
    const key = `${pin.holeMm} ${pin.slotMm}`
    groups.set(key, [...(groups.get(key) ?? []), pin])
  }
  const [first, second] = plan.pins
  return [...groups.values()].map((pins): Wanted => {
    const { holeMm, slotMm, depthMm, diameterMm } = pins[0]!
    const topMm = place.topMm
    const floorMm = depthMm === null ? place.throughMm : topMm - depthMm
    const at = pins.map(p => pointToProgram(place.on.frame, p.x, p.y))
    const round = slotMm === 0
    const holes = at.map(([x, y]) => circle(holeMm, 0.01, x, y))
    const count = pins.length > 1 ? `${pins.length} × ` : ''
    const line = (x: number, y: number): Float64Array => {
      const [ax, ay] = pointToProgram(place.on.frame, first!.x, first!.y)
      const [bx, by] = pointToProgram(place.on.frame, second!.x, second!.y)
      const long = Math.hypot(bx - ax, by - ay)
      const [ux, uy] = [((bx - ax) / long) * (slotMm / 2), ((by - ay) / long) * (slotMm / 2)]
      return Float64Array.of(x - ux, y - uy, x + ux, y + uy)
    }
    const region = round
      ? { rings: holes.flatMap(h => h.rings) }
      : { rings: at.flatMap(([x, y]) => stroke(line(x, y), holeMm, { ends: 'round', tolMm: 0.01 }).rings) }
    return {
      kind: 'pin holes',
      name: `pin ${pins.length > 1 ? 'holes' : round ? 'hole' : 'slot'}, ${count}Ø ${decimals(diameterMm, 1)}`,
      need: {
        kind: 'clear',
        insideRadiusMm: Number.POSITIVE_INFINITY,
        // A cutter that circles holds the size; a drill of the pin's own size drills wide.
        widthMm: 0.9 * holeMm,
        depthMm: topMm - floorMm
      },
      operation: 'clear',
      topMm,
      floorMm,
      met: place.metIn(region, floorMm),
      path: job => {
        if (round)
          return borePath(
            job,
            at.map(([x, y]) => ({ x, y, diameterMm: holeMm, through: depthMm === null, name: 'pin hole' }))
          )
        return slotPath(job, line(at[0]![0], at[0]![1]), holeMm)
      }
    }
  })
}
