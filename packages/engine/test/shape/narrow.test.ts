import { describe, expect, it } from 'vitest'
import { circle, polygon, rectangle } from '../../src/shape/build.ts'
import { difference, union } from '../../src/shape/combine.ts'
import { bounds, nearest } from '../../src/shape/measure.ts'
import { inradius, sharpInnerCorners } from '../../src/shape/narrow.ts'
import { EMPTY } from '../../src/shape/region.ts'
import { rotate } from '../../src/shape/transform.ts'
import { randomFrom, ringOf, star } from './random.ts'

describe('inradius', () => {
  it('is that of the closed forms', () => {
    expect(inradius(rectangle(300, 40, 0, 0.01)).radiusMm).toBeCloseTo(20, 2)
    expect(inradius(circle(60, 0.001)).radiusMm).toBeCloseTo(30, 2)
    // Triangle 3-4-5: r = (a + b − c)/2 = 1, centre (1, 1).
    const t = inradius(polygon(ringOf([0, 0], [4, 0], [0, 3])), 1e-4)
    expect(t.radiusMm).toBeCloseTo(1, 3)
    expect(t.x).toBeCloseTo(1, 2)
    expect(t.y).toBeCloseTo(1, 2)
    // Ring between circles of 100 and 40: half its width.
    expect(inradius(difference(circle(100, 0.001), circle(40, 0.001))).radiusMm).toBeCloseTo(15, 2)
    expect(inradius(rectangle(3000, 20, 0, 0.01)).radiusMm).toBeCloseTo(10, 2)
    expect(inradius(rotate(rectangle(3000, 20, 0, 0.01), 33)).radiusMm).toBeCloseTo(10, 2)
  })

  it('is within the precision of the best of a fine grid, and never beyond the truth', () => {
    for (let seed = 1; seed <= 25; seed++) {
      const region = { rings: [star(randomFrom(seed), 14, 6, 30, 0, 0)] }
      const found = inradius(region)
      expect(nearest(region, found.x, found.y).distanceMm).toBeCloseTo(-found.radiusMm, 9)
      const b = bounds(region)
      let best = 0
      for (let x = b.minX; x < b.maxX; x += 0.5) {
        for (let y = b.minY; y < b.maxY; y += 0.5) best = Math.max(best, -nearest(region, x, y).distanceMm)
      }
      expect(found.radiusMm, `seed ${seed}`).toBeGreaterThan(best - 0.01)
      expect(found.radiusMm).toBeLessThan(best + 0.5)
    }
  })

  it('refuses a region without area', () => {
    expect(() => inradius(EMPTY)).toThrow(/without area/)
    expect(() => inradius(circle(10, 0.1), 0)).toThrow(/precision/)
  })
})

describe('sharp inner corners', () => {
  const l = polygon(ringOf([0, 0], [100, 0], [100, 50], [50, 50], [50, 100], [0, 100]))

  it('finds the one of an L, whose square corner keeps (√2 − 1)·r', () => {
    const [corner, ...more] = sharpInnerCorners(l, 3)
    expect(more).toEqual([])
    expect(corner!.x).toBeCloseTo(50, 3)
    expect(corner!.y).toBeCloseTo(50, 3)
    expect(corner!.angleDeg).toBeCloseTo(90, 1)
    expect(corner!.leftMm).toBeCloseTo(3 * (Math.SQRT2 - 1), 1.5)
  })

  it('finds the four of a pocket from within, by angle: 60° keeps r, 120° keeps (2/√3 − 1)·r', () => {
    const inside = { side: 'inside' } as const
    expect(sharpInnerCorners(rectangle(50, 30, 0, 0.01), 3, inside).length).toBe(4)
    expect(sharpInnerCorners(rectangle(50, 30, 0, 0.01), 3)).toEqual([])
    const h = 20 * Math.sqrt(3)
    for (const c of sharpInnerCorners(polygon(ringOf([-20, 0], [20, 0], [0, h])), 4, inside)) {
      expect(c.angleDeg).toBeCloseTo(60, 0)
      expect(c.leftMm).toBeCloseTo(4, 1)
    }
    const hexagon = polygon(
      ringOf(
        ...[0, 1, 2, 3, 4, 5].map(
          k => [30 * Math.cos((k * Math.PI) / 3), 30 * Math.sin((k * Math.PI) / 3)] as const
        )
      )
    )
    const six = sharpInnerCorners(hexagon, 4, inside)
    expect(six.length).toBe(6)
    for (const c of six) {
      expect(c.angleDeg).toBeCloseTo(120, 0)
      expect(c.leftMm).toBeCloseTo(4 * (2 / Math.sqrt(3) - 1), 1)
    }
  })

  it('passes corners rounded at least so much, and shows the others with what is left', () => {
    const inside = { side: 'inside' } as const
    for (const r of [3.1, 5]) expect(sharpInnerCorners(rectangle(50, 30, r, 0.005), 3, inside)).toEqual([])
    const tight = sharpInnerCorners(rectangle(50, 30, 1, 0.005), 3, inside)
    expect(tight.length).toBe(4)
    for (const c of tight) {
      // Two tangent circles in a square corner: (√2 − 1)(R − r).
      expect(Math.abs(c.leftMm - 2 * (Math.SQRT2 - 1))).toBeLessThan(0.02)
      expect(c.angleDeg).toBeCloseTo(90, 0)
    }
  })

  it('does not mind how the region is turned', () => {
    for (const turn of [17, 90, 133]) {
      const corners = sharpInnerCorners(rotate(l, turn), 3)
      expect(corners.length).toBe(1)
      expect(corners[0]!.leftMm).toBeCloseTo(3 * (Math.SQRT2 - 1), 1.5)
    }
  })

  it('finds a slit too narrow for the cutter by its deepest point', () => {
    const slit = difference(rectangle(60, 40, 0, 0.01), rectangle(2, 20, 0, 0.01, 0, 10))
    const [found, ...more] = sharpInnerCorners(slit, 3)
    expect(more).toEqual([])
    expect(found!.y).toBeCloseTo(0, 3)
    expect(found!.leftMm).toBeGreaterThan(15)
  })

  it('shows a pocket the cutter does not enter at all as left whole', () => {
    const pocket = union(rectangle(4, 4, 0, 0.01), rectangle(60, 60, 0, 0.01, 100, 0))
    const corners = sharpInnerCorners(pocket, 3, { side: 'inside' })
    expect(corners.length).toBe(5)
    expect(sharpInnerCorners(rectangle(4, 4, 0, 0.01), 3, { side: 'inside' })[0]!.leftMm).toBeCloseTo(
      4 * Math.SQRT2,
      2
    )
    expect(() => sharpInnerCorners(l, 0)).toThrow(/radius/)
    expect(() => sharpInnerCorners(l, 1, { leastMm: 0 })).toThrow(/least/)
    expect(sharpInnerCorners(EMPTY, 3)).toEqual([])
  })
})
