import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  coefficientAtRingAnglePerPct,
  coefficientFromShrinkagePerPct,
  crossGrainMovement,
  longitudinalMovement,
  moistureChangeForMovementPct,
  movementByCoefficientMm,
  movementByShrinkageMm,
  RING_ANGLE_DEG,
  shrinkageFromCoefficientPct,
  shrinkageToMoisturePct
} from '../../src/timber/movement.ts'
import { COEFFICIENT_TABLE } from './coefficient-table.ts'

const seeded = { seed: 20260102, numRuns: 300 }
const shrinkage = fc.double({ min: 0.5, max: 15, noNaN: true })
const moisture = fc.double({ min: 0, max: 30, noNaN: true })

describe('movement across the grain', () => {
  // Elm slab 900 mm wide, C 0.00338, core 4 % too wet: 12 mm wanted. Scales 12 mm to the middle, 0.0025, 5 %:
  // 0.15 mm.
  it('gives what makers met: 12 mm in a wide elm top, 0.15 mm of step at a handle scale', () => {
    expect(movementByCoefficientMm(900, 0.00338, 12, 8)).toBeCloseTo(-12.168, 3)
    expect(movementByCoefficientMm(12, 0.0025, 7, 12)).toBeCloseTo(0.15, 10)
  })

  // 1.6 mm on a 1220 mm slab at 0.003 per %.
  it('turns a measured growth into the change of moisture behind it', () => {
    expect(moistureChangeForMovementPct(1220, 1.6, 0.003)).toBeCloseTo(0.437, 3)
  })

  // Definition of total shrinkage: green length L shrinks to L·(1 − S·(n − M)/n/100) at moisture M.
  it('by total shrinkage equals the two lengths of a board that shrinks in proportion below fibre saturation', () => {
    fc.assert(
      fc.property(shrinkage, moisture, moisture, (s, from, to) => {
        const length = (m: number): number => 1000 * (1 - (s / 100) * ((30 - m) / 30))
        const ours = movementByShrinkageMm(length(from), s, from, to)
        expect(ours).toBeCloseTo(length(to) - length(from), 8)
      }),
      seeded
    )
  })

  it('goes back to where it came from, by shrinkage, when the moisture does', () => {
    fc.assert(
      fc.property(shrinkage, moisture, moisture, (s, a, b) => {
        const grown = 500 + movementByShrinkageMm(500, s, a, b)
        expect(grown + movementByShrinkageMm(grown, s, b, a)).toBeCloseTo(500, 8)
      }),
      seeded
    )
  })

  it('stops at the start of shrinkage: 30 %, or 22 % for the species that have it', () => {
    expect(movementByShrinkageMm(100, 8, 30, 60)).toBe(0)
    expect(movementByShrinkageMm(100, 5, 22, 30, 22)).toBe(0)
    expect(movementByShrinkageMm(100, 5, 40, 10, 22)).toBe(movementByShrinkageMm(100, 5, 22, 10, 22))
  })

  // Wood Handbook eq. 13-3 with M_I = 10 % is the coefficient by definition of the link.
  it('has one value by coefficient and by shrinkage when it starts at 10 %, and nearly one within the table', () => {
    for (const [name, , tangential, , , start] of COEFFICIENT_TABLE) {
      const c = coefficientFromShrinkagePerPct(tangential, start)
      expect(movementByCoefficientMm(100, c, 10, 12), name).toBeCloseTo(
        movementByShrinkageMm(100, tangential, 10, 12, start),
        12
      )
      const ratio =
        movementByCoefficientMm(100, c, 6, 14) / movementByShrinkageMm(100, tangential, 6, 14, start)
      expect(Math.abs(ratio - 1), name).toBeLessThan(0.02)
    }
  })

  it('links shrinkage and coefficient both ways', () => {
    fc.assert(
      fc.property(shrinkage, fc.constantFrom(22, 30), (s, n) => {
        expect(shrinkageFromCoefficientPct(coefficientFromShrinkagePerPct(s, n), n)).toBeCloseTo(s, 10)
      }),
      seeded
    )
  })

  // The handbook rounds C to five decimals: 5e-6, and a little for tables worked out from unrounded
  // shrinkage.
  it('reproduces the listed coefficients of 59 species from their shrinkage to the last printed digit', () => {
    expect(COEFFICIENT_TABLE).toHaveLength(59)
    for (const [name, sR, sT, cR, cT, start] of COEFFICIENT_TABLE) {
      expect(Math.abs(coefficientFromShrinkagePerPct(sR, start) - cR), name).toBeLessThan(7e-6)
      expect(Math.abs(coefficientFromShrinkagePerPct(sT, start) - cT), name).toBeLessThan(7e-6)
    }
  })

  it('with the wrong start of shrinkage misses the 22 % species by far, so the footnote matters', () => {
    for (const [name, sR, , cR, , start] of COEFFICIENT_TABLE) {
      if (start === 22) expect(cR / coefficientFromShrinkagePerPct(sR, 30), name).toBeGreaterThan(1.3)
    }
  })

  it('keeps to the table between 6 and 14 %, and says when it leaves it', () => {
    const board = { dimensionMm: 200, coefficientPerPct: 0.00274 }
    const inside = crossGrainMovement({ ...board, fromPct: 8, toPct: 12 })
    expect(inside.beyondTable).toBe(false)
    expect(inside.centralMm).toBeCloseTo(2.192, 10)
    expect(inside.lowMm).toBeCloseTo(2.192 * 0.75, 10)
    expect(inside.highMm).toBeCloseTo(2.192 * 1.25, 10)
    const drying = crossGrainMovement({ ...board, fromPct: 20, toPct: 8 })
    expect(drying.beyondTable).toBe(true)
    expect(drying.lowMm).toBeLessThan(drying.centralMm)
    expect(drying.highMm).toBeGreaterThan(drying.centralMm)
    expect(drying.highMm).toBeLessThan(0)
  })
})

describe('ring angle', () => {
  // Independent: rotate the strain tensor diag(C_R, C_T) and take the component along the face.
  it('equals the component of the rotated strain tensor along the face', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 90, noNaN: true }), deg => {
        const cR = 0.0019
        const cT = 0.00274
        const across: [number, number] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)]
        const strain = across[0] * cR * across[0] + across[1] * cT * across[1]
        expect(coefficientAtRingAnglePerPct(cR, cT, deg)).toBeCloseTo(strain, 15)
      }),
      seeded
    )
  })

  it('is radial when quartersawn, tangential when flat-sawn and their mean at 45°', () => {
    expect(coefficientAtRingAnglePerPct(0.001, 0.003, RING_ANGLE_DEG.quarter)).toBe(0.001)
    expect(coefficientAtRingAnglePerPct(0.001, 0.003, RING_ANGLE_DEG.flat)).toBe(0.003)
    expect(coefficientAtRingAnglePerPct(0.001, 0.003, RING_ANGLE_DEG.rift)).toBeCloseTo(0.002, 15)
  })
})

describe('along the grain', () => {
  it('moves twenty to sixty times less than across it', () => {
    const along = longitudinalMovement(1000, 8, 12)
    expect(along.centralMm).toBeCloseTo(0.2, 12)
    expect(along.lowMm).toBeGreaterThan(0.13)
    expect(along.highMm).toBeLessThan(0.27)
    expect(along.centralMm * 20).toBeLessThan(movementByCoefficientMm(1000, 0.00274, 8, 12))
  })
})

describe('shrinkage to a moisture', () => {
  it('is the whole at 0 %, nothing at the start, and straight between', () => {
    expect(shrinkageToMoisturePct(7.8, 0)).toBe(7.8)
    expect(shrinkageToMoisturePct(7.8, 15)).toBeCloseTo(3.9, 12)
    expect(shrinkageToMoisturePct(7.8, 45)).toBe(0)
  })
})

describe('at the door', () => {
  it('refuses numbers that no timber has, with the allowed range', () => {
    expect(() => movementByCoefficientMm(100, 0.25, 8, 12)).toThrow(
      /coefficient of movement is 0\.25 per %; allowed 0 to 0\.01/
    )
    expect(() => movementByShrinkageMm(100, 60, 8, 12)).toThrow(/total shrinkage is 60 %/)
    expect(() => coefficientAtRingAnglePerPct(0.001, 0.002, 91)).toThrow(/ring angle/)
    expect(() =>
      crossGrainMovement({ dimensionMm: Number.NaN, coefficientPerPct: 0.002, fromPct: 8, toPct: 9 })
    ).toThrow(/NaN/)
  })
})
