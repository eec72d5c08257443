import { describe, expect, it } from 'vitest'
import type { About, Frame } from '../../../src/cuts/pins/frame.ts'
import {
  angleToProgram,
  datumOf,
  frameOf,
  linesToPlan,
  linesToProgram,
  placed,
  pointToPlan,
  pointToProgram,
  regionToPlan,
  regionToProgram,
  zToPlan,
  zToProgram
} from '../../../src/cuts/pins/frame.ts'
import type { Face } from '../../../src/piece/piece-schema.ts'
import { polygon } from '../../../src/shape/build.ts'
import { area, inside } from '../../../src/shape/measure.ts'
import { settingsOf } from '../../../src/steps/setting.ts'
import { plainPiece, stackOf } from '../../stack/build.ts'

type Vector = readonly [number, number, number]

// An L: no mirror image of it is itself.
const L = polygon(Float64Array.of(-50, -30, 40, -30, 40, -10, -20, -10, -20, 60, -50, 60))

function framesOf(down: Face, about: About) {
  const stack = stackOf(
    plainPiece({
      down,
      outline: { rectangle: [300, 200], at: [7, -3] },
      mould: { shape: { rectangle: [340, 240], at: [7, -3] } },
      flatten: { back: 1.5, front: 2 },
      cuts: [
        { id: 'a', face: 'front', shape: { rectangle: [20, 20] }, depth: 3 },
        { id: 'b', face: 'back', shape: { rectangle: [20, 20], at: [60, 0] }, depth: 3 }
      ]
    })
  )
  const datum = datumOf(stack.geometry.outline, about)
  const frames = settingsOf(stack.steps).map(s => frameOf(stack.piece, s, stack, datum))
  return { stack, datum, frames }
}

// The piece in the hand: x right, y up, h out of the front. Turned over by the rotation matrix of 180 degrees about
// the line through the datum (Rodrigues: 2·u·uᵀ − 1 for a half turn), then the middle of its up face put at zero.
function turnedInSpace(p: Vector, about: About): Vector {
  const u: Vector = about === 'x' ? [1, 0, 0] : [0, 1, 0]
  const dot = 2 * (u[0] * p[0] + u[1] * p[1] + u[2] * p[2])
  return [dot * u[0] - p[0], dot * u[1] - p[1], dot * u[2] - p[2]]
}

const all = (['back', 'front'] as const).flatMap(down =>
  (['x', 'y'] as const).map(about => ({ down, about }))
)

describe('frames of the two settings', () => {
  it.each(all)('are the piece turned in space: $down down, about $about', ({ down, about }) => {
    const { datum, frames } = framesOf(down, about)
    expect(frames.map(f => f.up)).toEqual([down, down === 'back' ? 'front' : 'back'])
    for (const frame of frames) {
      for (const [x, y, z] of [
        [0, 0, 0],
        [31, -17, 4],
        [-80, 55, 12.5],
        [7, -3, 20]
      ] as const) {
        // Heights as cast run out of the front only when the back lay down.
        const height = (h: number) => (down === 'back' ? h : -h)
        const held: Vector = [x - datum.x0, y - datum.y0, height(z)]
        const zero: Vector = [0, 0, height(frame.zeroZ)]
        const lies = (p: Vector) => (frame.up === 'front' ? p : turnedInSpace(p, about))
        const [a, b] = [lies(held), lies(zero)]
        const [X, Y] = pointToProgram(frame, x, y)
        expect([X, Y]).toEqual([a[0] + 0, a[1] + 0])
        expect(zToProgram(frame, z)).toBeCloseTo(a[2] - b[2], 12)
        expect(pointToPlan(frame, X, Y)).toEqual([x, y])
        expect(zToPlan(frame, zToProgram(frame, z))).toBeCloseTo(z, 12)
      }
    }
  })

  it.each(all)('put Z 0 on the flattened face and the bed under the other: $down down', ({ down, about }) => {
    const { stack, frames } = framesOf(down, about)
    const [first, second] = frames as [Frame, Frame]
    const { lowZ, highZ } = stack.states[stack.states.length - 1]!
    // What lay down in the mould is flattened first, from below; the other face then still has its rough.
    expect(first.zeroZ).toBeCloseTo(lowZ, 9)
    expect(first.bedZ).toBeCloseTo(-(stack.castHeight - lowZ), 9)
    expect(second.zeroZ).toBeCloseTo(highZ, 9)
    expect(second.bedZ).toBeCloseTo(-(highZ - lowZ), 9)
    expect(stack.castHeight - highZ).toBeCloseTo(down === 'back' ? 2 : 1.5, 9)
  })

  it.each(all)(
    'keep regions counter-clockwise and lines in their sense: $down, $about',
    ({ down, about }) => {
      const { frames } = framesOf(down, about)
      for (const frame of frames) {
        const lies = regionToProgram(frame, L)
        expect(area(lies)).toBeCloseTo(area(L), 9)
        for (const [x, y] of [
          [-35, 0],
          [0, 0],
          [30, -20],
          [30, 20]
        ] as const) {
          const [X, Y] = pointToProgram(frame, x, y)
          expect(inside(lies, X, Y)).toBe(inside(L, x, y))
        }
        const back = regionToPlan(frame, lies).rings[0]!
        L.rings[0]!.forEach((v, k) => {
          expect(back[k]!).toBeCloseTo(v, 9)
        })
        const line = Float64Array.of(0, 0, 10, 5, 12, 40)
        const [there] = linesToProgram(frame, [line])
        expect([there![0], there![1]]).toEqual(pointToProgram(frame, 0, 0))
        expect(linesToPlan(frame, [there!])[0]).toEqual(line)
        const deg = angleToProgram(frame, 30)
        const [ax, ay] = pointToProgram(frame, 0, 0)
        const [bx, by] = pointToProgram(frame, Math.cos(Math.PI / 6), 0.5)
        expect(Math.cos((deg * Math.PI) / 180)).toBeCloseTo(bx - ax, 12)
        expect(Math.sin((deg * Math.PI) / 180)).toBeCloseTo(by - ay, 12)
      }
    }
  )

  it('take the line of the pins where the maker gives them, and a measured place into the program', () => {
    const { stack, frames } = framesOf('back', 'x')
    const { outline } = stack.geometry
    expect(datumOf(outline, 'x')).toEqual({ x0: 7, y0: -3, about: 'x' })
    const pins = [
      [-190, 12],
      [204, 12]
    ] as const
    expect(datumOf(outline, 'x', pins)).toEqual({ x0: 7, y0: 12, about: 'x' })
    expect(datumOf(outline, 'y', pins)).toEqual({ x0: 7, y0: -3, about: 'y' })
    const off = { ...frames[0]!, turnDeg: 90, shiftX: 2, shiftY: -1 }
    expect(placed(off, 10, 0)[0]).toBeCloseTo(2, 12)
    expect(placed(off, 10, 0)[1]).toBeCloseTo(9, 12)
  })
})
