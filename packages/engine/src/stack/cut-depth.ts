import type { Cut, Marking } from '../piece/piece-schema.ts'
import type { Step } from '../steps/step.ts'
import type { Removal, Side } from './event.ts'
import { STROKE_TOL_MM } from './event.ts'
import { inwardOf } from './face.ts'
import type { Geometry } from './geometry.ts'
import { vDepthMm } from './groove.ts'
import { keyholeHead } from './keyhole.ts'
import type { CutDepth } from './stack.ts'

/** A cut that no step makes. */
export function unmade(index: number, side: Side): CutDepth {
  return {
    index,
    day: null,
    finished: null,
    floor: -inwardOf(side) * Number.POSITIVE_INFINITY,
    side,
    step: null,
    faceZ: 0
  }
}

/** Where the floor of a cut lies. "low" cuts reach up from the low face, "high" ones down from the high one. */
export function cutDepth(
  cut: Cut,
  index: number,
  side: Side,
  faceZ: number,
  finishedZ: number,
  step: Step
): CutDepth {
  const inward = inwardOf(side)
  if (cut.through) {
    return { index, day: null, finished: null, floor: inward * Number.POSITIVE_INFINITY, side, step, faceZ }
  }
  const floor = cut.depth === undefined ? finishedZ + inward * cut.finishedDepth! : faceZ + inward * cut.depth
  return {
    index,
    day: inward * (floor - faceZ),
    finished: inward * (floor - finishedZ),
    floor,
    side,
    step,
    faceZ
  }
}

/** Where the point of a marking's V lies: so deep that the line is as wide as wanted in the finished face. */
export function markDepth(
  marking: Marking,
  index: number,
  side: Side,
  faceZ: number,
  finishedZ: number,
  step: Step
): CutDepth {
  const inward = inwardOf(side)
  const floor = finishedZ + inward * vDepthMm(marking.width, marking.angle)
  return {
    index,
    day: inward * (floor - faceZ),
    finished: inward * (floor - finishedZ),
    floor,
    side,
    step,
    faceZ
  }
}

/** What a cut takes away. */
export function removalOf(cut: Cut, g: Geometry, index: number, side: Side, depth: CutDepth): Removal {
  const region = g.cutRegions[index] ?? null
  if (region !== null) {
    const plain: Removal = { side, floor: depth.floor, region, lines: null, profile: null }
    if (cut.kind !== 'keyhole') return plain
    const headMm = (cut.depth ?? cut.finishedDepth!) - cut.lip!
    return {
      ...plain,
      under: { region: keyholeHead(cut, STROKE_TOL_MM), roof: depth.floor - inwardOf(side) * headMm }
    }
  }
  return {
    side,
    floor: depth.floor,
    region: null,
    lines: g.cutLines[index]!,
    profile: { kind: cut.profile, widthMm: cut.width ?? 0, angleDeg: cut.angle }
  }
}

/** The same removal, no deeper than `z`: right through, a cut ends at the far face. */
export function endedAt(removal: Removal, z: number): Removal {
  const floor = removal.side === 'low' ? Math.min(removal.floor, z) : Math.max(removal.floor, z)
  return floor === removal.floor ? removal : { ...removal, floor }
}
