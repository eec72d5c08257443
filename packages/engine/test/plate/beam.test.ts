import { describe, expect, it } from 'vitest'
import type { BeamStretch } from '../../src/plate/beam.ts'
import { beamSag } from '../../src/plate/beam.ts'
import { tippingMass } from '../../src/plate/tip.ts'
import { chance } from '../stack/random.ts'

const EI = 3e9
const even = (length: number, parts = 1, q = 0.2): BeamStretch[] =>
  Array.from({ length: parts }, () => ({ lengthMm: length / parts, stiffnessNmm2: EI, loadNPerMm: q }))

/** A slow twin: forces step by step, then heights by summing the curvature twice. */
function stepped(stretches: readonly BeamStretch[], [a, b]: readonly [number, number], n: number) {
  const length = stretches.reduce((sum, s) => sum + s.lengthMm, 0)
  const dx = length / n
  const of = (x: number) => {
    let end = 0
    for (const s of stretches) {
      end += s.lengthMm
      if (x < end) return s
    }
    return stretches[stretches.length - 1]!
  }
  const loads = Array.from({ length: n }, (_, i) => of((i + 0.5) * dx).loadNPerMm * dx)
  const right = loads.reduce((sum, f, i) => sum + f * ((i + 0.5) * dx - a), 0) / (b - a)
  const left = loads.reduce((sum, f) => sum + f, 0) - right
  const moment = (x: number) =>
    (x > a ? left * (x - a) : 0) +
    (x > b ? right * (x - b) : 0) -
    loads.reduce((sum, f, i) => sum + ((i + 0.5) * dx < x ? f * (x - (i + 0.5) * dx) : 0), 0)
  const w = [0]
  let [height, slope] = [0, 0]
  for (let i = 0; i < n; i++) {
    const x = (i + 0.5) * dx
    const k = moment(x) / of(x).stiffnessNmm2
    height += slope * dx + (k * dx * dx) / 2
    slope += k * dx
    w.push(height)
  }
  const at = (x: number) => {
    const i = Math.min(n - 1, Math.floor(x / dx))
    return w[i]! + (w[i + 1]! - w[i]!) * (x / dx - i)
  }
  const down = (x: number) => at(a) + ((at(b) - at(a)) * (x - a)) / (b - a) - at(x)
  let between = Number.NEGATIVE_INFINITY
  for (let x = a; x <= b; x += dx) between = Math.max(between, down(x))
  return { betweenMm: between, startMm: down(0), endMm: down(length) }
}

describe('a beam on two supports', () => {
  it('sags by 5·q·L⁴/(384·E·I) between its ends', () => {
    const sag = beamSag(even(900, 6), [0, 900])
    expect(sag.betweenMm).toBeCloseTo((5 * 0.2 * 900 ** 4) / (384 * EI), 9)
    expect(Math.abs(sag.startMm)).toBeLessThan(1e-9)
  })

  it('of which an end hangs over sags there by the closed form', () => {
    const [l, c] = [600, 350]
    const form = (0.2 * c * (4 * c * c * l + 3 * c ** 3 - l ** 3)) / (24 * EI)
    expect(beamSag(even(l + c), [0, l]).endMm).toBeCloseTo(form, 9)
    expect(beamSag(even(l + c), [c, l + c]).startMm).toBeCloseTo(form, 9)
    // A short overhang comes up.
    expect(beamSag(even(700), [0, 600]).endMm).toBeLessThan(0)
  })

  it('sags alike in the middle and at its ends when they hang over by 0.2232 of it', () => {
    const sag = beamSag(even(1000, 2), [223.15, 776.85])
    expect(sag.betweenMm).toBeCloseTo(sag.endMm, 4)
    expect(sag.startMm).toBeCloseTo(sag.endMm, 9)
  })

  it('agrees with a slow twin when stiffness and load change', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const { span } = chance(seed)
      const parts = Array.from({ length: 5 }, () => ({
        lengthMm: span(60, 260),
        stiffnessNmm2: span(0.3, 6) * 1e9,
        loadNPerMm: span(0, 0.5)
      }))
      const length = parts.reduce((sum, s) => sum + s.lengthMm, 0)
      const supports = [span(0, 0.3) * length, span(0.6, 1) * length] as const
      const [ours, theirs] = [beamSag(parts, supports), stepped(parts, supports, 1500)]
      const most = Math.max(...Object.values(theirs).map(Math.abs))
      for (const key of ['betweenMm', 'startMm', 'endMm'] as const)
        expect(Math.abs(ours[key] - theirs[key]) / most, `${seed} ${key}`).toBeLessThan(0.01)
    }
  })

  it('says what is wrong with its supports', () => {
    expect(() => beamSag(even(500), [0, 600])).toThrow('second support is 600 mm; allowed 5 to 500 mm')
    expect(() => beamSag(even(500), [250, 251])).toThrow('second support')
  })
})

describe('a plate that tips', () => {
  const edge = [
    [-500, -300],
    [500, -300],
    [500, 300],
    [-500, 300]
  ] as const
  const rails = (half: number) =>
    [
      [-half, -300],
      [-half, 300],
      [half, -300],
      [half, 300]
    ] as const

  it('on two rails does so at the moment of its mass over the overhang', () => {
    expect(tippingMass(10, [0, 0], rails(300), edge)).toBeCloseTo(15, 9)
    expect(tippingMass(10, [100, 0], rails(300), edge)).toBeCloseTo(10, 9)
    expect(tippingMass(10, [300, 0], rails(300), edge)).toBe(0)
    expect(tippingMass(10, [400, 0], rails(300), edge)).toBe(0)
    expect(tippingMass(10, [0, 0], rails(500), edge)).toBe(Number.POSITIVE_INFINITY)
  })

  it('on three legs does so over the side that stands nearest', () => {
    const legs = [
      [-400, -200],
      [400, -200],
      [0, 250]
    ] as const
    // Over the slanting side: from the middle in 166.4 mm, out to the corner 367.0 mm (worked by hand).
    const long = Math.hypot(400, 450)
    const [inside, out] = [(250 * 400) / long, (450 * 500 + 400 * 300 - 250 * 400) / long]
    expect(tippingMass(12, [0, 0], legs, edge)).toBeCloseTo((12 * inside) / out, 9)
  })

  it('refuses supports on one line', () => {
    expect(() =>
      tippingMass(
        10,
        [0, 0],
        [
          [0, 0],
          [1, 1],
          [2, 2]
        ],
        edge
      )
    ).toThrow('on one line')
  })
})
