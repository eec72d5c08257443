import { describe, expect, it } from 'vitest'
import { MOTION } from '../../../src/proving/motion.ts'
import { readProgram } from '../../../src/proving/read/read-program.ts'
import { randomFrom } from '../../shape/random.ts'

type Vector = readonly [number, number, number]
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0]
]
// By plane: where the third axis points, one direction in the plane, the offset words, which places a and b are.
const PLANES = [
  { code: 17, normal: [0, 0, 1], along: [1, 0, 0], offsets: 'IJ', axes: [0, 1] },
  { code: 18, normal: [0, 1, 0], along: [1, 0, 0], offsets: 'KI', axes: [2, 0] },
  { code: 19, normal: [1, 0, 0], along: [0, 1, 0], offsets: 'JK', axes: [1, 2] }
] as const

const f = (v: number): string => v.toFixed(7)
const words = (v: Vector): string => `X${f(v[0])} Y${f(v[1])} Z${f(v[2])}`

// Seen from the end of the normal, counter-clockwise is from u to normal × u.
function arcCase(plane: (typeof PLANES)[number], random: () => number, most: number) {
  const u = plane.along
  const v = cross(plane.normal, u)
  const c: Vector = [random() * 50, random() * 50, random() * 50]
  const r = 1 + random() * 30
  const from = random() * 2 * Math.PI
  const turn = 0.1 + random() * (most - 0.2)
  const rise = random() < 0.5 ? 0 : 5 * random()
  const at = (angle: number, lift: number): Vector =>
    [0, 1, 2].map(
      k => c[k]! + r * (Math.cos(angle) * u[k]! + Math.sin(angle) * v[k]!) + lift * plane.normal[k]!
    ) as unknown as Vector
  return { c, r, turn, rise, start: at(from, 0), end: (sense: 1 | -1) => at(from + sense * turn, rise) }
}

describe('arcs against closed forms in three dimensions', () => {
  for (const plane of PLANES) {
    for (const sense of [1, -1] as const) {
      const code = sense === 1 ? 3 : 2
      it(`G${plane.code} G${code}: the middle by its offsets, by R above 0 and by R below 0`, () => {
        const random = randomFrom(100 + plane.code + code)
        for (let n = 0; n < 200; n++) {
          for (const form of ['offsets', 'short', 'long'] as const) {
            const k = arcCase(plane, random, form === 'short' ? 0.9 * Math.PI : 2 * Math.PI - 0.1)
            if (form === 'long' && k.turn < 1.1 * Math.PI) continue
            const [p, q] = plane.axes
            const way =
              form === 'offsets'
                ? `${plane.offsets[0]}${f(k.c[p] - k.start[p])} ${plane.offsets[1]}${f(k.c[q] - k.start[q])}`
                : `R${form === 'short' ? '' : '-'}${f(k.r)}`
            const text = `G21 G90 G${plane.code} F100\nG0 ${words(k.start)}\nG${code} ${words(k.end(sense))} ${way}\nM2`
            const { motions, facts } = readProgram(text)
            expect(facts.errors, text).toBe(0)
            expect(motions.kind[1]).toBe(sense === 1 ? MOTION.arcCounter : MOTION.arcClockwise)
            expect(motions.plane[1]).toBe(plane.code)
            // Seven decimals in; the radius form magnifies them near half a turn.
            expect(Math.abs(motions.a[1]! - k.c[p]), text).toBeLessThan(1e-4)
            expect(Math.abs(motions.b[1]! - k.c[q]), text).toBeLessThan(1e-4)
          }
        }
      })

      it(`G${plane.code} G${code}: in inverse time the feed is the length of the helix times F`, () => {
        const random = randomFrom(200 + plane.code + code)
        for (let n = 0; n < 100; n++) {
          const k = arcCase(plane, random, 2 * Math.PI)
          const [p, q] = plane.axes
          const text = `G21 G90 G93 G${plane.code}\nG0 ${words(k.start)}\nG${code} ${words(k.end(sense))} ${plane.offsets[0]}${f(k.c[p] - k.start[p])} ${plane.offsets[1]}${f(k.c[q] - k.start[q])} F2.5\nM2`
          const { motions } = readProgram(text)
          const length = Math.hypot(k.r * k.turn, k.rise)
          expect(Math.abs(motions.feed[1]! / (2.5 * length) - 1), text).toBeLessThan(1e-5)
        }
      })
    }
  }

  it('a full turn ends where it starts; in inches and counted from the last place too', () => {
    for (const [head, scale] of [
      ['G21 G90', 1],
      ['G20 G90', 25.4],
      ['G21 G91', 1]
    ] as const) {
      const { motions, facts } = readProgram(
        `${head} F9\nG0 X1.1 Y2 Z3\nG3 ${head.endsWith('91') ? 'X0' : 'X1.1'} I0.7 J-0.3\nM2`
      )
      if (head.endsWith('91')) expect(facts.errors).toBe(1)
      else {
        expect(facts.errors).toBe(0)
        expect([motions.x[1], motions.y[1]]).toEqual([motions.x[0], motions.y[0]])
        expect(motions.a[1]).toBeCloseTo(1.8 * scale, 10)
      }
    }
    const { motions } = readProgram('G21 F9\nG0 X1.1 Y2 Z3\nG91 G3 X0 I0.7 J-0.3\nM2')
    expect([motions.x[1], motions.y[1], motions.a[1]]).toEqual([1.1, 2, 1.8])
  })

  // 3.5.3.2: 0.002 mm, 0.0002 inch.
  it.each([
    ['G21', 10.002, 0],
    ['G21', 10.0021, 1],
    ['G20', 10.0002, 0],
    ['G20', 10.00021, 1]
  ])('%s: start 10 and end %d from the middle: %d errors', (units, far, errors) => {
    expect(readProgram(`${units} F9\nG0 X0 Y0 Z0\nG2 X${10 + far} Y0 I10\nM2`).facts.errors).toBe(errors)
  })

  it('half a turn by its radius has its middle half way, though the radius falls a hair short', () => {
    const { motions, facts } = readProgram('G21 F9\nG0 X0 Y0 Z0\nG2 X10 Y0 R4.999\nM2')
    expect(facts.errors).toBe(0)
    expect([motions.a[1], motions.b[1]]).toEqual([5, 0])
  })
})
