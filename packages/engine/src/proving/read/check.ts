import { AXES, F, H, L, P, Q, R, S, slot, T } from './block.ts'
import { GROUP, gName } from './codes.ts'
import { WHOLE_WITHIN } from './number.ts'
import { NO_MOTION, type State } from './state.ts'

const A = slot('A')
const D = slot('D')
const I = slot('I')
const ROTARY = 7 << A
const AXIS_LETTERS = ['A', 'B', 'C'] as const

const isCycle = (tenfold: number): boolean => tenfold >= 810 && tenfold <= 890
/** G10, G28, G30, G92: codes of their own line that use the axis words. */
const usesAxes = (tenfold: number): boolean =>
  tenfold === 100 || tenfold === 280 || tenfold === 300 || tenfold === 920

/**
 * Looks whether the words of a line belong together, before anything is done (NISTIR 6556, 3.3 to 3.5).
 *
 * @returns ten times the code of the motion that the line makes, or -1
 */
export function motionOf(s: State): number {
  const { block, complaints } = s
  const axes = (block.mask & AXES) !== 0
  const once = block.hasG(GROUP.once) ? block.g[GROUP.once]! : -1
  const own = block.hasG(GROUP.motion) ? block.g[GROUP.motion]! : -1
  if ((block.mask & ROTARY) !== 0) rotary(s)
  let motion = -1
  if (own >= 0 && own !== NO_MOTION) {
    if (usesAxes(once))
      complaints.fail(
        block.gColumn[GROUP.motion]!,
        'Two codes of the line both want its X, Y and Z.',
        `${gName(once)} and ${gName(own)}`,
        'one of them on a line'
      )
    motion = own
    if (!axes && (own <= 10 || own === 382))
      complaints.fail(
        block.gColumn[GROUP.motion]!,
        `${gName(own)} goes nowhere.`,
        'no X, Y or Z',
        'at least one of X Y Z'
      )
  } else if (axes && !usesAxes(once)) {
    if (own === NO_MOTION || s.motion === NO_MOTION)
      complaints.fail(
        block.firstAxisColumn(),
        'A place to go to, but no motion is in force.',
        own === NO_MOTION ? 'G80 on the line' : 'no G0, G1, G2 or G3 before, or G80 last',
        'a motion code before or on the line'
      )
    motion = s.motion
  }
  if (once === 530 && motion !== 0 && motion !== 10)
    complaints.fail(
      block.gColumn[GROUP.once]!,
      'G53 goes with a straight move only.',
      motion < 0 ? 'no X, Y or Z' : gName(motion),
      'G0 or G1 and X, Y or Z'
    )
  words(s, motion, once)
  return motion
}

const PLAIN = AXES | (1 << F)
const D_BIT = 1 << D
const H_BIT = 1 << H
const IJK_BITS = 7 << I
const L_BIT = 1 << L
const P_BIT = 1 << P
const Q_BIT = 1 << Q
const R_BIT = 1 << R
const NUMBERS = (1 << F) | (1 << S) | (1 << T) | D_BIT | H_BIT | P_BIT

// Letters that no code of the line makes use of, and numbers that are out of their range.
function words(s: State, motion: number, once: number): void {
  const { block } = s
  const arc = motion === 20 || motion === 30
  const cycle = isCycle(motion)
  const length = block.hasG(GROUP.length) ? block.g[GROUP.length]! : -1
  const radius = block.hasG(GROUP.radius) ? block.g[GROUP.radius]! : -1
  let used = PLAIN | (1 << S) | (1 << T) | ROTARY
  if (radius === 410 || radius === 420) used |= D_BIT
  if (length === 430) used |= H_BIT
  if (arc || motion === 870) used |= IJK_BITS
  if (cycle || once === 100) used |= L_BIT
  if (once === 40 || once === 100 || motion === 820 || motion === 860 || motion === 880 || motion === 890)
    used |= P_BIT
  if (motion === 830) used |= Q_BIT
  if (arc || cycle) used |= R_BIT
  if ((block.mask & ~used) !== 0) unused(s, block.mask & ~used)
  if (length === 430 && !block.has(H))
    s.complaints.fail(
      block.gColumn[GROUP.length]!,
      'G43 does not say which length offset.',
      'no H word',
      'G43 H and a number'
    )
  if (block.mask & NUMBERS) {
    notBelow0(s, F)
    notBelow0(s, S)
    notBelow0(s, P)
    whole(s, T)
    whole(s, H)
    whole(s, D)
  }
  if (once === 40 && !block.has(P))
    s.complaints.fail(
      block.gColumn[GROUP.once]!,
      'G4 does not say how long to wait.',
      'no P word',
      'P in seconds'
    )
  if (once === 100 && (!block.has(L) || Math.abs(block.value[L]! - 2) > WHOLE_WITHIN))
    s.complaints.fail(
      block.at(L, GROUP.once),
      'G10 is known with L2 only.',
      block.has(L) ? `L${block.value[L]}` : 'no L word',
      'G10 L2 P and a place'
    )
}

/** By letter that stands without its code: the codes it goes with. */
const GOES_WITH: Readonly<Record<number, string>> = {
  [D]: 'G41 or G42',
  [H]: 'G43',
  [I]: 'G2, G3 or G87',
  [I + 1]: 'G2, G3 or G87',
  [I + 2]: 'G2, G3 or G87',
  [L]: 'G10 or a cycle G81 to G89',
  [P]: 'G4, G10, G82, G86, G88 or G89',
  [Q]: 'G83',
  [R]: 'G2, G3 or a cycle G81 to G89'
}

function unused(s: State, mask: number): never {
  const letter = 31 - Math.clz32(mask & -mask)
  return s.complaints.fail(
    s.block.column[letter]!,
    'Nothing on the line makes use of this word.',
    wordText(s, letter),
    `with ${GOES_WITH[letter]}`
  )
}

const wordText = (s: State, letter: number): string =>
  `${String.fromCharCode(65 + letter)}${s.block.value[letter]}`

function notBelow0(s: State, letter: number): void {
  if (s.block.has(letter) && s.block.value[letter]! < 0)
    s.complaints.fail(
      s.block.column[letter]!,
      'This number cannot be below 0.',
      wordText(s, letter),
      '0 or more'
    )
}

function whole(s: State, letter: number): void {
  if (!s.block.has(letter)) return
  const v = s.block.value[letter]!
  const n = Math.round(v)
  if (Math.abs(v - n) > WHOLE_WITHIN || n < 0 || n > 65535)
    s.complaints.fail(
      s.block.column[letter]!,
      'This number must be whole and not below 0.',
      `${String.fromCharCode(65 + letter)}${v}`,
      'a whole number from 0 to 65535'
    )
}

// Machines with a turning table are not followed; A0 on a machine without one is harmless.
function rotary(s: State): void {
  for (let k = 0; k < 3; k++) {
    const letter = A + k
    if (s.block.has(letter) && s.block.value[letter] !== 0)
      s.complaints.fail(
        s.block.column[letter]!,
        'The word turns a rotary axis; only X, Y and Z are followed here.',
        `${AXIS_LETTERS[k]}${s.block.value[letter]}`,
        `no ${AXIS_LETTERS[k]}, or 0`
      )
  }
}
