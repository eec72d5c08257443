import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type BaseBoard,
  baseLoadNPerM2,
  bearerSpacingForSagMm,
  bearersForSag,
  framedSagMm,
  sagCoefficient,
  sagMm
} from '../../src/mould/sag.ts'

const board: BaseBoard = { thicknessMm: 18, modulusGPa: 2.5, loadNPerM2: 510 }

/**
 * The slow obvious twin: cubic beam elements over all spans, dense elimination. Unit load, unit stiffness,
 * unit span: the largest deflection at a node is k. Nodal values of these elements are exact under an even
 * load.
 */
function beamElements(spans: number, perSpan: number): number {
  const nodes = spans * perSpan + 1
  const size = 2 * nodes
  const h = 1 / perSpan
  const a = Array.from({ length: size }, () => new Float64Array(size + 1))
  const stiffness = [
    [12, 6 * h, -12, 6 * h],
    [6 * h, 4 * h * h, -6 * h, 2 * h * h],
    [-12, -6 * h, 12, -6 * h],
    [6 * h, 2 * h * h, -6 * h, 4 * h * h]
  ]
  const load = [h / 2, (h * h) / 12, h / 2, -(h * h) / 12]
  for (let e = 0; e < nodes - 1; e++) {
    for (let i = 0; i < 4; i++) {
      for (let j = 0; j < 4; j++) a[2 * e + i]![2 * e + j]! += stiffness[i]![j]! / h ** 3
      a[2 * e + i]![size]! += load[i]!
    }
  }
  for (let s = 0; s <= spans; s++) {
    const row = a[2 * s * perSpan]!
    row.fill(0)
    row[2 * s * perSpan] = 1
  }
  for (let c = 0; c < size; c++) {
    let pivot = c
    for (let r = c + 1; r < size; r++) if (Math.abs(a[r]![c]!) > Math.abs(a[pivot]![c]!)) pivot = r
    ;[a[c], a[pivot]] = [a[pivot]!, a[c]!]
    for (let r = c + 1; r < size; r++) {
      const factor = a[r]![c]! / a[c]![c]!
      if (factor !== 0) for (let k = c; k <= size; k++) a[r]![k]! -= factor * a[c]![k]!
    }
  }
  const x = new Float64Array(size)
  for (let r = size - 1; r >= 0; r--) {
    let sum = a[r]![size]!
    for (let k = r + 1; k < size; k++) sum -= a[r]![k]! * x[k]!
    x[r] = sum / a[r]![r]!
  }
  let worst = 0
  for (let n = 0; n < nodes; n++) worst = Math.max(worst, x[2 * n]!)
  return worst
}

describe('sag between bearers', () => {
  // The verdict a plan must give: 18 mm board, E 2.5 GPa, 510 N/m². One simply supported span; L⁴ between the
  // two.
  it('of a board 1.2 m between bearers is about 11 mm, and 0.14 mm at 0.4 m', () => {
    expect(sagMm(board, 1200)).toBeCloseTo(11.33, 2)
    expect(sagMm(board, 400)).toBeCloseTo(0.14, 2)
    expect(sagMm(board, 1200) / sagMm(board, 400)).toBeCloseTo(81, 9)
  })

  it('loads the base with the weight of the resin and, when asked, of the board', () => {
    expect(baseLoadNPerM2(45, 1100)).toBeCloseTo(485.4, 1)
    const own = baseLoadNPerM2(45, 1100, { thicknessMm: 18, densityKgM3: 720 }) - baseLoadNPerM2(45, 1100)
    expect(own).toBeCloseTo(0.018 * 720 * 9.80665, 9)
  })

  it('agrees with beam elements over one to six spans', () => {
    for (let spans = 1; spans <= 6; spans++) {
      const theirs = beamElements(spans, 20)
      // Between two nodes 1/20 of a span apart the peak is missed by at most a few parts in a thousand.
      expect(sagCoefficient(spans), `${spans} spans`).toBeGreaterThanOrEqual(theirs - 1e-9)
      expect(sagCoefficient(spans) / theirs, `${spans} spans`).toBeLessThan(1.003)
    }
  })

  it('is least with two spans, where the propped end carries most, and settles for many', () => {
    expect(sagCoefficient(2)).toBeLessThan(sagCoefficient(4))
    expect(sagCoefficient(4)).toBeLessThan(sagCoefficient(3))
    expect(sagCoefficient(3)).toBeLessThan(sagCoefficient(1) * 0.53)
    expect(sagCoefficient(40)).toBeCloseTo(sagCoefficient(200), 9)
  })

  it('scales with load, stiffness, thickness and creep as a beam does', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 100, max: 1500, noNaN: true }),
        fc.double({ min: 3, max: 40, noNaN: true }),
        fc.integer({ min: 1, max: 9 }),
        (spacing, thickness, spans) => {
          const one: BaseBoard = { thicknessMm: thickness, modulusGPa: 3, loadNPerM2: 400 }
          const w = sagMm(one, spacing, spans)
          const near = (other: BaseBoard, factor: number): void =>
            expect(sagMm(other, spacing, spans) / w).toBeCloseTo(factor, 9)
          near({ ...one, loadNPerM2: 800 }, 2)
          near({ ...one, modulusGPa: 6 }, 0.5)
          near({ ...one, thicknessMm: thickness * 2 }, 1 / 8)
          near({ ...one, creepFactor: 0.6 }, 1.6)
        }
      ),
      { seed: 20260108, numRuns: 100 }
    )
  })
})

describe('bearers', () => {
  it('stand as far apart as the sag allows, to the last digit', () => {
    for (const spans of [1, 2, 3, 7]) {
      expect(sagMm(board, bearerSpacingForSagMm(board, 0.2, spans), spans)).toBeCloseTo(0.2, 12)
    }
  })

  it('are as few as keep the sag, and one fewer would not', () => {
    for (const continuous of [false, true]) {
      const found = bearersForSag(board, 1800, 0.2, continuous)
      const spans = found.bearers - 1
      expect(found.sagMm).toBeLessThanOrEqual(0.2)
      expect(found.spacingMm * spans).toBeCloseTo(1800, 9)
      expect(sagMm(board, 1800 / (spans - 1), continuous ? spans - 1 : 1)).toBeGreaterThan(0.2)
    }
    expect(bearersForSag(board, 1800, 0.2, true).bearers).toBeLessThanOrEqual(
      bearersForSag(board, 1800, 0.2).bearers
    )
  })
})

describe('a base carried all round', () => {
  it('sags as the strip between bearers when long, less by 1 − ν² as its sides are held', () => {
    const strip = sagMm(board, 400) * (1 - 0.3 ** 2)
    expect(framedSagMm(board, 400, 4000) / strip).toBeCloseTo(1, 3)
    expect(framedSagMm(board, 400, 400)).toBeLessThan(0.35 * strip)
    expect(framedSagMm(board, 400, 700)).toBeCloseTo(framedSagMm(board, 700, 400), 12)
  })
})

describe('at the door', () => {
  it('refuses boards and spans that cannot be', () => {
    expect(() => sagMm({ ...board, modulusGPa: 2500 }, 400)).toThrow(/modulus of the board is 2500 GPa/)
    expect(() => sagMm(board, 0)).toThrow(/distance between bearers/)
    expect(() => sagCoefficient(1.5)).toThrow(/whole number/)
    expect(() => bearersForSag({ ...board, thicknessMm: 1, loadNPerM2: 1e5 }, 10_000, 0.001)).toThrow(
      /even on 201/
    )
    expect(() => baseLoadNPerM2(Number.NaN, 1100)).toThrow(/NaN/)
  })
})
