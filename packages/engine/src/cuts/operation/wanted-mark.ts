import type { Entry } from '../../piece/entry.ts'
import type { Marking } from '../../piece/piece-schema.ts'
import { markingPath } from '../line/marking.ts'
import { vWidthMm } from '../run/chip.ts'
import type { Place } from './bench.ts'
import { linesHere } from './in-position.ts'
import type { Wanted } from './operation.ts'
import { figuresWanted } from './wanted-kind.ts'

/** The lines of a marking with a V, and its numerals. */
export function wantedOfMarking(place: Place, marking: Entry<Marking>): Wanted[] {
  const { stack } = place.bench
  const { angle } = marking.value
  const topMm = place.topMm
  const floorMm = place.floorMm(stack.markings[marking.index]!.floor)
  if (floorMm >= topMm - 1e-6) return []
  const plan = stack.geometry.markingLines[marking.index]!
  const depthMm = topMm - floorMm
  const lines = linesHere(place.on.position, place.lines(plan), vWidthMm(angle, depthMm) / 2)
  const base = {
    need: { kind: 'v', angleDeg: angle, widthMm: vWidthMm(angle, depthMm), depthMm },
    operation: 'v',
    topMm,
    floorMm
  } as const
  const ticks: Wanted = {
    ...base,
    kind: 'marking',
    name: marking.id,
    cutterId: marking.value.cutter,
    met: place.metAlong(plan, floorMm),
    path: job => markingPath(job, lines, angle)
  }
  return [
    ...(lines.length === 0 && place.on.position !== null ? [] : [ticks]),
    ...figuresWanted(place, marking, topMm, floorMm)
  ]
}
