import { describe, expect, it } from 'vitest'
import type { Touched, ZeroCheckInput, ZeroFault } from '../../../src/cuts/pins/zero-check.ts'
import { zeroCheck } from '../../../src/cuts/pins/zero-check.ts'
import type { Chance } from '../../stack/random.ts'
import { chance } from '../../stack/random.ts'

type Place = readonly [number, number]
const ERROR = 0.05
const BORNE = 0.3

// A piece of a size by chance, its three places, and what happens to it on the machine.
function played(c: Chance, happens: (p: Place) => Place, height: number | null = 0): ZeroCheckInput {
  const [w, h] = [c.span(120, 400), c.span(80, 250)]
  const noise = () => c.span(-ERROR, ERROR) / 2
  const touched = (drawn: Place): Touched => {
    const [x, y] = happens(drawn)
    return { drawn, read: [x + noise(), y + noise()] }
  }
  return {
    centre: touched([0, 0]),
    marks: [touched([0.45 * w, 0.45 * h]), touched([-0.25 * w, 0.25 * h])],
    heightMm: height,
    reachMm: Math.hypot(w, h) / 2,
    machineErrorMm: ERROR,
    toleranceMm: BORNE
  }
}

const turned =
  (deg: number, sx = 0, sy = 0) =>
  ([x, y]: Place): Place => {
    const a = (deg * Math.PI) / 180
    return [Math.cos(a) * x - Math.sin(a) * y + sx, Math.sin(a) * x + Math.cos(a) * y + sy]
  }

describe('zero check', () => {
  it('lets pieces go that lie true: 200 seeded', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const c = chance(seed)
      const check = zeroCheck(played(c, turned(0, c.span(-0.05, 0.05), c.span(-0.05, 0.05))))
      expect(check.go, `seed ${seed}: ${check.says}`).toBe(true)
      expect(check.says).toMatch(/^Go: the farthest corner is within/)
    }
  })

  const mistakes: readonly [ZeroFault, string, (c: Chance) => (p: Place) => Place, number?][] = [
    [
      'mirrored',
      'the other face up, turned about x',
      () =>
        ([x, y]) => [x, -y]
    ],
    [
      'mirrored',
      'the other face up, turned about y',
      () =>
        ([x, y]) => [-x, y]
    ],
    [
      'mirrored',
      'mirrored and shifted',
      c =>
        ([x, y]) => [x + c.span(-3, 3), 2 - y]
    ],
    ['half turn', 'laid down end for end', c => turned(180 + c.span(-0.5, 0.5), c.span(-2, 2))],
    ['quarter turn', 'x along y', () => turned(90)],
    [
      'inch',
      'machine in inches',
      () =>
        ([x, y]) => [x / 25.4, y / 25.4]
    ],
    [
      'inch',
      'program in inches',
      () =>
        ([x, y]) => [x * 25.4, y * 25.4]
    ],
    ['shifted', 'zero 2 mm off', () => turned(0, 1.6, -1.2)],
    ['shifted', 'zero off by 1.5 times what is borne', () => turned(0, 1.5 * BORNE, 0)],
    ['turned', 'a degree askew', () => turned(1)],
    ['height', 'zero set 0.6 too low', () => turned(0), 0.6],
    [
      'misread',
      'one mark read wrong',
      () =>
        ([x, y]) =>
          x > 1 ? [x + 4, y - 4] : [x, y]
    ]
  ]
  it.each(mistakes)('%s: %s', (fault, _, happens, height) => {
    for (let seed = 1; seed <= 40; seed++) {
      const c = chance(seed)
      const check = zeroCheck(played(c, happens(c), height ?? 0))
      expect(check.go).toBe(false)
      expect(check.fault, `seed ${seed}: ${check.says}`).toBe(fault)
      expect(check.says).toMatch(/^Stop: /)
    }
  })

  it('says what shift and turn it found, and which axis runs the wrong way', () => {
    const exact = (happens: (p: Place) => Place): ZeroCheckInput => {
      const t = (drawn: Place): Touched => ({ drawn, read: happens(drawn) })
      return {
        centre: t([0, 0]),
        marks: [t([100, 60]), t([-50, 30])],
        heightMm: null,
        reachMm: 120,
        machineErrorMm: 0,
        toleranceMm: BORNE
      }
    }
    const off = zeroCheck(exact(turned(0.5, 1, -2)))
    expect(off.turnDeg).toBeCloseTo(0.5, 9)
    expect(off.shiftX).toBeCloseTo(1, 9)
    expect(off.shiftY).toBeCloseTo(-2, 9)
    // The farthest corner: shift and turn in one sense. 120 mm by 0.5 degrees is a chord of 1.047.
    expect(off.offMm).toBeCloseTo(Math.hypot(1, 2) + 2 * 120 * Math.sin(Math.PI / 720), 9)
    expect(zeroCheck(exact(([x, y]) => [-x, y])).mirrored).toBe('x')
    expect(zeroCheck(exact(([x, y]) => [x, -y])).mirrored).toBe('y')
    expect(zeroCheck(exact(turned(0))).says).toMatch(/The height was not touched/)
    expect(() =>
      zeroCheck({
        ...exact(turned(0)),
        marks: [
          { drawn: [50, 0], read: [50, 0] },
          { drawn: [-50, 0], read: [-50, 0] }
        ]
      })
    ).toThrow(/lie in line/)
  })
})
