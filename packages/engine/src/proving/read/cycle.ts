import { MOTION } from '../motion.ts'
import { AXES, I, L, P, Q, R, X } from './block.ts'
import { GROUP } from './codes.ts'
import { WHOLE_WITHIN } from './number.ts'
import { target } from './origin.ts'
import type { State } from './state.ts'
import { PLANE_AXES } from './straight.ts'

/**
 * Canned cycles G81 to G89, written out as the moves they make (NISTIR 6556, 3.5.16).
 *
 * To the hole in the plane, down to the retract plane R, the cycle's own moves to the depth, back to the clear plane:
 * the height before the cycle if G98 is in force and it lies above R, else R. Counted in G91, R is from the height
 * before, the depth from R, and the places of repeats from each other. R and the depth hold on as long as the same
 * cycle does; so do P, Q, I, J, K.
 * Check: the standard's examples at (1, 2, 3), absolute and incremental.
 * Limits: the short way back above the last peck of G83 is 0.254 mm (0.01 inch; memory). In G88 the operator lifts
 * the cutter by hand: read as though to the clear plane.
 */
const PECK_BACK_MM = 0.254
/** Moves that one line may ask for. */
const MOST_MOVES = 100_000
const LETTERS = ['X', 'Y', 'Z'] as const

export function cycleMove(s: State, tenfold: number): void {
  const { block, cycle } = s
  const code = tenfold / 10
  const [first, second, third] = PLANE_AXES[s.plane]!
  const column = block.at(R, GROUP.motion)
  const fail = (says: string, found: string, allowed: string, at = column): never =>
    s.complaints.fail(at, says, found, allowed)
  if ((block.mask & AXES) === 0)
    fail('The cycle has no place to go to.', 'no X, Y or Z', 'at least one of X Y Z')
  if (s.inverseTime) fail('A cycle cannot run in inverse time.', 'G93 in force', 'G94')
  if (s.compensated)
    fail('A cycle cannot run while the cutter radius is compensated.', 'G41 or G42 in force', 'G40 first')
  const again = s.motion === tenfold
  if (!again) {
    if (!block.has(X + third))
      fail(
        'The cycle has no depth.',
        `no ${LETTERS[third]} word`,
        `${LETTERS[third]} on the first line of the cycle`
      )
    if (!block.has(R))
      fail('The cycle has no retract plane.', 'no R word', 'R on the first line of the cycle')
    cycle.p = -1
    cycle.q = -1
    cycle.i = cycle.j = cycle.k = Number.NaN
  }
  const repeats = block.has(L) ? Math.round(block.value[L]!) : 1
  if (repeats < 1 || (block.has(L) && Math.abs(block.value[L]! - repeats) > WHOLE_WITHIN))
    fail(
      'The cycle cannot be made so many times.',
      `L${block.value[L]}`,
      'a whole number from 1',
      block.column[L]!
    )
  if (block.has(R)) cycle.r = block.value[R]! * s.unit
  if (block.has(X + third)) cycle.depth = block.value[X + third]! * s.unit
  if (block.has(P)) cycle.p = block.value[P]!
  if (block.has(Q)) cycle.q = block.value[Q]! * s.unit
  if (block.has(I)) cycle.i = block.value[I]! * s.unit
  if (block.has(I + 1)) cycle.j = block.value[I + 1]! * s.unit
  if (block.has(I + 2)) cycle.k = block.value[I + 2]! * s.unit
  if ((code === 82 || code === 86 || code === 88 || code === 89) && cycle.p < 0)
    fail(`G${code} does not say how long to wait.`, 'no P word', 'P in seconds')
  if (code === 83 && !(cycle.q > 0))
    fail(
      'G83 does not say how deep one peck is.',
      cycle.q === -1 ? 'no Q word' : `Q${cycle.q / s.unit}`,
      'Q above 0'
    )
  if (code === 84 && s.turning !== 1)
    fail('Tapping wants the spindle turning clockwise.', 'it does not', 'M3 before')
  if ((code === 86 || code === 87 || code === 88) && s.turning === 0)
    fail(`G${code} wants the spindle turning.`, 'it is off', 'M3 or M4 before')
  if (code === 87 && (Number.isNaN(cycle.i) || Number.isNaN(cycle.j) || Number.isNaN(cycle.k)))
    fail('G87 does not say how to pass through the hole.', 'I, J or K missing', 'I, J and K')
  const before = s.place[third]!
  if (Number.isNaN(before) && (s.incremental || s.backToStart))
    fail(
      'The cycle starts at a height that is not known.',
      `no ${LETTERS[third]} reached yet`,
      `a move to a ${LETTERS[third]} before`
    )
  const r = cycle.r + (s.incremental ? before : s.base[third]!)
  const depth = cycle.depth + (s.incremental ? r : s.base[third]!)
  if (r < depth)
    fail(
      'The retract plane lies below the depth.',
      `R ${r.toFixed(3)}, depth ${depth.toFixed(3)} mm`,
      'R at or above the depth'
    )
  const pecks = code === 83 ? Math.max(1, Math.ceil((r - depth) / cycle.q)) : 1
  if (repeats * (3 * pecks + 12) > MOST_MOVES)
    fail(
      'One line asks for more moves than are read.',
      `${repeats} × ${pecks}`,
      `at most ${MOST_MOVES} moves`
    )
  if (before < r) s.along(third, r, false)
  const clear = s.backToStart && before > r ? before : r
  const dp = s.incremental && block.has(X + first) ? block.value[X + first]! * s.unit : 0
  const dq = s.incremental && block.has(X + second) ? block.value[X + second]! * s.unit : 0
  let p = s.incremental ? s.place[first]! : target(s, first)
  let q = s.incremental ? s.place[second]! : target(s, second)
  for (let n = 0; n < repeats; n++) {
    p += dp
    q += dq
    over(s, first, second, third, p, q)
    if (code !== 87) s.along(third, r, false)
    if (code === 83) peck(s, third, r, depth, clear)
    else hole(s, code, depth, r, clear)
  }
}

// At rapid speed across the plane.
function over(s: State, first: number, second: number, third: number, p: number, q: number): void {
  if (s.place[first] === p && s.place[second] === q) return
  const to = [0, 0, 0]
  to[first] = p
  to[second] = q
  to[third] = s.place[third]!
  s.straight(false, to[0]!, to[1]!, to[2]!, 0)
}

function cut(s: State, axis: number, to: number): void {
  if (s.feed === 0)
    s.complaints.once(
      'feed',
      'error',
      s.block.at(X, GROUP.motion),
      'The cutter moves into the work with no feed given. The move is read with none.',
      'no F so far',
      'an F word above 0 on this line or before'
    )
  s.along(axis, to, true)
}

function peck(s: State, axis: number, r: number, depth: number, clear: number): void {
  const q = s.cycle.q
  for (let n = 1; r - n * q > depth; n++) {
    cut(s, axis, r - n * q)
    s.along(axis, clear, false)
    s.along(axis, Math.min(clear, r - n * q + PECK_BACK_MM), false)
  }
  cut(s, axis, depth)
  s.along(axis, clear, false)
}

function hole(s: State, code: number, depth: number, r: number, clear: number): void {
  const [first, second, third] = PLANE_AXES[s.plane]!
  if (code === 87) {
    backBore(s, first, second, third, depth, clear)
    return
  }
  cut(s, third, depth)
  if (code === 82 || code === 86 || code === 88 || code === 89) s.rest(MOTION.dwell, s.cycle.p)
  if (code === 84) {
    // The tap is turned out again.
    s.turning = -1
    cut(s, third, r)
    s.turning = 1
    s.along(third, clear, false)
  } else if (code === 85 || code === 89) {
    cut(s, third, r)
    s.along(third, clear, false)
  } else if (code === 86 || code === 88) {
    const turning = s.turning
    s.turning = 0
    if (code === 88) s.rest(MOTION.stop, 0)
    s.along(third, clear, false)
    s.turning = turning
  } else s.along(third, clear, false)
}

// From below: beside the middle with the spindle held, through the hole, back to the middle, up to K, down, and out.
function backBore(
  s: State,
  first: number,
  second: number,
  third: number,
  depth: number,
  clear: number
): void {
  const { cycle } = s
  const p = s.place[first]!
  const q = s.place[second]!
  const offsets = [cycle.i, cycle.j, cycle.k]
  const beside = [p + offsets[first]!, q + offsets[second]!] as const
  const top = offsets[third]! + (s.incremental ? depth : s.base[third]!)
  const turning = s.turning
  s.turning = 0
  over(s, first, second, third, beside[0], beside[1])
  s.along(third, depth, false)
  over(s, first, second, third, p, q)
  s.turning = turning
  cut(s, third, top)
  cut(s, third, depth)
  s.turning = 0
  over(s, first, second, third, beside[0], beside[1])
  s.along(third, clear, false)
  over(s, first, second, third, p, q)
  s.turning = turning
}
