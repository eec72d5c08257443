import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  cornersFromHeights,
  cornersFromTilt,
  type LevelReading,
  levelFromReadings
} from '../../src/mould/level.ts'

const seeded = { seed: 20260110, numRuns: 200 }
const height = fc.double({ min: -5, max: 5, noNaN: true })

describe('level from corners', () => {
  it('gives back a tilt that was put in, without twist', () => {
    fc.assert(
      fc.property(height, height, (a, b) => {
        const level = levelFromReadings(cornersFromTilt(600, 400, a, b))
        expect(level.tiltXMmPerM).toBeCloseTo(a, 9)
        expect(level.tiltYMmPerM).toBeCloseTo(b, 9)
        expect(level.twistMm).toBeLessThan(1e-9)
        expect(level.wedgeMm).toBeCloseTo(Math.abs(a * 0.6) + Math.abs(b * 0.4), 9)
      }),
      seeded
    )
  })

  // Bilinear algebra of a rectangle: the four residuals are alike but for their sign.
  it('finds the twist of a rectangle as half the difference of its diagonals', () => {
    fc.assert(
      fc.property(height, height, height, height, (a, b, c, d) => {
        const level = levelFromReadings(cornersFromHeights(600, 400, [a, b, c, d]))
        const quarter = (a - b + c - d) / 4
        ;[quarter, -quarter, quarter, -quarter].forEach((r, i) => {
          expect(level.residualsMm[i]).toBeCloseTo(r, 9)
        })
        expect(level.twistMm).toBeCloseTo(Math.abs(2 * quarter), 9)
      }),
      seeded
    )
  })

  it('is a plane through three corners, exactly', () => {
    const three = cornersFromHeights(600, 400, [1, 2, 0.5, 9]).slice(0, 3)
    expect(levelFromReadings(three).twistMm).toBeLessThan(1e-12)
  })

  // Independent: no other plane leaves a smaller sum of squares.
  it('leaves less than any other plane does', () => {
    const places: LevelReading[] = [0, 1, 2, 3, 4, 5, 6].map(i => ({
      xMm: 150 * i,
      yMm: (i * 277) % 500,
      heightMm: ((i * 37) % 11) / 5
    }))
    const level = levelFromReadings(places)
    const squares = (da: number, db: number, dc: number): number =>
      places.reduce((sum, p, i) => sum + (level.residualsMm[i]! - dc - da * p.xMm - db * p.yMm) ** 2, 0)
    for (const [da, db, dc] of [
      [1e-4, 0, 0],
      [-1e-4, 0, 0],
      [0, 1e-4, 0],
      [0, -1e-4, 0],
      [0, 0, 0.01],
      [0, 0, -0.01]
    ] as const) {
      expect(squares(da, db, dc)).toBeGreaterThan(squares(0, 0, 0))
    }
  })

  it('does not depend on where the datum or the origin lie, nor on the order of the readings', () => {
    const readings = cornersFromHeights(600, 400, [0.3, 1.1, 0.2, -0.4])
    const moved = readings.map(r => ({ xMm: r.xMm - 3000, yMm: r.yMm + 900, heightMm: r.heightMm + 20 }))
    const one = levelFromReadings(readings)
    const other = levelFromReadings([...moved].reverse())
    expect(other.wedgeMm).toBeCloseTo(one.wedgeMm, 9)
    expect(other.twistMm).toBeCloseTo(one.twistMm, 9)
    expect([...other.shimsMm].reverse()).toEqual(one.shimsMm.map(s => expect.closeTo(s, 9)))
  })
})

describe('what it costs', () => {
  it('is levelled by its shims: all corners high alike', () => {
    fc.assert(
      fc.property(height, height, height, height, (a, b, c, d) => {
        const heights = [a, b, c, d] as const
        const level = levelFromReadings(cornersFromHeights(600, 400, heights))
        const after = heights.map((z, i) => z + level.shimsMm[i]!) as [number, number, number, number]
        const again = levelFromReadings(cornersFromHeights(600, 400, after))
        expect(again.flatteningMm).toBeLessThan(1e-9)
        expect(Math.min(...level.shimsMm)).toBe(0)
        const turned = heights.map((z, i) => z + level.stiffShimsMm[i]!) as [number, number, number, number]
        const stiff = levelFromReadings(cornersFromHeights(600, 400, turned))
        expect(stiff.wedgeMm).toBeLessThan(1e-9)
        expect(stiff.twistMm).toBeCloseTo(level.twistMm, 9)
      }),
      seeded
    )
  })

  it('planes off everything between the highest and the lowest corner', () => {
    const level = levelFromReadings(cornersFromHeights(600, 400, [0, 0.4, 0.3, 0]))
    expect(level.flatteningMm).toBeCloseTo(0.4, 12)
    expect(level.thinnerMm).toBeCloseTo(0.4 - 0.175, 12)
    expect(level.thinnerMm + level.thickerMm).toBeCloseTo(level.flatteningMm, 12)
  })

  it('asks nothing of a level base', () => {
    const level = levelFromReadings(cornersFromHeights(600, 400, [2, 2, 2, 2]))
    expect(level).toMatchObject({ wedgeMm: 0, twistMm: 0, flatteningMm: 0, shimsMm: [0, 0, 0, 0] })
  })
})

describe('at the door', () => {
  it('refuses two readings, a line of them, and heights that are none', () => {
    const corners = cornersFromHeights(600, 400, [0, 0, 0, 0])
    expect(() => levelFromReadings(corners.slice(0, 2))).toThrow(/number of readings is 2/)
    expect(() => levelFromReadings([0, 1, 2].map(i => ({ xMm: 100 * i, yMm: 50 * i, heightMm: i })))).toThrow(
      /in one line/
    )
    expect(() => levelFromReadings(cornersFromHeights(600, 400, [0, Number.NaN, 0, 0]))).toThrow(/NaN/)
    expect(() => cornersFromTilt(0, 400, 1, 1)).toThrow(/length is 0 mm/)
  })
})
