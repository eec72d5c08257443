import { describe, expect, it } from 'vitest'
import { circle, polygon, rectangle } from '../../src/shape/build.ts'
import { area, bounds, centroid, inside, nearest, perimeter, ringArea } from '../../src/shape/measure.ts'
import { orientation } from '../../src/shape/orientation.ts'
import type { Region } from '../../src/shape/region.ts'
import { EMPTY, regionOfRings } from '../../src/shape/region.ts'
import { rotate, translate } from '../../src/shape/transform.ts'
import { randomFrom, ringOf, star } from './random.ts'

// Inside, the slow and obvious way: the angle under which the boundary is seen, all turns added up; on the
// boundary (exact for whole numbers) counts as inside.
function insideTwin(region: Region, x: number, y: number): boolean {
  let turned = 0
  for (const ring of region.rings) {
    for (let k = 0, p = ring.length - 2; k < ring.length; p = k, k += 2) {
      const [ax, ay, bx, by] = [ring[p]! - x, ring[p + 1]! - y, ring[k]! - x, ring[k + 1]! - y]
      const cross = ax * by - ay * bx
      const dot = ax * bx + ay * by
      if (cross === 0 && dot <= 0) return true
      turned += Math.atan2(cross, dot)
    }
  }
  return Math.round(turned / (2 * Math.PI)) !== 0
}

// A polygon with whole-number corners in a small square: many points on edges, level edges, shared corners.
function latticeRegion(random: () => number, size: number): Region {
  const ring = Float64Array.from({ length: 2 * (3 + Math.floor(9 * random())) }, () =>
    Math.floor(size * random())
  )
  return { rings: [ring] }
}

describe('areas, lengths and centres', () => {
  it('are those of the closed forms', () => {
    const l = polygon(ringOf([0, 0], [30, 0], [30, 10], [10, 10], [10, 40], [0, 40]))
    expect(area(l)).toBe(600)
    expect(perimeter(l)).toBe(140)
    // Two rectangles: 30 × 10 about (15, 5) and 10 × 30 about (5, 25).
    expect(centroid(l)).toEqual({ x: expect.closeTo(10, 12), y: expect.closeTo(15, 12) })
    const ring = regionOfRings([
      ringOf([0, 0], [8, 0], [8, 8], [0, 8]),
      ringOf([1, 1], [1, 3], [3, 3], [3, 1])
    ])
    expect(area(ring)).toBe(60)
    expect(perimeter(ring)).toBe(40)
    expect(centroid(ring).x).toBeCloseTo((64 * 4 - 4 * 2) / 60, 12)
  })

  it('hold for a ring alone, whichever way it turns', () => {
    const hole = ringOf([0, 0], [0, 4], [4, 4], [4, 0])
    expect(ringArea(hole)).toBe(-16)
    expect(centroid({ rings: [hole] })).toEqual({ x: 2, y: 2 })
  })

  it('keep their digits far from the origin', () => {
    const far = translate(circle(10, 0.01), 20_000, -20_000)
    expect(Math.abs(area(far) / (25 * Math.PI) - 1)).toBeLessThan(1e-10)
    expect(centroid(far).x).toBeCloseTo(20_000, 8)
  })

  it('of nothing are 0, an empty box, and no centre', () => {
    expect(area(EMPTY)).toBe(0)
    expect(perimeter(EMPTY)).toBe(0)
    expect(bounds(EMPTY)).toEqual({
      minX: Number.POSITIVE_INFINITY,
      minY: Number.POSITIVE_INFINITY,
      maxX: Number.NEGATIVE_INFINITY,
      maxY: Number.NEGATIVE_INFINITY
    })
    expect(() => centroid(EMPTY)).toThrow(/without area/)
    expect(() => centroid({ rings: [ringOf([0, 0], [1, 1], [2, 2])] })).toThrow(/without area/)
  })
})

describe('inside', () => {
  it('agrees with the sum of angles on lattice polygons, at every lattice and half-lattice point', () => {
    for (let seed = 1; seed <= 300; seed++) {
      const region = latticeRegion(randomFrom(seed), 8)
      for (let x = -1; x <= 8; x += 0.5) {
        for (let y = -1; y <= 8; y += 0.5) {
          if (inside(region, x, y) !== insideTwin(region, x, y)) {
            expect.fail(`seed ${seed}, (${x}, ${y}), ${region.rings[0]}`)
          }
        }
      }
    }
  })

  // Regions of many edges are sorted into rows when they are asked for again and again.
  it('agrees with the sum of angles on large lattice polygons, however often it is asked', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const random = randomFrom(seed)
      const ring = Float64Array.from({ length: 2 * (48 + Math.floor(60 * random())) }, () =>
        Math.floor(10 * random())
      )
      const region = { rings: [ring] }
      for (let x = -1; x <= 10; x += 0.5) {
        for (let y = -1; y <= 10; y += 0.5) {
          if (inside(region, x, y) !== insideTwin(region, x, y)) expect.fail(`seed ${seed}, (${x}, ${y})`)
        }
      }
    }
  })

  it('agrees with the sum of angles on a level line of many points, where all rows are one', () => {
    const ring = Float64Array.from({ length: 120 }, (_, k) => (k % 2 === 0 ? (k * 7) % 40 : 3))
    for (const [x, y] of [
      [1, 3],
      [50, 3],
      [1, 2.5],
      [1, 3.5],
      [1, 3]
    ] as const)
      expect(inside({ rings: [ring] }, x, y)).toBe(insideTwin({ rings: [ring] }, x, y))
  })

  it('counts the boundary, corners and edges of holes too', () => {
    const region = polygon(ringOf([0, 0], [9, 0], [9, 9], [0, 9]), [ringOf([3, 3], [6, 3], [6, 6], [3, 6])])
    for (const [x, y] of [
      [0, 0],
      [4, 0],
      [9, 9],
      [3, 3],
      [3, 4],
      [5, 6]
    ] as const) {
      expect(inside(region, x, y), `(${x}, ${y})`).toBe(true)
    }
    expect(inside(region, 4, 4)).toBe(false)
    expect(inside(region, 9.000001, 4)).toBe(false)
  })

  it('is exact where rounded arithmetic is not: next to a slanted edge', () => {
    // Kettner et al. 2008, "Classroom examples of robustness problems", Comput. Geom. 40:61 (memory): points
    // about (0.5, 0.5) against the line through (12, 12) and (24, 24).
    const triangle = { rings: [ringOf([12, 12], [24, 24], [-12, 24], [-12, -12])] }
    const ulp = 2 ** -53
    for (let i = 0; i < 64; i++) {
      for (let j = 0; j < 64; j++) {
        expect(inside(triangle, 0.5 + i * ulp, 0.5 + j * ulp), `${i}, ${j}`).toBe(j >= i)
      }
    }
  })

  it('does not depend on a quarter turn', () => {
    const random = randomFrom(9)
    const region = { rings: [star(random, 40, 5, 20, 0, 0)] }
    for (let k = 0; k < 400; k++) {
      const [x, y] = [40 * random() - 20, 40 * random() - 20] as const
      const here = inside(region, x, y)
      expect(inside(rotate(region, 90), -y, x)).toBe(here)
      expect(inside(rotate(region, 180), -x, -y)).toBe(here)
      expect(inside(rotate(region, 270), y, -x)).toBe(here)
    }
  })

  it('refuses coordinates that are not numbers', () => {
    expect(() => inside(circle(10, 0.1), Number.NaN, 0)).toThrow(/finite/)
    expect(inside(EMPTY, 0, 0)).toBe(false)
  })
})

describe('the sign of orientation', () => {
  it('is exact: agrees with big integers on numbers chosen to cancel', () => {
    const random = randomFrom(77)
    // k·2^-40: products are exact in big integers.
    const big = (v: number) => BigInt(v * 2 ** 40)
    let near = 0
    for (let k = 0; k < 20_000; k++) {
      const [ax, ay] = [
        Math.round(2 ** 44 * random()) / 2 ** 40,
        Math.round(2 ** 44 * random()) / 2 ** 40
      ] as const
      const [dx, dy] = [
        Math.round(2 ** 44 * random()) / 2 ** 40,
        Math.round(2 ** 44 * random()) / 2 ** 40
      ] as const
      const t = Math.round(8 * random())
      const shake = () => (Math.floor(3 * random()) - 1) / 2 ** 40
      const [bx, by, cx, cy] = [ax + dx, ay + dy, ax + t * dx + shake(), ay + t * dy + shake()] as const
      const exact = (big(ax) - big(cx)) * (big(by) - big(cy)) - (big(ay) - big(cy)) * (big(bx) - big(cx))
      const sign = exact > 0n ? 1 : exact < 0n ? -1 : 0
      if (Math.sign((ax - cx) * (by - cy) - (ay - cy) * (bx - cx)) !== sign) near++
      expect(Math.sign(orientation(ax, ay, bx, by, cx, cy)), `trial ${k}`).toBe(sign)
    }
    // The cases are hard enough for plain arithmetic to fail.
    expect(near).toBeGreaterThan(50)
  })
})

describe('nearest', () => {
  it('agrees with fine samples of the boundary, and is negative inside', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const random = randomFrom(seed)
      const region = { rings: [star(random, 12, 5, 20, 0, 0)] }
      const ring = region.rings[0]!
      for (let k = 0; k < 10; k++) {
        const [x, y] = [50 * random() - 25, 50 * random() - 25] as const
        let least = Number.POSITIVE_INFINITY
        for (let i = 0, p = ring.length - 2; i < ring.length; p = i, i += 2) {
          for (let t = 0; t < 1; t += 1 / 1000) {
            const sx = ring[p]! + t * (ring[i]! - ring[p]!)
            const sy = ring[p + 1]! + t * (ring[i + 1]! - ring[p + 1]!)
            least = Math.min(least, Math.hypot(sx - x, sy - y))
          }
        }
        const n = nearest(region, x, y)
        const note = `seed ${seed}, (${x}, ${y})`
        expect(Math.abs(n.distanceMm), note).toBeLessThanOrEqual(least + 1e-12)
        expect(Math.abs(n.distanceMm), note).toBeGreaterThan(least - 0.03)
        expect(Math.hypot(n.x - x, n.y - y), note).toBeCloseTo(Math.abs(n.distanceMm), 10)
        expect(n.distanceMm < 0, note).toBe(insideTwin(region, x, y))
      }
    }
  })

  it('is 0 on the edge, exact in the plain cases, and refuses an empty region', () => {
    const box = rectangle(10, 10, 0, 0.1)
    expect(nearest(box, 5, 1)).toEqual({ x: 5, y: 1, distanceMm: 0 })
    expect(nearest(box, 8, 9)).toEqual({ x: 5, y: 5, distanceMm: 5 })
    expect(nearest(box, 2, 0)).toEqual({ x: 5, y: 0, distanceMm: -3 })
    expect(() => nearest(EMPTY, 0, 0)).toThrow(/empty/)
    expect(() => nearest(box, Number.POSITIVE_INFINITY, 0)).toThrow(/finite/)
  })
})
