import { AXES, P, X } from './block.ts'
import { GROUP } from './codes.ts'
import { WHOLE_WITHIN } from './number.ts'
import { FIRST_SYSTEM, HOME_28, HOME_30, SHIFT, SYSTEM } from './parameters.ts'
import type { State } from './state.ts'

/**
 * Zeros: work systems, their setting, the shift, the machine's own home (NISTIR 6556, 3.5.5, 3.5.8, 3.5.13, 3.5.18).
 *
 * Where the machine's own zero lies is not in a program. Unless it is given, moves counted from it (G28, G30, G53) end
 * at a place that is not known; the first G10 L2 is taken to lay the zero of its system where the setting's zero lies,
 * which tells where the machine's is.
 */
const AXIS_NAMES = ['X', 'Y', 'Z'] as const

/** G54 to G59.3. */
export function chooseSystem(s: State, tenfold: number): void {
  const n = tenfold < 590 ? tenfold / 10 - 53 : 6 + (tenfold - 590)
  if (
    n !== s.system &&
    s.list.count > 0 &&
    s.parameters.isKnown(FIRST_SYSTEM + 20 * (n - 1)) === false &&
    n !== 1
  )
    s.complaints.once(
      `system ${n}`,
      'warning',
      s.block.gColumn[GROUP.system]!,
      'The program goes on in another work system, whose zero it has not set. It is read as though both zeros lay in one place.',
      `G${tenfold / 10}`,
      'one work system, or its zero set by G10 L2'
    )
  s.system = n
  s.parameters.put(SYSTEM, n)
  s.rebase()
}

/** G10 L2: the zero of a system in the machine's own coordinates. */
export function setSystem(s: State): void {
  const { block } = s
  const p = block.value[P]!
  const n = Math.round(p)
  if (!block.has(P) || Math.abs(p - n) > WHOLE_WITHIN || n < 1 || n > 9)
    s.complaints.fail(
      block.at(P, GROUP.once),
      'G10 L2 does not say which work system it sets.',
      block.has(P) ? `P${p}` : 'no P word',
      'P1 to P9'
    )
  if ((block.mask & AXES) === 0)
    s.complaints.fail(
      block.gColumn[GROUP.once]!,
      'G10 L2 sets nothing.',
      'no X, Y or Z',
      'at least one of X Y Z'
    )
  s.complaints.once(
    'G10',
    'warning',
    block.gColumn[GROUP.once]!,
    'The program sets a zero itself. It is read as though that zero were the one of the setting; the piece must lie there.',
    `G10 L2 P${n}`,
    'a zero set at the machine'
  )
  for (let k = 0; k < 3; k++) {
    if (!block.has(X + k)) continue
    const at = block.value[X + k]! * s.unit
    if (Number.isNaN(s.machine[k]!)) s.machine[k] = s.systems[3 * (n - 1) + k]! - at
    s.systems[3 * (n - 1) + k] = s.machine[k]! + at
    s.parameters.put(FIRST_SYSTEM + 20 * (n - 1) + k, block.value[X + k]!)
  }
  s.rebase()
}

/** G92: from here on the place where the cutter stands has these coordinates. */
export function shiftZero(s: State, tenfold: number): void {
  const { block } = s
  if (tenfold === 920) {
    if ((block.mask & AXES) === 0)
      s.complaints.fail(
        block.gColumn[GROUP.once]!,
        'G92 shifts nothing.',
        'no X, Y or Z',
        'at least one of X Y Z'
      )
    for (let k = 0; k < 3; k++) {
      if (!block.has(X + k)) continue
      const value = block.value[X + k]! * s.unit
      if (Number.isNaN(s.place[k]!)) {
        s.complaints.once(
          'G92 start',
          'warning',
          block.gColumn[GROUP.once]!,
          `G92 counts ${AXIS_NAMES[k]} from wherever the cutter stands when the program starts. It is read as though it stood where these numbers are right in the setting.`,
          'a place not known',
          'a zero set at the machine'
        )
        s.place[k] = s.systems[3 * (s.system - 1) + k]! + value
      }
      s.shift[k] = s.place[k]! - s.systems[3 * (s.system - 1) + k]! - value
    }
    s.keptShift.set(s.shift)
    for (let k = 0; k < 3; k++) s.parameters.put(SHIFT + k, s.shift[k]! / s.unit)
  } else if (tenfold === 921 || tenfold === 922) {
    s.shift.fill(0)
    if (tenfold === 921) {
      s.keptShift.fill(0)
      for (let k = 0; k < 3; k++) s.parameters.put(SHIFT + k, 0)
    }
  } else {
    for (let k = 0; k < 3; k++)
      s.shift[k] = Number.isNaN(s.keptShift[k]!)
        ? s.parameters.get(SHIFT + k, block.gColumn[GROUP.once]!) * s.unit
        : s.keptShift[k]!
  }
  s.rebase()
}

/** G28 and G30: by the programmed place to the machine's home. */
export function goHome(s: State, second: boolean): void {
  const { block } = s
  const column = block.gColumn[GROUP.once]!
  if (s.compensated)
    s.complaints.fail(
      column,
      'The machine cannot go home while the cutter radius is compensated.',
      'G41 or G42 in force',
      'G40 first'
    )
  if ((block.mask & AXES) !== 0) s.straight(false, target(s, 0), target(s, 1), target(s, 2), 0)
  const home = second ? HOME_30 : HOME_28
  const to = [0, 1, 2].map(k =>
    s.parameters.isKnown(home + k) ? s.machine[k]! + s.parameters.get(home + k, column) * s.unit : Number.NaN
  )
  if (to.some(Number.isNaN)) unknownPlace(s, column, second ? 'G30' : 'G28')
  s.straight(false, to[0]!, to[1]!, to[2]!, 0)
}

/** A move in the machine's own coordinates (G53). */
export function machineTarget(s: State, axis: number): number {
  if (!s.block.has(X + axis)) return s.place[axis]!
  const at = s.machine[axis]! + s.block.value[X + axis]! * s.unit
  if (Number.isNaN(at)) unknownPlace(s, s.block.gColumn[GROUP.once]!, 'G53')
  return at
}

/** Where the line asks to go along an axis; where the cutter stands when it does not say. */
export function target(s: State, axis: number): number {
  if (!s.block.has(X + axis)) return s.place[axis]!
  const value = s.block.value[X + axis]! * s.unit
  return value + (s.incremental ? s.place[axis]! : s.base[axis]!)
}

function unknownPlace(s: State, column: number, code: string): void {
  s.complaints.once(
    'machine zero',
    'warning',
    column,
    `${code} goes to a place counted from the machine's own zero, and where that lies in the setting is not known. The way there and away from it cannot be proved.`,
    code,
    'moves in the work system, or the zero of the machine given beside the program'
  )
}
