import { MOTION } from '../motion.ts'
import { F, H, P, S, T } from './block.ts'
import { GROUP } from './codes.ts'
import { cycleMove } from './cycle.ts'
import { chooseSystem, goHome, setSystem, shiftZero } from './origin.ts'
import { NO_MOTION, type State } from './state.ts'
import { arcMove, probeMove, straightMove } from './straight.ts'

/** A dwell as long as this is likely to be meant in thousandths of a second. */
const LONG_DWELL_S = 100

/** Carries out one line in the order of the standard, whatever the order of its words (NISTIR 6556, table 8). */
export function execute(s: State, motion: number): void {
  const { block } = s
  const g = block.gMask
  const m = block.mMask
  const stated = s.unitsStated
  if (g & (1 << GROUP.feed)) {
    const inverse = block.g[GROUP.feed] === 930
    // A feed per minute must be given anew after inverse time.
    if (inverse !== s.inverseTime) s.feed = 0
    s.inverseTime = inverse
  }
  const units = g & (1 << GROUP.units) ? block.g[GROUP.units]! : 0
  const inch = units === 200 || units === 700
  if (block.has(F) && !s.inverseTime) setFeed(s, units !== 0, inch, stated)
  if (block.has(S)) s.speed = block.value[S]!
  if (block.has(T)) s.setTool(Math.round(block.value[T]!), block.column[T]!)
  if (m & (1 << 6)) {
    if (s.chosen === 0 && !block.has(T))
      s.complaints.once(
        'no cutter chosen',
        'warning',
        block.mColumn[6]!,
        'The cutter is changed, but none has been chosen: which one comes is not known.',
        'M6 with no T so far',
        'T and a number before or on the line'
      )
    s.tool = s.chosen
    s.turning = 0
    s.rest(MOTION.change, 0)
  }
  if (m & (1 << 7)) s.turning = block.m[7] === 3 ? 1 : block.m[7] === 4 ? -1 : 0
  // Coolant (M7 to M9) and the operator's overrides (M48, M49) change no move.
  const once = g & 1 ? block.g[GROUP.once]! : -1
  if (once === 40) dwell(s)
  if (s.compensated) settled(s)
  if (g & (1 << GROUP.plane)) s.plane = block.g[GROUP.plane]! / 10
  if (units !== 0) s.setUnits(inch)
  if (g & (1 << GROUP.radius)) compensate(s)
  if (g & (1 << GROUP.length)) s.offset = block.g[GROUP.length] === 430 ? Math.round(block.value[H]!) : 0
  if (g & (1 << GROUP.system)) {
    chooseSystem(s, block.g[GROUP.system]!)
  }
  if (g & (1 << GROUP.distance)) s.incremental = block.g[GROUP.distance] === 910
  if (g & (1 << GROUP.back)) s.backToStart = block.g[GROUP.back] === 980
  if (once === 280 || once === 300) goHome(s, once === 300)
  else if (once === 100) setSystem(s)
  else if (once >= 920) shiftZero(s, once)
  if (motion >= 0) move(s, motion, once === 530)
  else if (g & (1 << GROUP.motion) && block.g[GROUP.motion] === NO_MOTION) s.motion = NO_MOTION
  if (m & (1 << 4)) stop(s)
}

// The standard counts seconds; on some controls P is thousandths of a second (practice).
function dwell(s: State): void {
  const seconds = s.block.value[P]!
  if (seconds >= LONG_DWELL_S)
    s.complaints.once(
      'long dwell',
      'note',
      s.block.column[P]!,
      'The program waits long. The standard counts P in seconds; a control that counts thousandths waits a moment.',
      `P${seconds}`,
      'seconds'
    )
  s.rest(MOTION.dwell, seconds)
}

function move(s: State, motion: number, byMachine: boolean): void {
  if (!s.unitsStated)
    s.complaints.once(
      'units',
      'warning',
      s.block.at(0, GROUP.motion),
      `The program moves before it says its units. Read as ${s.unit === 1 ? 'millimetres' : 'inches'}; a control may be set to the other.`,
      'no G20 or G21 so far',
      'G21 or G20 before the first move'
    )
  switch (motion) {
    case 0:
    case 10:
      straightMove(s, motion === 10, byMachine)
      break
    case 20:
    case 30:
      arcMove(s, motion === 20)
      break
    case 382:
      probeMove(s)
      break
    default:
      cycleMove(s, motion)
  }
  s.motion = motion
}

// The standard reads F before G20 and G21 of the same line: the number counts in the units of the lines before.
function setFeed(s: State, unitsHere: boolean, inch: boolean, stated: boolean): void {
  const { block } = s
  const changes = unitsHere && inch !== (s.unit !== 1)
  if (changes && stated)
    s.complaints.once(
      'feed and units',
      'warning',
      block.column[F]!,
      'F stands on a line that changes the units. The standard reads it first, in the units of the lines before; a control may not.',
      `F${block.value[F]} with ${inch ? 'G20' : 'G21'}`,
      'F on a line after'
    )
  const unit = changes && !stated ? (inch ? 25.4 : 1) : s.unit
  s.feed = block.value[F]! * unit
}

// Plane, units and work system stay as they are while the radius is compensated (NISTIR 6556, 3.5.10; memory).
function settled(s: State): void {
  const { block } = s
  for (const [group, what] of [
    [GROUP.plane, 'plane'],
    [GROUP.units, 'units'],
    [GROUP.system, 'work system']
  ] as const)
    if (block.hasG(group))
      s.complaints.fail(
        block.gColumn[group]!,
        `The ${what} cannot change while the cutter radius is compensated.`,
        'G41 or G42 in force',
        'G40 first'
      )
}

function compensate(s: State): void {
  const { block } = s
  const on = block.g[GROUP.radius] !== 400
  if (on && s.plane !== 17)
    s.complaints.fail(
      block.gColumn[GROUP.radius]!,
      'The cutter radius can be compensated in the plane of X and Y only.',
      `G${s.plane} in force`,
      'G17'
    )
  if (on && s.compensated)
    s.complaints.fail(
      block.gColumn[GROUP.radius]!,
      'The cutter radius is compensated already.',
      `G${block.g[GROUP.radius]! / 10}`,
      'G40 before'
    )
  if (on)
    s.complaints.once(
      'compensation',
      'warning',
      block.gColumn[GROUP.radius]!,
      'The control is asked to step aside by the radius of the cutter. That is not simulated: the path is read as that of the tip.',
      `G${block.g[GROUP.radius]! / 10}`,
      'a path already offset (G40)'
    )
  s.compensated = on
}

// M2 and M30 put the control back (3.6.1); M0, M1 and M60 wait for the operator.
function stop(s: State): void {
  const code = s.block.m[4]!
  if (code !== 2 && code !== 30) {
    s.rest(MOTION.stop, 0)
    return
  }
  s.ended = true
  s.shift.fill(0)
  s.system = 1
  s.rebase()
  s.plane = 17
  s.incremental = false
  s.inverseTime = false
  s.compensated = false
  s.turning = 0
  s.motion = 10
}
