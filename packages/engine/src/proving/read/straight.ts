import { MOTION } from '../motion.ts'
import {
  arcLength,
  checkMiddle,
  type Middle,
  middleByRadius,
  RADIUS_WITHIN_INCH,
  RADIUS_WITHIN_MM
} from './arc.ts'
import { F, I, R, X } from './block.ts'
import { GROUP } from './codes.ts'
import { machineTarget, target } from './origin.ts'
import type { State } from './state.ts'
import { MOST_VALUE } from './words.ts'

/** Axes of each plane, first, second and third, so that the third looks at the reader: x y, z x, y z. */
export const PLANE_AXES: Readonly<Record<number, readonly [number, number, number]>> = {
  17: [0, 1, 2],
  18: [2, 0, 1],
  19: [1, 2, 0]
}
const LETTERS = ['X', 'Y', 'Z'] as const
const OFFSETS = ['I', 'J', 'K'] as const

/** G0 and G1 (NISTIR 6556, 3.5.1, 3.5.2), with G53. */
export function straightMove(s: State, cut: boolean, byMachine: boolean): void {
  if (byMachine && s.compensated)
    s.complaints.fail(
      s.block.gColumn[GROUP.once]!,
      'G53 cannot go with a compensated cutter radius.',
      'G41 or G42 in force',
      'G40 first'
    )
  const to = byMachine ? machineTarget : target
  const x = to(s, 0)
  const y = to(s, 1)
  const z = to(s, 2)
  const length = Math.hypot(x - s.place[0]!, y - s.place[1]!, z - s.place[2]!)
  s.straight(cut, x, y, z, cut ? feedOf(s, length) : 0)
}

/** Feed of a cut of a length, mm/min: in inverse time the line's F says how many times a minute it could be made. */
function feedOf(s: State, length: number): number {
  const { block } = s
  if (!s.inverseTime) {
    if (s.feed === 0)
      s.complaints.once(
        'feed',
        'error',
        block.at(X, GROUP.motion),
        'The cutter moves into the work with no feed given. The move is read with none.',
        'no F so far',
        'an F word above 0 on this line or before'
      )
    return s.feed
  }
  if (!block.has(F) || block.value[F] === 0)
    s.complaints.fail(
      block.at(F, GROUP.motion),
      'In inverse time (G93) every cut wants its own feed.',
      block.has(F) ? 'F0' : 'no F word',
      'an F word above 0 on the line'
    )
  return Number.isNaN(length) ? 0 : length * block.value[F]!
}

const middle: Middle = { p: 0, q: 0 }

/** G2 and G3 in radius or centre form, also rising along the third axis (NISTIR 6556, 3.5.3). */
export function arcMove(s: State, clockwise: boolean): void {
  const { block, complaints } = s
  const plane = PLANE_AXES[s.plane]!
  const first = plane[0]
  const second = plane[1]
  const third = plane[2]
  checkForm(s, first, second, third)
  const byRadius = block.has(R)
  const p0 = s.place[first]!
  const q0 = s.place[second]!
  const r0 = s.place[third]!
  if (Number.isNaN(p0) || Number.isNaN(q0) || Number.isNaN(r0))
    complaints.fail(
      block.atCode(GROUP.motion),
      'The arc starts at a place that is not known.',
      'no place reached yet along every axis',
      'a straight move to X, Y and Z before'
    )
  const p1 = target(s, first)
  const q1 = target(s, second)
  const r1 = target(s, third)
  const within = s.unit === 1 ? RADIUS_WITHIN_MM : RADIUS_WITHIN_INCH * s.unit
  if (byRadius) {
    middleByRadius(
      middle,
      complaints,
      block.column[R]!,
      p0,
      q0,
      p1,
      q1,
      block.value[R]! * s.unit,
      clockwise,
      within
    )
  } else {
    middle.p = p0 + (block.has(I + first) ? block.value[I + first]! * s.unit : 0)
    middle.q = q0 + (block.has(I + second) ? block.value[I + second]! * s.unit : 0)
    checkMiddle(
      middle,
      complaints,
      block.has(I + first) ? block.column[I + first]! : block.column[I + second]!,
      p0,
      q0,
      p1,
      q1,
      within
    )
  }
  const farthest = Math.max(Math.abs(p1), Math.abs(q1), Math.abs(r1), Math.abs(middle.p), Math.abs(middle.q))
  if (!(farthest <= MOST_VALUE)) s.tooFar()
  const feed = feedOf(s, s.inverseTime ? arcLength(middle, p0, q0, p1, q1, clockwise, r1 - r0) : 0)
  s.place[first] = p1
  s.place[second] = q1
  s.place[third] = r1
  s.list.push(
    clockwise ? MOTION.arcClockwise : MOTION.arcCounter,
    s.line,
    s.place[0]!,
    s.place[1]!,
    s.place[2]!,
    middle.p,
    middle.q,
    s.plane,
    feed,
    s.spindle(),
    s.tool,
    s.offset
  )
}

// Whether the line says as much of an arc as it must, and no more.
function checkForm(s: State, first: number, second: number, third: number): void {
  const { block } = s
  const byRadius = block.has(R)
  const byMiddle = (block.mask & (7 << I)) !== 0
  const ends = block.has(X + first) || block.has(X + second)
  if (ends && byRadius !== byMiddle && !(byMiddle && block.has(I + third))) return
  const [low, high] = [Math.min(first, second), Math.max(first, second)]
  const axes = [LETTERS[low]!, LETTERS[high]!]
  const offsets = `${OFFSETS[low]} or ${OFFSETS[high]}`
  const at = block.atCode(GROUP.motion)
  if (!ends)
    s.complaints.fail(
      at,
      'The arc has no end in its plane.',
      `neither ${axes.join(' nor ')}`,
      `${axes.join(' or ')} with G${s.plane}`
    )
  if (byRadius && byMiddle)
    s.complaints.fail(
      block.column[R]!,
      'The arc is given both by its radius and by its middle.',
      'R with I, J or K',
      'one of the two'
    )
  if (byMiddle)
    s.complaints.fail(
      block.column[I + third]!,
      'The middle of the arc is given along an axis that does not lie in its plane.',
      `${OFFSETS[third]} with G${s.plane}`,
      offsets
    )
  s.complaints.fail(at, 'The arc has neither a radius nor a middle.', 'no R, I, J or K', `R, or ${offsets}`)
}

/** G38.2: to the place where a probe touches (NISTIR 6556, 3.5.9); where that is, only the machine knows. */
export function probeMove(s: State): void {
  const { block, complaints } = s
  const column = block.atCode(GROUP.motion)
  const x = target(s, 0)
  const y = target(s, 1)
  const z = target(s, 2)
  if (s.inverseTime) complaints.fail(column, 'A probe cannot move in inverse time.', 'G93 in force', 'G94')
  const length = Math.hypot(x - s.place[0]!, y - s.place[1]!, z - s.place[2]!)
  const least = s.unit === 1 ? 0.254 : 0.01 * s.unit
  if (length < least)
    complaints.fail(
      column,
      'The probe has too little way.',
      `${length.toFixed(3)} mm`,
      `at least ${least.toFixed(3)} mm`
    )
  complaints.once(
    'probe',
    'warning',
    column,
    'Where the probe stops is known at the machine only. The moves after it cannot be proved until every axis it moved has a place again.',
    'G38.2',
    'zeros set at the machine before the program'
  )
  const keep = (axis: number): number => (block.has(X + axis) ? Number.NaN : s.place[axis]!)
  s.straight(true, keep(0), keep(1), keep(2), feedOf(s, length))
  for (let k = 0; k < 3; k++) s.parameters.forget(5061 + k)
}
