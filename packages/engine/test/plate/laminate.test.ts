import { describe, expect, it } from 'vitest'
import { bowMm } from '../../src/plate/bow.ts'
import type { Layer } from '../../src/plate/laminate.ts'
import { bendingNmm, laminate, shapeOf, stressMPa } from '../../src/plate/laminate.ts'
import { solved } from '../../src/plate/linear.ts'
import type { Elastic } from '../../src/plate/ply.ts'
import { isotropic, stiffnessAt, strainAt } from '../../src/plate/ply.ts'
import { chance } from '../stack/random.ts'
import type { Grown } from './finite-element.ts'
import { stripCurvaturePerMm } from './finite-element.ts'

interface Made {
  readonly t: number
  readonly elastic: Elastic
  readonly angle: number
  readonly along: number
  readonly across: number
}

/** A seeded stack of orthotropic plies with free strains along and across their grain. */
function madeStack(seed: number): Made[] {
  const { span } = chance(seed)
  return Array.from({ length: 2 + (seed % 4) }, () => {
    const e1MPa = span(2000, 14_000)
    return {
      t: span(1, 20),
      elastic: { e1MPa, e2MPa: e1MPa * span(0.05, 1), g12MPa: span(300, 1500), nu12: span(0.1, 0.45) },
      angle: span(-90, 90),
      along: span(-0.002, 0.002),
      across: span(-0.01, 0.01)
    }
  })
}

/** Laid from `low` up, all turned by `turn` and all strains times `times`. */
function laid(made: readonly Made[], low = 0, turn = 0, times = 1): Layer[] {
  let z = low
  return made.map(({ t, elastic, angle, along, across }) => {
    z += t
    return {
      lowMm: z - t,
      highMm: z,
      stiffness: stiffnessAt(elastic, angle + turn),
      free: strainAt(times * along, times * across, angle + turn)
    }
  })
}
const close = (a: readonly number[], b: readonly number[], to = 1e-9) => {
  const most = Math.max(1e-9, ...b.map(Math.abs))
  for (const [k, x] of a.entries()) expect(Math.abs(x - b[k]!) / most).toBeLessThan(to)
}
const SEEDS = Array.from({ length: 40 }, (_, k) => k + 1)

describe('a stack of plies', () => {
  it('is flat when it is the same from both faces', () => {
    for (const seed of SEEDS) {
      const half = madeStack(seed)
      const { curvature, strain } = shapeOf(laminate(laid([...half, ...[...half].reverse()], -5)))
      for (const c of curvature) expect(Math.abs(c)).toBeLessThan(1e-12)
      expect(Math.max(...strain.map(Math.abs))).toBeGreaterThan(1e-6)
    }
  })

  it('bends the other way when it is turned over', () => {
    for (const seed of SEEDS) {
      const made = madeStack(seed)
      const up = shapeOf(laminate(laid(made))).curvature
      const down = shapeOf(laminate(laid([...made].reverse()))).curvature
      close(
        down,
        up.map(c => -c)
      )
    }
  })

  it('bends alike from whatever plane heights are counted', () => {
    for (const seed of SEEDS) {
      const a = shapeOf(laminate(laid(madeStack(seed), 0)))
      const b = shapeOf(laminate(laid(madeStack(seed), 37)))
      close(b.curvature, a.curvature, 1e-7)
      close(
        b.strain,
        a.strain.map((e, k) => e - 37 * a.curvature[k]!),
        1e-6
      )
    }
  })

  it('turns with its axes: the curvature is a tensor', () => {
    for (const seed of SEEDS) {
      const turn = 7 * seed
      const [x, y, xy] = shapeOf(laminate(laid(madeStack(seed)))).curvature
      const a = (turn * Math.PI) / 180
      const [c, s] = [Math.cos(a), Math.sin(a)]
      close(
        shapeOf(laminate(laid(madeStack(seed), 0, turn))).curvature,
        [
          x * c * c + y * s * s - xy * s * c,
          x * s * s + y * c * c + xy * s * c,
          2 * (x - y) * s * c + xy * (c * c - s * s)
        ],
        1e-7
      )
    }
  })

  it('adds what its plies do one by one, and twice as much does twice as much', () => {
    for (const seed of SEEDS) {
      const made = madeStack(seed)
      const whole = shapeOf(laminate(laid(made))).curvature
      const one = made.map(
        (_, k) =>
          shapeOf(laminate(laid(made.map((m, i) => (i === k ? m : { ...m, along: 0, across: 0 }))))).curvature
      )
      close(
        [0, 1, 2].map(k => one.reduce((sum, c) => sum + c[k]!, 0)),
        whole
      )
      close(
        shapeOf(laminate(laid(made, 0, 0, 2))).curvature,
        whole.map(c => 2 * c)
      )
    }
  })

  it('is in balance: the stresses of its plies sum to no force and no moment', () => {
    for (const seed of SEEDS) {
      const layers = laid(madeStack(seed), -10)
      const shape = shapeOf(laminate(layers))
      const force = [0, 0, 0]
      const moment = [0, 0, 0]
      let most = 0
      for (const layer of layers) {
        const t = layer.highMm - layer.lowMm
        // Linear through the ply: Simpson's rule is exact for force and moment.
        for (const [part, weight] of [
          [0, 1 / 6],
          [0.5, 4 / 6],
          [1, 1 / 6]
        ] as const) {
          const z = layer.lowMm + part * t
          stressMPa(layer, shape, z).forEach((s, k) => {
            force[k]! += weight * t * s
            moment[k]! += weight * t * s * z
            most = Math.max(most, Math.abs(s))
          })
        }
      }
      for (const k of [0, 1, 2]) {
        expect(Math.abs(force[k]!)).toBeLessThan(1e-9 * most * 100)
        expect(Math.abs(moment[k]!)).toBeLessThan(1e-9 * most * 1000)
      }
    }
  })

  it('of plies alike in all directions with one ν is a two-way Timoshenko strip', () => {
    // Stiffness of all plies grows by 1/(1 − ν) two ways, so the closed form of the narrow strip holds.
    const of = (nu: number) =>
      shapeOf(
        laminate([
          { lowMm: 0, highMm: 20, stiffness: stiffnessAt(isotropic(900, nu), 0), free: [0, 0, 0] },
          { lowMm: 20, highMm: 23, stiffness: stiffnessAt(isotropic(2900, nu), 0), free: [-0.003, -0.003, 0] }
        ])
      ).curvature
    expect(of(0.35)[0]).toBeCloseTo(of(0)[0], 12)
    expect(of(0.35)[1]).toBeCloseTo(of(0.35)[0], 12)
    expect(of(0.35)[2]).toBe(0)
  })

  it('that one ply joins while it is bent pulls nothing until something changes', () => {
    const ply = (lowMm: number, e: number) => ({
      lowMm,
      highMm: lowMm + 10,
      stiffness: stiffnessAt(isotropic(e, 0.3), 0)
    })
    const first = [
      { ...ply(0, 900), free: [0, 0, 0] as const },
      { ...ply(10, 2900), free: [-0.002, -0.002, 0] as const }
    ]
    const bent = shapeOf(laminate(first))
    const joined = { ...ply(20, 2500), free: [0, 0, 0] as const, joined: bent }
    const after = shapeOf(laminate([...first, joined]))
    close(after.curvature, bent.curvature)
    for (const s of stressMPa(joined, after, 25)) expect(Math.abs(s)).toBeLessThan(1e-9)
    // Planing the lower ply off frees the stretched upper one.
    expect(Math.abs(shapeOf(laminate(first.slice(1))).curvature[0])).toBeLessThan(1e-15)
  })

  it('held flat shrinks without bending, and locks in what bends it when it is let go', () => {
    const layers = laid(madeStack(3))
    const held = shapeOf(laminate(layers), 'flat')
    expect(held.curvature).toEqual([0, 0, 0])
    const force = layers.reduce(
      (sum, l) => sum + (l.highMm - l.lowMm) * stressMPa(l, held, (l.lowMm + l.highMm) / 2)[0],
      0
    )
    expect(Math.abs(force)).toBeLessThan(1e-6)
  })

  it('side by side with itself is itself, and mixes stiffness by width', () => {
    const layers = laid(madeStack(5))
    const both = laminate([0.3, 0.7].flatMap(share => layers.map(l => ({ ...l, share }))))
    close(shapeOf(both).curvature, shapeOf(laminate(layers)).curvature)
    const solid = (e: number, share: number): Layer => ({
      lowMm: -10,
      highMm: 10,
      stiffness: stiffnessAt(isotropic(e, 0), 0),
      free: [0, 0, 0],
      share
    })
    const mixed = laminate([solid(1000, 0.25), solid(3000, 0.75)])
    // E·t³/12 of the mixed modulus 2500 MPa.
    expect(bendingNmm(mixed)[0]).toBeCloseTo((2500 * 20 ** 3) / 12, 3)
    expect(bendingNmm(mixed)[1]).toBeCloseTo((2500 * 20 ** 3) / 12, 3)
    expect(() => laminate([solid(1000, 1.2)])).toThrow('share of the width is 1.2; allowed 0 to 1')
  })

  it('of an orthotropic ply bends as a beam of its modulus along and across', () => {
    const q = stiffnessAt({ e1MPa: 12_000, e2MPa: 800, g12MPa: 700, nu12: 0.4 }, 0)
    const plate = laminate([{ lowMm: 3, highMm: 33, stiffness: q, free: [0, 0, 0] }])
    expect(bendingNmm(plate)[0] / ((12_000 * 30 ** 3) / 12)).toBeCloseTo(1, 6)
    expect(bendingNmm(plate)[1] / ((800 * 30 ** 3) / 12)).toBeCloseTo(1, 6)
  })

  it('says what is wrong with a ply', () => {
    expect(() => stiffnessAt(isotropic(900, 0.6), 0)).toThrow('Poisson’s ratio is 0.6; allowed -0.99 to 0.5')
    expect(() => stiffnessAt({ e1MPa: 1000, e2MPa: 4000, g12MPa: 500, nu12: 0.6 }, 0)).toThrow('ν12 is 0.6')
    expect(() => shapeOf(laminate([]))).toThrow('no stiffness')
    const q = stiffnessAt(isotropic(900, 0.3), 0)
    expect(() => laminate([{ lowMm: 3, highMm: 2, stiffness: q, free: [0, 0, 0] }])).toThrow('upper face')
  })
})

describe('a layered cross-section by finite elements', () => {
  const cases: readonly (readonly [what: string, layers: readonly Grown[]])[] = [
    [
      'timber under resin that shrinks',
      [
        { thicknessMm: 20, modulusMPa: 900, poisson: 0.3, strain: 0 },
        { thicknessMm: 6, modulusMPa: 2900, poisson: 0.3, strain: -0.003 }
      ]
    ],
    [
      'a resin core that shrinks off its middle',
      [
        { thicknessMm: 5, modulusMPa: 1200, poisson: 0.3, strain: 0.001 },
        { thicknessMm: 12, modulusMPa: 2900, poisson: 0.3, strain: -0.002 },
        { thicknessMm: 9, modulusMPa: 700, poisson: 0.3, strain: 0 }
      ]
    ],
    [
      'two pours, one after the other',
      [
        { thicknessMm: 14, modulusMPa: 2900, poisson: 0.35, strain: -0.001 },
        { thicknessMm: 16, modulusMPa: 2900, poisson: 0.35, strain: -0.003 }
      ]
    ]
  ]
  for (const [what, layers] of cases)
    it(`${what}: bends as the plate does, within half a per cent`, () => {
      let z = 0
      const plate = laminate(
        layers.map(l => {
          z += l.thicknessMm
          return {
            lowMm: z - l.thicknessMm,
            highMm: z,
            stiffness: stiffnessAt(isotropic(l.modulusMPa, l.poisson), 0),
            free: [l.strain, l.strain, 0]
          }
        })
      )
      const ours = shapeOf(plate).curvature[0]
      // Its ends are free of stress, which the plate is not: twelve thicknesses long, looked at in the middle half.
      const theirs = stripCurvaturePerMm(layers, 12 * z, 48)
      expect(Math.abs(theirs / ours - 1)).toBeLessThan(0.005)
    })

  it('one layer that grows stays straight', () => {
    const layer = { thicknessMm: 20, modulusMPa: 900, poisson: 0.3, strain: 0.004 }
    expect(Math.abs(stripCurvaturePerMm([layer], 200, 20))).toBeLessThan(1e-12)
  })
})

describe('the bow of a strip', () => {
  it('is κ·L²/8 of one stretch, and of the same stretch in pieces', () => {
    expect(bowMm([2e-5], [400])).toBeCloseTo((2e-5 * 400 ** 2) / 8, 12)
    expect(bowMm([2e-5, 2e-5, 2e-5], [100, 50, 250])).toBeCloseTo(0.4, 10)
    expect(bowMm([-2e-5], [400])).toBeCloseTo(-0.4, 12)
  })

  it('of a bend in the middle alone is θ·(L/4 − d/8)', () => {
    const [k, d, l] = [1e-4, 80, 440]
    expect(bowMm([0, k, 0], [180, d, 180])).toBeCloseTo(k * d * (l / 4 - d / 8), 10)
  })

  it('agrees with heights summed step by step', () => {
    for (const seed of SEEDS) {
      const { span } = chance(seed)
      const [k, l] = [0, 1].map(i =>
        Array.from({ length: 6 }, () => (i === 0 ? span(-1e-4, 1e-4) : span(1, 90)))
      )
      let [w, slope] = [0, 0]
      const heights: number[] = [0]
      const PARTS = 4000
      k!.forEach((c, i) => {
        const dx = l![i]! / PARTS
        for (let p = 0; p < PARTS; p++) {
          w += slope * dx - (c * dx * dx) / 2
          slope -= c * dx
          heights.push(w)
        }
      })
      const total = l!.reduce((a, b) => a + b, 0)
      let worst = 0
      let x = 0
      heights.forEach((h, i) => {
        const off = h - (w * x) / total
        if (Math.abs(off) > Math.abs(worst)) worst = off
        x += l![Math.min(5, Math.floor(i / PARTS))]! / PARTS
      })
      expect(bowMm(k!, l!)).toBeCloseTo(worst, 4)
    }
  })

  it('refuses lists that do not match', () => {
    expect(() => bowMm([1e-5], [10, 20])).toThrow('1 curvatures and 2 lengths')
    expect(bowMm([], [])).toBe(0)
  })
})

describe('linear equations', () => {
  it('give back their right side', () => {
    for (const seed of SEEDS) {
      const { span } = chance(seed)
      const m = Array.from({ length: 36 }, () => span(-1, 1))
      const right = Array.from({ length: 6 }, () => span(-1, 1))
      const x = solved(m, right)
      right.forEach((r, i) => {
        expect(x.reduce((sum, v, k) => sum + v * m[6 * i + k]!, 0)).toBeCloseTo(r, 8)
      })
    }
    expect(() => solved([1, 2, 2, 4], [1, 2])).toThrow(RangeError)
  })
})
