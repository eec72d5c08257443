import type { Machining } from '../cuts/operation/machining.ts'
import type { MachineSetting } from '../cuts/operation/operation.ts'
import type { Position } from '../cuts/operation/position.ts'
import { placed, pointToPlan, pointToProgram } from '../cuts/pins/frame.ts'
import { decimals } from '../quantity/format.ts'

/** How the piece lies in a setting, in plain words. */
export function liesWords(machining: Machining, on: MachineSetting): string[] {
  const { up } = on.setting
  const { about } = machining.pins.datum
  const first = on.setting.index === 0
  return [
    `${up} up${first ? '' : `, turned over about a line along ${about}: ${about === 'x' ? 'left stays left' : 'what is near stays near'}`}`,
    ...(machining.pins.pins.length === 0
      ? []
      : [first && drillsPins(machining) ? 'the pin holes are made in this setting' : 'on the pins']),
    ...(on.position === null ? [] : positionWords(on, on.position))
  ]
}

// A piece that is moved along: which position, how far it was moved, on which pins, what is made for the next.
function positionWords(on: MachineSetting, position: Position): string[] {
  const { number, count, movedMm, pitchMm, stands, makes, axis, strips } = position
  const [mm, way] = [(v: number) => decimals(v, 2), axis === 'x' ? 'X' : 'Y']
  const { fromMm, toMm } = strips[number - 1]!
  const at = ({ x, y, diameterMm }: Position['makes'][number]) => {
    const [px, py] = placed(on.frame, x, y)
    return `${mm(diameterMm)} across at X${mm(px + 0)} Y${mm(py + 0)}`
  }
  return [
    `position ${number} of ${count}: the stretch ${mm(toMm - fromMm)} mm long whose middle lies at ${way}0${
      number === 1
        ? ''
        : `; moved by ${mm(pitchMm)} mm towards less ${way} since position ${number - 1}, by ${mm(movedMm)} in all; the zero stays`
    }`,
    stands.length === 0
      ? `not on pins yet: square it to ${way} along a long side`
      : `on the index pins ${stands.map(at).join(' and ')}`,
    ...(makes.length === 0
      ? []
      : [
          `holes for the next position are made here: ${makes.map(at).join(' and ')}; they then stand ${mm(pitchMm)} mm nearer to less ${way}`
        ]),
    'what hangs over the machine lies level on a stand'
  ]
}

function drillsPins(machining: Machining): boolean {
  return machining.operations.some(o => o.kind === 'pin holes')
}

/** What X and Y are counted from, in words and numbers of the plan. */
export function zeroWords(machining: Machining, on: MachineSetting): string[] {
  const { x0, y0, about } = machining.pins.datum
  const { mirror } = on.frame
  const mm = (v: number) => decimals(v, 2)
  const { pins } = machining.pins
  if (on.position !== null) {
    const { axis, middleMm, number } = on.position
    const [x, y] = pointToPlan(on.frame, axis === 'x' ? middleMm : 0, axis === 'y' ? middleMm : 0)
    return [
      `X0 Y0 is the point ${mm(x)}, ${mm(y)} of the drawing in position ${number} (seen from the front${exchanged(mirror)}): the middle of the stretch that is worked. It is set once, in position 1, and stays when the piece is moved along.`
    ]
  }
  return [
    `X0 Y0 is the point ${mm(x0)}, ${mm(y0)} of the drawing (seen from the front${exchanged(mirror)}): ${
      pins.length > 1
        ? `on the line it is turned over about, through the pins`
        : `the middle of the outline's box, on the line along ${about} that it is turned over about`
    }.`,
    ...pins.map((p, i) => {
      const [x, y] = placed(on.frame, ...pointToProgram(on.frame, p.x, p.y))
      return `Pin ${i + 1}, ${mm(p.diameterMm)} across, stands at X${mm(x + 0)} Y${mm(y + 0)}.`
    })
  ]
}

function exchanged(mirror: MachineSetting['frame']['mirror']): string {
  return mirror === 'none' ? '' : mirror === 'y' ? ', near and far exchanged' : ', left and right exchanged'
}

/** What was measured of how the piece lies and is baked into the programs, in words and numbers; none: nothing was. */
export function measuredWords({ frame, place, names, thickness }: MachineSetting): string[] {
  const mm = (v: number) => decimals(v, 3)
  return [
    ...(place === null
      ? []
      : [
          `As measured the piece lies turned by ${decimals(frame.turnDeg, 4)} degrees, counter-clockwise, and shifted by X${mm(frame.shiftX)} Y${mm(frame.shiftY)}: both are in the paths. The zero stays where it was set.`,
          `Left at the places measured: ${place.residualsMm.map((r, k) => `${names[k]} ${mm(r)}`).join('; ')} mm${place.scale === null ? '' : `; distances are ${decimals((place.scale - 1) * 100, 2)} % off those drawn`}.`
        ]),
    ...(thickness === null
      ? []
      : [
          `Measured thickness ${decimals(thickness.measuredMm, 2)} mm, planned ${decimals(thickness.plannedMm, 2)}: the bed lies by that much ${thickness.measuredMm >= thickness.plannedMm ? 'lower' : 'higher'} under the face.`
        ])
  ]
}

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
