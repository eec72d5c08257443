import { describe, expect, it } from 'vitest'
import { ABRASIVES } from '../../src/catalogue/abrasive.ts'
import {
  GRADES,
  gradeOf,
  likeUnlettered,
  nearestGrade,
  PASTES,
  skippedBetween,
  stepRatio
} from '../../src/coat/grain.ts'
import { hiddenUm, ridgeUm, scallopUm, scratchUm } from '../../src/coat/scratch.ts'

describe('grades of paper', () => {
  it('run from coarse to fine, each grain smaller than the one before', () => {
    for (let i = 1; i < GRADES.length; i++) {
      expect(GRADES[i]!.grit).toBeGreaterThan(GRADES[i - 1]!.grit)
      expect(GRADES[i]!.grainUm).toBeLessThan(GRADES[i - 1]!.grainUm)
    }
    expect(GRADES.length + PASTES.length).toBe(ABRASIVES.length)
    expect(PASTES.map(p => p.grainUm)).toEqual([3, 1])
  })

  it('no number between two grades is reckoned with', () => {
    expect(() => gradeOf(250)).toThrow(/P250 is no grade of FEPA; next to it are P240 and P280/)
    expect(() => gradeOf(4000)).toThrow(/P3000 and P5000/)
    expect(() => gradeOf(9000)).toThrow(/next to it are P5000/)
    expect(nearestGrade(250).grit).toBe(240)
    expect(nearestGrade(4000).grit).toBe(5000)
    for (const g of GRADES) expect(nearestGrade(g.grit)).toBe(g)
  })

  it('a number without a letter is finer than the P grade above 220, and the same below', () => {
    expect(likeUnlettered(320)!.grit).toBe(400)
    expect(likeUnlettered(400)!.grit).toBe(800)
    expect(likeUnlettered(600)!.grit).toBe(1200)
    expect(likeUnlettered(180)!.grit).toBe(180)
    expect(likeUnlettered(280)).toBeNull()
  })

  it('knows what a step leaves out', () => {
    expect(skippedBetween(gradeOf(80), gradeOf(120)).map(g => g.grit)).toEqual([100])
    expect(skippedBetween(gradeOf(220), gradeOf(800)).length).toBe(7)
    expect(stepRatio(gradeOf(220), gradeOf(800))).toBeCloseTo(68 / 21.8, 9)
  })
})

describe('scratches', () => {
  // Practice, as tabled: P80 30-60, P180 12-25, P320 7-14, P600 4-8, P2000 1-3 µm in timber.
  it.each([
    [80, 30, 60],
    [180, 12, 25],
    [320, 7, 14],
    [600, 4, 8],
    [2000, 1, 3]
  ])('P%i leaves %i to %i µm', (grit, low, high) => {
    const [least, , most] = scratchUm(gradeOf(grit).grainUm, 'timber')
    expect(Math.abs(least - low)).toBeLessThanOrEqual(0.6)
    expect(Math.abs(most - high)).toBeLessThanOrEqual(0.5)
  })

  it('resin less than timber, and a third of a film hides them', () => {
    const [, timber] = scratchUm(68, 'timber')
    const [, resin] = scratchUm(68, 'resin')
    expect(resin).toBeLessThan(timber)
    expect(hiddenUm(90)).toBeCloseTo(30, 9)
    expect(() => scratchUm(0, 'timber')).toThrow(/grain is 0/)
  })

  it('cusps of a planer: the sagitta of a chord, by measuring the circle', () => {
    // Depth of the arc between two cuts, by the slow way: highest less lowest of the circle sampled.
    const [r, p] = [30, 2]
    let lowest = Number.POSITIVE_INFINITY
    for (let k = -1000; k <= 1000; k++) {
      const x = (k / 1000) * (p / 2)
      lowest = Math.min(lowest, r - Math.sqrt(r * r - x * x))
    }
    const highest = r - Math.sqrt(r * r - (p / 2) ** 2)
    expect(scallopUm(r, p)).toBeCloseTo(1000 * (highest - lowest), 9)
    expect(scallopUm(r, p)).toBeCloseTo(16.7, 1)
    expect(scallopUm(5, 10)).toBeCloseTo(5000, 6)
    expect(() => scallopUm(5, 10.1)).toThrow(/pitch is 10.1/)
    expect(ridgeUm(15, 2)).toBe(30)
  })
})
