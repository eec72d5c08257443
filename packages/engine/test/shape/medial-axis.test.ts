import { describe, expect, it } from 'vitest'
import { circle, polygon, rectangle } from '../../src/shape/build.ts'
import { edgeTree, nearestEdge, segmentDistance2 } from '../../src/shape/edge-tree.ts'
import { area, bounds, inside } from '../../src/shape/measure.ts'
import { medialAxis } from '../../src/shape/medial-axis.ts'
import type { Region } from '../../src/shape/region.ts'
import { EMPTY } from '../../src/shape/region.ts'
import { textRegion } from '../../src/stack/figure-outline.ts'

const TOL = 0.01

// Every place of the branches, at most `stepMm` apart, with the radius between.
function places(branches: readonly Float64Array[], stepMm: number): [number, number, number][] {
  const out: [number, number, number][] = []
  for (const b of branches) {
    out.push([b[0]!, b[1]!, b[2]!])
    for (let k = 3; k < b.length; k += 3) {
      const n = Math.max(1, Math.ceil(Math.hypot(b[k]! - b[k - 3]!, b[k + 1]! - b[k - 2]!) / stepMm))
      for (let j = 1; j <= n; j++)
        out.push(
          [0, 1, 2].map(d => b[k - 3 + d]! + ((b[k + d]! - b[k - 3 + d]!) * j) / n) as [
            number,
            number,
            number
          ]
        )
    }
  }
  return out
}

const ends = (branches: readonly Float64Array[]) =>
  branches.flatMap(b => [
    [b[0]!, b[1]!, b[2]!],
    [b.at(-3)!, b.at(-2)!, b.at(-1)!]
  ])
const near = (p: readonly number[], q: readonly number[], tol = 1e-6) =>
  p.every((v, k) => Math.abs(v - q[k]!) < tol)
const long = (branches: readonly Float64Array[]) =>
  branches.reduce((sum, b) => {
    for (let k = 3; k < b.length; k += 3) sum += Math.hypot(b[k]! - b[k - 3]!, b[k + 1]! - b[k - 2]!)
    return sum
  }, 0)

describe('the middle lines', () => {
  it('of a rectangle are its spine and four lines at 45°', () => {
    const axis = medialAxis(rectangle(40, 20, 0, TOL), TOL)
    expect(axis).toHaveLength(5)
    for (const corner of [
      [20, 10],
      [-20, 10],
      [-20, -10],
      [20, -10]
    ])
      expect(ends(axis).filter(e => near(e, [...corner, 0]))).toHaveLength(1)
    for (const x of [-10, 10]) expect(ends(axis).filter(e => near(e, [x, 0, 10]))).toHaveLength(3)
    expect(long(axis)).toBeCloseTo(20 + 4 * Math.hypot(10, 10), 6)
  })

  it('of a square are its diagonals', () => {
    const axis = medialAxis(rectangle(20, 20, 0, TOL), TOL)
    expect(axis).toHaveLength(4)
    expect(long(axis)).toBeCloseTo(2 * Math.hypot(20, 20), 6)
  })

  it('of a disc are its middle', () => {
    const axis = medialAxis(circle(20, 0.002, 3, 4), TOL)
    expect(axis).toHaveLength(1)
    expect(axis[0]).toHaveLength(3)
    expect(near([...axis[0]!], [3, 4, 10], 0.003)).toBe(true)
  })

  it('of a triangle meet in the middle of its inscribed circle', () => {
    // 3-4-5: r = (a + b − c)/2; and one at random, by Heron: r = A/s, the incentre weighted by the sides.
    const right = medialAxis(polygon(Float64Array.of(0, 0, 40, 0, 0, 30)), TOL)
    expect(right).toHaveLength(3)
    expect(ends(right).filter(e => near(e, [10, 10, 10]))).toHaveLength(3)
    const [A, B, C] = [
      [3, -7],
      [51, 4],
      [-12, 38]
    ] as const
    const side = (p: readonly number[], q: readonly number[]) => Math.hypot(p[0]! - q[0]!, p[1]! - q[1]!)
    const [a, b, c] = [side(B, C), side(C, A), side(A, B)]
    const half = (a + b + c) / 2
    const r = Math.sqrt(((half - a) * (half - b) * (half - c)) / half)
    const middle = [0, 1].map(k => (a * A[k]! + b * B[k]! + c * C[k]!) / (a + b + c))
    const any = medialAxis(polygon(Float64Array.of(...A, ...B, ...C)), TOL)
    expect(any).toHaveLength(3)
    expect(ends(any).filter(e => near(e, [...middle, r]))).toHaveLength(3)
  })

  it('of a ring are the circle between', () => {
    const ring = polygon(circle(40, 0.002).rings[0]!, [circle(20, 0.002).rings[0]!])
    const axis = medialAxis(ring, TOL)
    expect(axis).toHaveLength(1)
    expect(axis[0]!.slice(0, 3)).toEqual(axis[0]!.slice(-3))
    for (const [x, y, r] of places(axis, 1)) {
      expect(Math.hypot(x, y)).toBeCloseTo(15, 1)
      expect(r).toBeCloseTo(5, 1)
    }
    expect(long(axis)).toBeGreaterThan(30 * Math.PI * 0.999)
    expect(long(axis)).toBeLessThan(30 * Math.PI * 1.01)
  })

  it('of an L have the two parabolas about its hollow corner', () => {
    const axis = medialAxis(polygon(Float64Array.of(0, 0, 40, 0, 40, 10, 10, 10, 10, 40, 0, 40)), TOL)
    expect(axis).toHaveLength(7)
    // On the diagonal as far from (10, 10) as from both sides: t = √2·(10 − t).
    const t = (10 * Math.SQRT2) / (1 + Math.SQRT2)
    expect(ends(axis).filter(e => near(e, [t, t, t], 1e-4))).toHaveLength(3)
    let bent = 0
    for (const [x, y, r] of places(axis, 0.2))
      if (x > t + 0.01 && x < 10 && y < x) {
        // Focus (10, 10), directrix y = 0: 20·y = (x − 10)² + 100.
        expect(Math.abs(y - ((x - 10) ** 2 + 100) / 20)).toBeLessThan(TOL)
        expect(Math.abs(r - y)).toBeLessThan(TOL)
        bent++
      }
    expect(bent).toBeGreaterThan(10)
  })

  it('of nothing are nothing, and a tolerance must be above 0', () => {
    expect(medialAxis(EMPTY, TOL)).toEqual([])
    expect(() => medialAxis(rectangle(1, 1, 0, TOL), 0)).toThrow('tolerance')
  })
})

// A star of seeded corners.
function blob(seed: number): Region {
  let state = seed
  const next = () => {
    state = (state * 1103515245 + 12345) % 2147483648
    return state / 2147483648
  }
  const n = 5 + Math.floor(next() * 12)
  return polygon(
    Float64Array.from(
      Array.from({ length: n }, (_, k) => {
        const [a, r] = [((k + 0.8 * next()) * 2 * Math.PI) / n, 4 + 12 * next()]
        return [r * Math.cos(a), r * Math.sin(a)]
      }).flat()
    )
  )
}

describe('circles about the middle lines', () => {
  const shapes: [string, Region][] = [
    ...[1, 2, 3, 4, 5, 6].map((k): [string, Region] => [`star ${k}`, blob(k * 7919)]),
    ...['8', 'R', '&', '4', 'g'].map((c): [string, Region] => [
      `"${c}"`,
      textRegion(c, { x: 0, y: 0 }, 14, 0.004)
    ])
  ]
  for (const [name, region] of shapes)
    it(`fit into ${name} and cover it`, () => {
      const branches = medialAxis(region, TOL)
      const all = places(branches, 0.03)
      const tree = edgeTree(region.rings)
      for (const [x, y, r] of all) {
        const e = 4 * nearestEdge(tree, x, y)
        const [ax, ay, bx, by] = tree.ends.subarray(e, e + 4)
        // The radius between two places is taken as straight: it may be a little more or less.
        expect(Math.abs(r - Math.sqrt(segmentDistance2(ax!, ay!, bx!, by!, x, y)))).toBeLessThan(2 * TOL)
      }
      const { minX, minY, maxX, maxY } = bounds(region)
      let [seen, least] = [0, Number.POSITIVE_INFINITY]
      for (let i = 0; i < 1500; i++) {
        const [px, py] = [
          minX + ((i * 0.754877666) % 1) * (maxX - minX),
          minY + ((i * 0.569840291) % 1) * (maxY - minY)
        ]
        if (!inside(region, px, py)) continue
        seen++
        let most = Number.NEGATIVE_INFINITY
        for (const [x, y, r] of all) most = Math.max(most, r - Math.hypot(px - x, py - y))
        least = Math.min(least, most)
      }
      expect(seen / 1500).toBeCloseTo(area(region) / (maxX - minX) / (maxY - minY), 1)
      expect(least).toBeGreaterThan(-2 * TOL)
    })
})
