import type { Machining } from '../cuts/operation/machining.ts'
import type { MachineSetting, Operation } from '../cuts/operation/operation.ts'
import type { Position } from '../cuts/operation/position.ts'
import { placed, pointToPlan, pointToProgram } from '../cuts/pins/frame.ts'
import type { Lengths } from '../piece/lengths.ts'
import { lengthsOf } from '../piece/lengths.ts'
import { decimals } from '../quantity/format.ts'
import { fromFixedUnit } from '../quantity/unit.ts'

/** The unit that the machine's programs, and so its own display, are in. */
export function machineUnit({ bench }: Machining): 'mm' | 'in' {
  return bench.machine.program.units === 'inch' ? 'in' : 'mm'
}

/** Decimals of an inch, at which the finest step of a machine can be told. */
const INCH_PLACES = 4

/** Places as the machine shows them: in its own unit, with so many decimals of a mm or as fine in inches. */
function placesOf(machining: Machining): (mm: number, most?: number) => string {
  const unit = machineUnit(machining)
  return (mm, most = 2) => decimals(fromFixedUnit(mm, unit), unit === 'mm' ? most : INCH_PLACES)
}

/** Heights as the machine shows them, without their unit: 0.1 mm, or as fine in inches. */
export function heightsOf(machining: Machining): (mm: number) => string {
  const unit = machineUnit(machining)
  return mm => decimals(fromFixedUnit(mm, unit), unit === 'mm' ? 1 : 3, 1)
}

/**
 * Lengths that are not read off the machine, without their unit, and that unit: of a sheet, or of a program.
 * `said`: the unit with a space before it on a sheet; '' in a program, where all is in one.
 */
function lengthsFor(machining: Machining, L: Lengths | null) {
  if (L === null) return { of: placesOf(machining), unit: machineUnit(machining), said: '' }
  return { of: (mm: number, most = 2) => L.of(mm, most), unit: L.unit, said: ` ${L.unit}` }
}

/**
 * How the units of the machine are told from those of the shop's sheets; null where they are the same.
 * `L`: the shop's.
 */
export function machineUnitWords(machining: Machining): string | null {
  const unit = machineUnit(machining)
  const own = lengthsOf(machining.bench.shop).unit
  const named = { mm: 'mm', in: 'inches' } as const
  return unit === own
    ? null
    : `The programs, and what stands behind X, Y and Z, are in ${named[unit]}, as the machine reads them; all else is in ${named[own]}.`
}

/** How the piece lies in a setting, in plain words: of a program, or of a sheet in the units of `L`. */
export function liesWords(machining: Machining, on: MachineSetting, L: Lengths | null = null): string[] {
  const { up } = on.setting
  const { about } = machining.pins.datum
  const first = on.setting.index === 0
  return [
    `${up} up${first ? '' : `, turned over about a line along ${about}: ${about === 'x' ? 'left stays left' : 'what is near stays near'}`}`,
    ...(machining.pins.pins.length === 0
      ? []
      : [first && drillsPins(machining) ? 'the pin holes are made in this setting' : 'on the pins']),
    ...(on.position === null ? [] : positionWords(machining, on, on.position, L))
  ]
}

// A piece that is moved along: which position, how far it was moved, on which pins, what is made for the next.
function positionWords(
  machining: Machining,
  on: MachineSetting,
  position: Position,
  L: Lengths | null
): string[] {
  const { number, count, movedMm, pitchMm, stands, makes, axis, strips } = position
  const way = axis === 'x' ? 'X' : 'Y'
  const place = placesOf(machining)
  const { of, unit, said } = lengthsFor(machining, L)
  const long = (v: number) => `${of(v)} ${unit}`
  const { fromMm, toMm } = strips[number - 1]!
  const at = ({ x, y, diameterMm }: Position['makes'][number]) => {
    const [px, py] = placed(on.frame, x, y)
    return `${of(diameterMm)}${said} across at X${place(px + 0)} Y${place(py + 0)}`
  }
  return [
    `position ${number} of ${count}: the stretch ${long(toMm - fromMm)} long whose middle lies at ${way}0${
      number === 1
        ? ''
        : `; moved by ${long(pitchMm)} towards less ${way} since position ${number - 1}, by ${long(movedMm)} in all; the zero stays`
    }`,
    stands.length === 0
      ? `not on pins yet: square it to ${way} along a long side`
      : `on the index pins ${stands.map(at).join(' and ')}`,
    ...(makes.length === 0
      ? []
      : [
          `holes for the next position are made here: ${makes.map(at).join(' and ')}; they then stand ${long(pitchMm)} nearer to less ${way}`
        ]),
    'what hangs over the machine lies level on a stand'
  ]
}

function drillsPins(machining: Machining): boolean {
  return machining.operations.some(o => o.kind === 'pin holes')
}

/**
 * What X and Y are counted from: of a program, or of a sheet in the units of `L`. What stands behind X and Y is in the
 * machine's own unit everywhere.
 */
export function zeroWords(machining: Machining, on: MachineSetting, L: Lengths | null = null): string[] {
  const { x0, y0, about } = machining.pins.datum
  const { mirror } = on.frame
  const place = placesOf(machining)
  const { of, said } = lengthsFor(machining, L)
  const { pins } = machining.pins
  if (on.position !== null) {
    const { axis, middleMm, number } = on.position
    const [x, y] = pointToPlan(on.frame, axis === 'x' ? middleMm : 0, axis === 'y' ? middleMm : 0)
    return [
      `X0 Y0 is the point ${of(x)}, ${of(y)}${said} of the drawing in position ${number} (seen from the front${exchanged(mirror)}): the middle of the stretch that is worked. It is set once, in position 1, and stays when the piece is moved along.`
    ]
  }
  return [
    `X0 Y0 is the point ${of(x0)}, ${of(y0)}${said} of the drawing (seen from the front${exchanged(mirror)}): ${
      pins.length > 1
        ? `on the line it is turned over about, through the pins`
        : `the middle of the outline's box, on the line along ${about} that it is turned over about`
    }.`,
    ...pins.map((p, i) => {
      const [x, y] = placed(on.frame, ...pointToProgram(on.frame, p.x, p.y))
      return `Pin ${i + 1}, ${of(p.diameterMm)}${said} across, stands at X${place(x + 0)} Y${place(y + 0)}.`
    })
  ]
}

function exchanged(mirror: MachineSetting['frame']['mirror']): string {
  return mirror === 'none' ? '' : mirror === 'y' ? ', near and far exchanged' : ', left and right exchanged'
}

/** What was measured of how the piece lies and is baked into the programs, in words and numbers; none: nothing was. */
export function measuredWords(
  machining: Machining,
  { frame, place, names, thickness }: MachineSetting,
  L: Lengths | null = null
): string[] {
  const at = placesOf(machining)
  const { of, unit } = lengthsFor(machining, L)
  return [
    ...(place === null
      ? []
      : [
          `As measured the piece lies turned by ${decimals(frame.turnDeg, 4)} degrees, counter-clockwise, and shifted by X${at(frame.shiftX, 3)} Y${at(frame.shiftY, 3)}: both are in the paths. The zero stays where it was set.`,
          `Left at the places measured: ${place.residualsMm.map((r, k) => `${names[k]} ${of(r, 3)}`).join('; ')} ${unit}${place.scale === null ? '' : `; distances are ${decimals((place.scale - 1) * 100, 2)} % off those drawn`}.`
        ]),
    ...(thickness === null
      ? []
      : [
          `Measured thickness ${of(thickness.measuredMm)} ${unit}, planned ${of(thickness.plannedMm)}: the bed lies by that much ${thickness.measuredMm >= thickness.plannedMm ? 'lower' : 'higher'} under the face.`
        ])
  ]
}

/** That the face is not the one heights are counted from: resin poured over it raises it, say. */
export function raisedFaceWords({ kind, job }: Operation): string[] {
  const same =
    job.topMm < SAME_FACE_MM || kind === 'flatten' || kind === 'pin holes' || kind === 'index holes'
  return same
    ? []
    : [`When this is run the face stands ${decimals(job.topMm, 2)} mm above the zero of heights.`]
}

/** The face and the zero of heights are one, mm: what rounds. */
const SAME_FACE_MM = 1e-6

/** How the piece is held, in words. */
export function holdingWords(machining: Machining, on: MachineSetting): string[] {
  const { by, keepClear } = machining.bench.stack.piece.holding
  const pinned =
    on.position === null
      ? machining.pins.pins.length > 0 && on.setting.index > 0
      : on.position.stands.length > 0
  return [
    `by ${by}${pinned && by !== 'pins' ? ' and on the pins' : ''}`,
    ...(keepClear.length === 0
      ? []
      : [`${keepClear.length} ${keepClear.length === 1 ? 'place' : 'places'} kept clear of the cutter`])
  ]
}
