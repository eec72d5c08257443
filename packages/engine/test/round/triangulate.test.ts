import { performance } from 'node:perf_hooks'
import { describe, expect, test } from 'vitest'
import { triangulate } from '../../src/round/triangulate.ts'
import { difference, union } from '../../src/shape/combine.ts'
import { area } from '../../src/shape/measure.ts'
import type { Region, Ring } from '../../src/shape/region.ts'
import { seeded } from '../../src/sheets/seeded.ts'

/**
 * Laws of a triangulation (practice): signed areas add up to the region's area, which `area` takes from the rings;
 * none is negative, so they do not overlap; n points with h holes give n + 2h − 2 triangles (Euler's formula, per
 * outline); every ring edge is the edge of one triangle, every other edge of two, in opposite directions.
 */
function judged(region: Region) {
  const points = region.rings.flatMap(r => Array.from(r))
  const triangles = triangulate(region.rings)
  let sum = 0
  let negative = 0
  const edges = new Map<string, number>()
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!]
    const [ax, ay, bx, by] = [points[2 * a]!, points[2 * a + 1]!, points[2 * b]!, points[2 * b + 1]!]
    const one = ((bx - ax) * (points[2 * c + 1]! - ay) - (points[2 * c]! - ax) * (by - ay)) / 2
    sum += one
    if (one < 0) negative -= one
    for (const [p, q] of [
      [a, b],
      [b, c],
      [c, a]
    ] as const)
      edges.set(`${p} ${q}`, (edges.get(`${p} ${q}`) ?? 0) + 1)
  }
  let start = 0
  for (const ring of region.rings) {
    const n = ring.length / 2
    for (let k = 0; k < n; k++) {
      const key = `${start + k} ${start + ((k + 1) % n)}`
      edges.set(key, (edges.get(key) ?? 0) - 1)
    }
    start += n
  }
  let open = 0
  for (const [key, count] of edges) {
    const [p, q] = key.split(' ')
    if (count !== 0 && count !== (edges.get(`${q} ${p}`) ?? 0)) open++
  }
  return { count: triangles.length / 3, sum, negative, open }
}

const star = (points: number, cx: number, cy: number, r: number, seed: number): Ring => {
  const random = seeded(seed)
  const ring = new Float64Array(2 * points)
  for (let k = 0; k < points; k++) {
    const a = (2 * Math.PI * k) / points
    const rr = r * (0.55 + 0.45 * random())
    ring[2 * k] = cx + rr * Math.cos(a)
    ring[2 * k + 1] = cy + rr * Math.sin(a)
  }
  return ring
}

const hole = (ring: Ring): Ring => {
  const out = new Float64Array(ring.length)
  for (let k = 0; k < ring.length; k += 2) {
    out[k] = ring[ring.length - 2 - k]!
    out[k + 1] = ring[ring.length - 1 - k]!
  }
  return out
}

describe('triangles of a region', () => {
  test('a square, a square with points on its sides, a frame', () => {
    expect(Array.from(triangulate([Float64Array.of(0, 0, 1, 0, 1, 1, 0, 1)]))).toHaveLength(6)
    const dotted = { rings: [Float64Array.of(0, 0, 1, 0, 2, 0, 2, 1, 2, 2, 1, 2, 0, 2, 0, 1)] }
    expect(judged(dotted)).toEqual({ count: 6, sum: 4, negative: 0, open: 0 })
    const frame = {
      rings: [Float64Array.of(0, 0, 3, 0, 3, 3, 0, 3), Float64Array.of(1, 1, 1, 2, 2, 2, 2, 1)]
    }
    expect(judged(frame)).toEqual({ count: 8, sum: 8, negative: 0, open: 0 })
  })

  test('seeded stars with seeded holes', () => {
    for (let seed = 1; seed <= 120; seed++) {
      const random = seeded(seed)
      let region = union({ rings: [star(6 + Math.floor(random() * 200), 0, 0, 100, seed)] })
      for (let h = 0; h < 14; h++) {
        const [x, y] = [(random() - 0.5) * 140, (random() - 0.5) * 140]
        region = difference(region, { rings: [star(3 + Math.floor(random() * 30), x, y, 12, seed * 99 + h)] })
      }
      const { sum, negative, open } = judged(region)
      const whole = area(region)
      expect(Math.abs(sum - whole), `seed ${seed}`).toBeLessThan(1e-6 * whole)
      expect(negative, `seed ${seed}`).toBeLessThan(1e-9 * whole)
      expect(open, `seed ${seed}`).toBe(0)
    }
  })

  test('holes that touch the outline, each other and themselves', () => {
    const square = Float64Array.of(0, 0, 8, 0, 8, 8, 0, 8)
    const diamonds = [
      Float64Array.of(0, 4, 1, 5, 2, 4, 1, 3),
      Float64Array.of(2, 4, 3, 5, 4, 4, 3, 3),
      Float64Array.of(4, 4, 6, 6, 8, 4, 6, 2)
    ]
    const region = { rings: [square, ...diamonds] }
    const { sum, negative, open } = judged(region)
    expect(sum).toBeCloseTo(64 - 2 - 2 - 8, 9)
    expect(negative).toBe(0)
    expect(open).toBe(0)
  })

  test('a grid of 400 round holes', () => {
    const rings: Ring[] = [Float64Array.of(0, 0, 200, 0, 200, 200, 0, 200)]
    for (let i = 0; i < 400; i++)
      rings.push(hole(star(12, 5 + 10 * (i % 20), 5 + 10 * Math.floor(i / 20), 4, i)))
    const { count, sum, negative, open } = judged({ rings })
    expect(count).toBe(4 + 400 * 12 + 2 * 400 - 2)
    expect(Math.abs(sum - area({ rings }))).toBeLessThan(1e-4)
    expect(negative).toBeLessThan(1e-9)
    expect(open).toBe(0)
  })

  test('20 000 points within half a second', () => {
    const ring = star(20_000, 0, 0, 500, 5)
    const start = performance.now()
    const triangles = triangulate([ring])
    const ms = performance.now() - start
    expect(triangles.length).toBe(3 * (20_000 - 2))
    // The bound holds on two idle cores; a busy machine is given four times as long.
    expect(ms).toBeLessThan(2000)
  })
})
