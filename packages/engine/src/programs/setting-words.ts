import type { Machining } from '../cuts/operation/machining.ts'
import type { MachineSetting } from '../cuts/operation/operation.ts'
import { placed, pointToProgram } from '../cuts/pins/frame.ts'
import { decimals } from '../quantity/format.ts'

/** How the piece lies in a setting, in plain words. */
export function liesWords(machining: Machining, on: MachineSetting): string[] {
  const { up } = on.setting
  const { about } = machining.pins.datum
  const first = machining.settings[0] === on
  return [
    `${up} up${first ? '' : `, turned over about a line along ${about}: ${about === 'x' ? 'left stays left' : 'what is near stays near'}`}`,
    ...(machining.pins.pins.length === 0
      ? []
      : [first && drillsPins(machining) ? 'the pin holes are made in this setting' : 'on the pins'])
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
  const seen =
    mirror === 'none' ? '' : mirror === 'y' ? ', near and far exchanged' : ', left and right exchanged'
  return [
    `X0 Y0 is the point ${mm(x0)}, ${mm(y0)} of the drawing (seen from the front${seen}): ${
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

/** What was measured of how the piece lies and is baked into the programs, in words and numbers; none: nothing was. */
export function measuredWords({ frame, place, thickness }: MachineSetting): string[] {
  const mm = (v: number) => decimals(v, 3)
  return [
    ...(place === null
      ? []
      : [
          `As measured the piece lies turned by ${decimals(frame.turnDeg, 4)} degrees, counter-clockwise, and shifted by X${mm(frame.shiftX)} Y${mm(frame.shiftY)}: both are in the paths. The zero stays where it was set.`,
          `Left at the places measured: ${place.residualsMm.map(mm).join(', ')} mm${place.scale === null ? '' : `; distances are ${decimals((place.scale - 1) * 100, 2)} % off those drawn`}.`
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
  const pinned = machining.pins.pins.length > 0 && on.setting.index > 0
  return [
    `by ${by}${pinned && by !== 'pins' ? ' and on the pins' : ''}`,
    ...(keepClear.length === 0
      ? []
      : [`${keepClear.length} ${keepClear.length === 1 ? 'place' : 'places'} kept clear of the cutter`])
  ]
}
