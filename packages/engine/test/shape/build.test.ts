import { describe, expect, it } from 'vitest'
import { circle, polygon, rectangle } from '../../src/shape/build.ts'
import { area, bounds, centroid, perimeter } from '../../src/shape/measure.ts'
import { ringOf } from './random.ts'

const tolerances = [0.1, 0.01, 0.001]

// Greatest stray of points and chords from the circle, outward and inward.
function strays(ring: Float64Array, radius: number): { out: number; in: number } {
  let out = 0
  let inward = 0
  for (let k = 0, p = ring.length - 2; k < ring.length; p = k, k += 2) {
    for (let t = 0; t < 1; t += 1 / 64) {
      const x = ring[p]! + t * (ring[k]! - ring[p]!)
      const y = ring[p + 1]! + t * (ring[k + 1]! - ring[p + 1]!)
      const off = Math.hypot(x, y) - radius
      out = Math.max(out, off)
      inward = Math.max(inward, -off)
    }
  }
  return { out, in: inward }
}

describe('circle', () => {
  it('has the area π·d²/4 at every tolerance, and bounds of its diameter', () => {
    for (const d of [0.5, 60, 300, 3000]) {
      for (const tol of tolerances) {
        const c = circle(d, tol, 7, -3)
        const expected = (Math.PI * d * d) / 4
        expect(Math.abs(area(c) / expected - 1), `d ${d}, tol ${tol}`).toBeLessThan(1e-12)
        const b = bounds(c)
        expect(b.maxX - b.minX).toBeCloseTo(d, 9)
        expect(b.maxY - b.minY).toBeCloseTo(d, 9)
        expect(centroid(c).x).toBeCloseTo(7, 9)
        expect(centroid(c).y).toBeCloseTo(-3, 9)
      }
    }
  })

  it('strays at most the tolerance on either side, and comes near it: points are not wasted', () => {
    for (const d of [0.5, 60, 3000]) {
      for (const tol of tolerances) {
        const s = strays(circle(d, tol).rings[0]!, d / 2)
        expect(Math.max(s.out, s.in), `d ${d}, tol ${tol}`).toBeLessThanOrEqual(tol * (1 + 1e-9))
        if (d >= 60) expect(Math.max(s.out, s.in)).toBeGreaterThan(0.6 * tol)
      }
    }
  })

  it('has a perimeter that converges to π·d in proportion to the tolerance', () => {
    const off = tolerances.map(tol => Math.abs(perimeter(circle(100, tol)) - Math.PI * 100))
    expect(off[0]! / off[1]!).toBeGreaterThan(6)
    expect(off[0]! / off[1]!).toBeLessThan(16)
    expect(off[1]! / off[2]!).toBeGreaterThan(6)
    expect(off[1]! / off[2]!).toBeLessThan(16)
  })

  it('needs points in proportion to 1/√tolerance', () => {
    const points = [0.01, 0.0001].map(tol => circle(200, tol).rings[0]!.length / 2)
    expect(points[1]! / points[0]!).toBeGreaterThan(9)
    expect(points[1]! / points[0]!).toBeLessThan(11)
  })

  it('refuses sizes and tolerances that are not above 0', () => {
    for (const bad of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => circle(bad, 0.01)).toThrow(/diameter/)
    }
    for (const bad of [0, -1, Number.NaN]) expect(() => circle(10, bad)).toThrow(/tolerance/)
    expect(() => circle(10, 0.01, Number.NaN)).toThrow(/reaches/)
    expect(() => circle(1000, 1e-13)).toThrow(/chords/)
  })
})

describe('rectangle', () => {
  it('has the area w·h − (4 − π)·r² at every tolerance, and exact sides', () => {
    for (const [w, h, r] of [
      [300, 200, 12],
      [80, 30, 15],
      [10, 10, 5],
      [300, 200, 0]
    ] as const) {
      for (const tol of tolerances) {
        const region = rectangle(w, h, r, tol, 4, 5)
        const expected = w * h - (4 - Math.PI) * r * r
        expect(Math.abs(area(region) / expected - 1), `${w} × ${h}, r ${r}, tol ${tol}`).toBeLessThan(1e-12)
        expect(bounds(region)).toEqual({
          minX: 4 - w / 2,
          maxX: 4 + w / 2,
          minY: 5 - h / 2,
          maxY: 5 + h / 2
        })
      }
    }
  })

  it('with corners of half the side is the circle', () => {
    expect(area(rectangle(40, 40, 20, 0.01))).toBe(area(circle(40, 0.01)))
  })

  it('has four points without rounding and no point twice with it', () => {
    expect(rectangle(4, 2, 0, 0.01).rings[0]).toEqual(ringOf([2, -1], [2, 1], [-2, 1], [-2, -1]))
    const ring = rectangle(40, 20, 10, 0.01).rings[0]!
    for (let k = 0, p = ring.length - 2; k < ring.length; p = k, k += 2) {
      expect(ring[k] === ring[p] && ring[k + 1] === ring[p + 1]).toBe(false)
    }
  })

  it('refuses a corner over half the shorter side', () => {
    expect(() => rectangle(300, 20, 10.1, 0.01)).toThrow(/corner radius of 10.1 mm; allowed are 0 to 10 mm/)
    expect(() => rectangle(300, 20, -1, 0.01)).toThrow(/corner/)
    expect(() => rectangle(300, 20, Number.NaN, 0.01)).toThrow(/corner/)
    expect(() => rectangle(300, Number.NaN, 1, 0.01)).toThrow(/height/)
    expect(() => rectangle(-3, 10, 1, 0.01)).toThrow(/width/)
  })
})

describe('polygon', () => {
  const square = ringOf([0, 0], [10, 0], [10, 10], [0, 10])
  const hole = ringOf([2, 2], [4, 2], [4, 4], [2, 4])

  it('is oriented however its corners run, holes the other way', () => {
    for (const outer of [square, ringOf([0, 0], [0, 10], [10, 10], [10, 0])]) {
      for (const inner of [hole, ringOf([2, 2], [2, 4], [4, 4], [4, 2])]) {
        const region = polygon(outer, [inner])
        expect(region.rings.length).toBe(2)
        expect(area(region)).toBe(96)
        expect(area({ rings: region.rings.slice(0, 1) }) > 0).toBe(true)
        expect(area({ rings: region.rings.slice(1) })).toBe(-4)
      }
    }
  })

  it('refuses fewer than three corners and coordinates that are not numbers', () => {
    expect(() => polygon(ringOf([0, 0], [1, 1]))).toThrow(/three corners/)
    expect(() => polygon(square, [Float64Array.of(1, 2, 3)])).toThrow(/three corners/)
    expect(() => polygon(ringOf([0, 0], [Number.NaN, 1], [1, 1]))).toThrow(/coordinate of NaN/)
    expect(() => polygon(ringOf([0, 0], [1e9, 1], [1, 1]))).toThrow(/coordinate of 1000000000/)
  })
})
