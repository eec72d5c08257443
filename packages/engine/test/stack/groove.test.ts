import { describe, expect, it } from 'vitest'
import { area } from '../../src/shape/measure.ts'
import type { Profile } from '../../src/stack/groove.ts'
import { halfWidthAt, lineDistance, riseAt, vDepthMm } from '../../src/stack/groove.ts'
import { strokeAll } from '../../src/stack/groove-region.ts'

const v: Profile = { kind: 'v', widthMm: 0, angleDeg: 60 }
const round: Profile = { kind: 'round', widthMm: 10, angleDeg: 60 }
const flat: Profile = { kind: 'flat', widthMm: 6, angleDeg: 60 }

describe('the profile of a groove', () => {
  it('of a 60° V is 1.155 wide for 1 deep', () => {
    expect(2 * halfWidthAt(v, 1)).toBeCloseTo(1.1547, 4)
    expect(vDepthMm(1.1547005, 60)).toBeCloseTo(1, 6)
    expect(vDepthMm(2, 90)).toBeCloseTo(1, 12)
  })

  it('of a ball is a circle, then straight', () => {
    expect(halfWidthAt(round, 5)).toBe(5)
    expect(halfWidthAt(round, 20)).toBe(5)
    // 3-4-5: 2 above the deepest point, 3 below the middle.
    expect(halfWidthAt(round, 2)).toBeCloseTo(4, 12)
    expect(riseAt(round, 4)).toBeCloseTo(2, 12)
    expect(riseAt(round, 5.1)).toBeNull()
  })

  it('widens as far as it rises: one undoes the other', () => {
    for (const p of [v, round]) {
      for (const s of [0.1, 1, 2.5, 4.9]) expect(riseAt(p, halfWidthAt(p, s))).toBeCloseTo(s, 9)
      expect(halfWidthAt(p, 0)).toBe(0)
      expect(halfWidthAt(p, -1)).toBe(0)
    }
    expect(riseAt(flat, 2.9)).toBe(0)
    expect(riseAt(flat, 3.1)).toBeNull()
  })
})

describe('lines drawn with a width', () => {
  const line = Float64Array.of(0, 0, 30, 40)

  it('have the area of a strip with round ends, however coarse the ends are drawn', () => {
    for (const tol of [0.5, 0.05, 0.002])
      expect(area(strokeAll([line], 8, tol))).toBeCloseTo(50 * 8 + Math.PI * 16, 2)
  })

  it('that cross or lie apart are one region', () => {
    const apart = Float64Array.of(100, 0, 130, 40)
    expect(area(strokeAll([line, apart], 8, 0.01))).toBeCloseTo(2 * (400 + 16 * Math.PI), 1)
    const across = Float64Array.of(15 - 16, 20 + 12, 15 + 16, 20 - 12)
    expect(area(strokeAll([line, across], 8, 0.01))).toBeCloseTo(
      400 + 16 * Math.PI + 40 * 8 + 16 * Math.PI - 64,
      1
    )
    expect(strokeAll([line], 0, 0.01).rings).toEqual([])
  })

  it('are as far from a point as their nearest place', () => {
    expect(lineDistance([line], 15, 20)).toBe(0)
    expect(lineDistance([line], 15 + 4, 20 - 3)).toBeCloseTo(5, 12)
    expect(lineDistance([line, Float64Array.of(-3, -4, -3, -4)], -6, -8)).toBeCloseTo(5, 12)
  })
})
