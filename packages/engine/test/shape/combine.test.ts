import Module from 'manifold-3d'
import polygonClipping from 'polygon-clipping'
import { describe, expect, it } from 'vitest'
import { circle, polygon, rectangle } from '../../src/shape/build.ts'
import { difference, intersection, simplify, union } from '../../src/shape/combine.ts'
import { area, bounds, inside, perimeter } from '../../src/shape/measure.ts'
import type { Region, Ring } from '../../src/shape/region.ts'
import { EMPTY, regionOfRings } from '../../src/shape/region.ts'
import { rotate, scale, translate } from '../../src/shape/transform.ts'
import { randomFrom, ringOf, star, wavy } from './random.ts'
import { fault } from './validator.ts'

const manifold = await Module()
manifold.setup()

const PAIRS = 300

/** A pair of star-shaped regions on the clipper's grid that mostly overlap. */
function pairOf(seed: number): [Region, Region] {
  const random = randomFrom(seed)
  const one = () => star(random, 5 + Math.floor(40 * random()), 5, 60, 30 * random(), 30 * random())
  return [{ rings: [one()] }, { rings: [one()] }]
}

/** Rings within each other, every second one a hole, each wavering less than the gap to the next. */
function nested(seed: number): Ring[] {
  const random = randomFrom(seed)
  const [x, y] = [20 * random(), 20 * random()] as const
  return Array.from({ length: 6 }, (_, k) => star(random, 24, 8 * k + 8, 8 * k + 14, x, y))
}

type Pairs = [number, number][]
const pairsOf = (ring: Ring): Pairs =>
  Array.from({ length: ring.length / 2 }, (_, k) => [ring[2 * k]!, ring[2 * k + 1]!])

function shoelace(points: Pairs): number {
  let twice = 0
  points.forEach(([x, y], k) => {
    const [px, py] = points.at(k - 1)!
    twice += px * y - x * py
  })
  return twice / 2
}

const operations = { union, difference, intersection } as const
type Name = keyof typeof operations

// Crossings are put on the grid: each moves by up to 1.4e-4 mm, so the area changes by at most half of that times
// the length of the edges (7e-5). Mostly they even out: the worst of 900 results measures 1.4e-5.
const slack = (a: Region, b: Region) => 2.5e-5 * (perimeter(a) + perimeter(b))

describe('combining', () => {
  it('agrees with the C++ clipper and an independent algorithm on 300 pairs of stars', () => {
    let worst = 0
    for (let seed = 1; seed <= PAIRS; seed++) {
      const [a, b] = pairOf(seed)
      const ca = new manifold.CrossSection(a.rings.map(pairsOf), 'NonZero')
      const cb = new manifold.CrossSection(b.rings.map(pairsOf), 'NonZero')
      for (const name of Object.keys(operations) as Name[]) {
        const ours = area(operations[name](a, b))
        const theirs =
          name === 'union' ? ca.add(cb) : name === 'difference' ? ca.subtract(cb) : ca.intersect(cb)
        const other = polygonClipping[name](a.rings.map(pairsOf), b.rings.map(pairsOf))
        const otherArea = other.flat().reduce((sum, ring) => sum + shoelace(ring), 0)
        const off = Math.max(Math.abs(ours - theirs.area()), Math.abs(ours - otherArea))
        worst = Math.max(worst, off / slack(a, b))
        expect(off, `seed ${seed}, ${name}`).toBeLessThan(slack(a, b))
        theirs.delete()
      }
      ca.delete()
      cb.delete()
    }
    // The bound is not idle.
    expect(worst).toBeGreaterThan(0.1)
  })

  it('agrees with both on rings nested six deep, by the even-odd rule and cut by a star', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const rings = nested(seed)
      const region = regionOfRings(rings, 'evenodd')
      expect(region.rings.length).toBe(6)
      const sum = rings.reduce((s, r, k) => s + (k % 2 === 1 ? 1 : -1) * shoelace(pairsOf(r)), 0)
      expect(area(region), `seed ${seed}`).toBeCloseTo(sum, 6)
      const cut: Region = { rings: [star(randomFrom(seed + 1000), 15, 10, 60, 20, 20)] }
      const ca = new manifold.CrossSection(rings.map(pairsOf), 'EvenOdd')
      const cb = new manifold.CrossSection(cut.rings.map(pairsOf), 'NonZero')
      for (const name of Object.keys(operations) as Name[]) {
        const result = operations[name](region, cut)
        const theirs =
          name === 'union' ? ca.add(cb) : name === 'difference' ? ca.subtract(cb) : ca.intersect(cb)
        expect(Math.abs(area(result) - theirs.area()), `seed ${seed}, ${name}`).toBeLessThan(
          slack(region, cut)
        )
        theirs.delete()
        // Outer rings pair with the hole within them.
        const parts = [5, 3, 1].map(k => [pairsOf(rings[k]!), pairsOf(rings[k - 1]!)])
        const other = polygonClipping[name](parts, [pairsOf(cut.rings[0]!)])
        const otherArea = other.reduce(
          (s, [outer, ...holes]) =>
            s + Math.abs(shoelace(outer!)) - holes.reduce((h, r) => h + Math.abs(shoelace(r)), 0),
          0
        )
        expect(Math.abs(area(result) - otherArea), `seed ${seed}, ${name}`).toBeLessThan(slack(region, cut))
      }
      ca.delete()
      cb.delete()
    }
  })

  it('keeps the laws of areas and of points', () => {
    for (let seed = 1; seed <= PAIRS; seed++) {
      const [a, b] = pairOf(seed)
      const [u, i, ab, ba] = [union(a, b), intersection(a, b), difference(a, b), difference(b, a)] as const
      const s = slack(a, b)
      expect(Math.abs(area(a) + area(b) - area(u) - area(i)), `seed ${seed}`).toBeLessThan(s)
      expect(Math.abs(area(ab) + area(i) - area(a)), `seed ${seed}`).toBeLessThan(s)
      expect(Math.abs(area(ab) + area(i) + area(ba) - area(u)), `seed ${seed}`).toBeLessThan(s)
      const random = randomFrom(seed + 5000)
      const probes = Array.from({ length: 12 }, () => [150 * random() - 60, 150 * random() - 60] as const)
      for (const r of [u, i, ab]) expect(fault(r, probes), `seed ${seed}`).toBeNull()
      for (const [x, y] of probes) {
        const [inA, inB] = [inside(a, x, y), inside(b, x, y)]
        expect(inside(u, x, y)).toBe(inA || inB)
        expect(inside(i, x, y)).toBe(inA && inB)
        expect(inside(ab, x, y)).toBe(inA && !inB)
      }
    }
  })

  it('does not depend on order, on four quarter turns, or on where it happens', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const [a, b] = pairOf(seed)
      const whole = area(union(a, b))
      expect(Math.abs(area(union(b, a)) - whole)).toBeLessThan(slack(a, b))
      for (const turn of [90, 180, 270]) {
        const turned = area(union(rotate(a, turn), rotate(b, turn)))
        expect(Math.abs(turned - whole), `seed ${seed}, ${turn}°`).toBeLessThan(slack(a, b))
      }
      for (const far of [1500, -25_000]) {
        const moved = area(union(translate(a, far, -far), translate(b, far, -far)))
        expect(Math.abs(moved - whole), `seed ${seed}, ${far} mm off`).toBeLessThan(slack(a, b))
      }
    }
  })

  it('scales from 1/1000 to 1000 times: areas by the square, within the grid', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const [a, b] = pairOf(seed)
      for (const s of [1e-3, 1e-2, 0.1, 10, 100, 1000]) {
        const [sa, sb] = [scale(a, s), scale(b, s)] as const
        const off = Math.abs(area(intersection(sa, sb)) - s * s * area(intersection(a, b)))
        // Small ones: every point moves by up to 7e-5 mm; large ones: the small one's own rounding, enlarged.
        const bound = 7e-5 * (perimeter(sa) + perimeter(sb)) + s * s * slack(a, b)
        expect(off, `seed ${seed}, scale ${s}`).toBeLessThan(bound)
      }
    }
  })

  it('merges what touches and keeps apart what does not', () => {
    const box = rectangle(10, 10, 0, 0.1)
    const beside = union(box, translate(box, 10, 0))
    expect(beside.rings.length).toBe(1)
    expect(beside.rings[0]!.length).toBe(8)
    expect(area(beside)).toBe(200)
    expect(union(box, translate(box, 10.001, 0)).rings.length).toBe(2)
    expect(union(box, translate(box, 50, 0), translate(box, 5, 0)).rings.length).toBe(2)
    expect(area(union(box, translate(box, 50, 0), translate(box, 5, 0)))).toBe(250)
    // An empty hole of one is filled by another.
    const frame = polygon(ringOf([0, 0], [9, 0], [9, 9], [0, 9]), [ringOf([3, 3], [6, 3], [6, 6], [3, 6])])
    expect(area(union(frame, translate(rectangle(3, 3, 0, 0.1), 4.5, 4.5)))).toBe(81)
  })

  it('passes untouched what stands apart', () => {
    const [a, b] = [circle(10, 0.01), circle(10, 0.01, 30, 0)] as const
    expect(union(a, b).rings).toEqual([a.rings[0], b.rings[0]])
    expect(difference(a, b)).toBe(a)
    expect(intersection(a, b)).toBe(EMPTY)
    expect(union()).toBe(EMPTY)
    expect(union(EMPTY, EMPTY)).toBe(EMPTY)
    expect(difference(a, EMPTY)).toBe(a)
    expect(difference(EMPTY, a)).toBe(EMPTY)
    expect(difference(a, a)).toBe(EMPTY)
    expect(area(intersection(a, a))).toBeCloseTo(area(a), 3)
  })

  it('of a single region resolves its rings', () => {
    const twice = union({
      rings: [ringOf([0, 0], [6, 0], [6, 6], [0, 6]), ringOf([3, 3], [9, 3], [9, 9], [3, 9])]
    })
    expect(twice.rings.length).toBe(1)
    expect(area(twice)).toBe(63)
  })

  it('works across a part of 3 m and refuses coordinates beyond its range', () => {
    const wide = difference(rectangle(3000, 1000, 40, 0.01), circle(600, 0.01))
    expect(area(wide)).toBeCloseTo(3e6 - (4 - Math.PI) * 1600 - Math.PI * 9e4, 1)
    expect(() => union(translate(wide, 2e6, 0))).toThrow(/allowed are −1000000 to 1000000 mm/)
    expect(() => intersection(wide, { rings: [ringOf([0, 0], [Number.NaN, 0], [1, 1])] })).toThrow(/NaN/)
    expect(() => union({ rings: [ringOf([0, 0], [Number.NaN, 0], [1, 1])] })).toThrow(/NaN/)
  })

  it('bridges hundreds of regions: a row of overlapping discs', () => {
    const discs = Array.from({ length: 400 }, (_, k) => circle(10, 0.01, 8 * k, 0))
    const row = union(...discs)
    expect(row.rings.length).toBe(1)
    // Each overlap is two segments of half-angle acos(4/5): r²(2a − sin 2a), a = acos 0.8.
    const a = Math.acos(0.8)
    const expected = 400 * 25 * Math.PI - 399 * 25 * (2 * a - Math.sin(2 * a))
    // Crossings lie between points of the polygons: the lens is off by chords, at most 0.01 mm along its edge.
    expect(Math.abs(area(row) - expected)).toBeLessThan(399 * 0.01 * 4)
    expect(bounds(row).maxX).toBe(8 * 399 + 5)
  })
})

describe('rings resolved by a fill rule', () => {
  const inner = ringOf([2, 2], [4, 2], [4, 4], [2, 4])
  const outer = ringOf([0, 0], [9, 0], [9, 9], [0, 9])

  it('take SVG’s winding and even-odd rules', () => {
    expect(area(regionOfRings([outer, inner]))).toBe(81)
    expect(area(regionOfRings([outer, inner], 'evenodd'))).toBe(77)
    const back = ringOf([2, 2], [2, 4], [4, 4], [4, 2])
    expect(area(regionOfRings([outer, back]))).toBe(77)
  })

  it('take the five-pointed star both ways: with and without its middle', () => {
    const r = 10
    const at = (k: number) =>
      [r * Math.sin((4 * Math.PI * k) / 5), r * Math.cos((4 * Math.PI * k) / 5)] as const
    const pentagram = ringOf(at(0), at(1), at(2), at(3), at(4))
    // Inner pentagon of circumradius r/φ²: area 5/2·(r/φ²)²·sin 72°.
    const phi = (1 + Math.sqrt(5)) / 2
    const middle = (5 / 2) * (r / phi ** 2) ** 2 * Math.sin((2 * Math.PI) / 5)
    const whole = area(regionOfRings([pentagram]))
    const hollow = area(regionOfRings([pentagram], 'evenodd'))
    expect(whole - hollow).toBeCloseTo(middle, 2)
    // Star outline: ten triangles between radii r and r/φ², half-angle 36°.
    expect(whole).toBeCloseTo(5 * r * (r / phi ** 2) * Math.sin(Math.PI / 5), 2)
  })

  it('refuse a scribble that would take minutes', () => {
    const random = randomFrom(4)
    const scribble = Float64Array.from({ length: 6000 }, () => 100 * random())
    expect(() => regionOfRings([scribble])).toThrow(/cross in more than 200000 places/)
  })
})

describe('simplify', () => {
  it('leaves out only points within the tolerance of the new edge', () => {
    for (const tol of [0.2, 0.02, 0.002]) {
      const region = { rings: [wavy(4000, 50, 0.5, 30)] }
      const simple = simplify(region, tol)
      expect(simple.rings.length).toBe(1)
      const kept = simple.rings[0]!
      expect(kept.length).toBeLessThan(tol >= 0.02 ? 2000 : 8000)
      const edges = pairsOf(kept)
      let worst = 0
      for (const [x, y] of pairsOf(region.rings[0]!)) {
        let least = Number.POSITIVE_INFINITY
        edges.forEach(([bx, by], k) => {
          const [ax, ay] = edges.at(k - 1)!
          const t = Math.max(
            0,
            Math.min(1, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2))
          )
          least = Math.min(least, Math.hypot(ax + t * (bx - ax) - x, ay + t * (by - ay) - y))
        })
        worst = Math.max(worst, least)
      }
      expect(worst, `tol ${tol}`).toBeLessThanOrEqual(tol + 1e-4)
      expect(worst).toBeGreaterThan(tol / 4)
    }
  })

  it('drops what is smaller than the tolerance and keeps the rest sound', () => {
    const speck = polygon(ringOf([0, 0], [50, 0], [50, 50], [0, 50]), [ringOf([9, 9], [9.01, 9], [9, 9.01])])
    expect(simplify(speck, 0.05).rings.length).toBe(1)
    for (let seed = 1; seed <= 60; seed++) {
      const random = randomFrom(seed)
      const region = regionOfRings([star(random, 80, 5, 60, 0, 0)])
      const simple = simplify(region, 4)
      expect(fault(simple, [[0, 0]]), `seed ${seed}`).toBeNull()
      expect(simple.rings.reduce((n, r) => n + r.length, 0)).toBeLessThan(162)
    }
    expect(() => simplify(speck, -1)).toThrow(/tolerance/)
  })
})
