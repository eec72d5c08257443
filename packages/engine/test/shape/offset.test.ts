import Module from 'manifold-3d'
import { describe, expect, it } from 'vitest'
import { circle, polygon, rectangle } from '../../src/shape/build.ts'
import { difference, intersection, union } from '../../src/shape/combine.ts'
import { area, bounds, inside, nearest, perimeter } from '../../src/shape/measure.ts'
import { offset, stroke } from '../../src/shape/offset.ts'
import type { Region } from '../../src/shape/region.ts'
import { EMPTY, regionOfRings } from '../../src/shape/region.ts'
import { randomFrom, ringOf, star, wavy } from './random.ts'
import { fault } from './validator.ts'

const manifold = await Module()
manifold.setup()

const round = { join: 'round', tolMm: 0.01 } as const
const starOf = (seed: number): Region => {
  const random = randomFrom(seed)
  return { rings: [star(random, 8 + Math.floor(30 * random()), 15, 60, 0, 0)] }
}

describe('offset outward, round', () => {
  it('of a rectangle has the area A + P·d + π·d² (Steiner) at three tolerances, closing in', () => {
    const box = rectangle(80, 50, 0, 0.01)
    const exact = 4000 + 260 * 6 + Math.PI * 36
    const off = [0.1, 0.01, 0.001].map(tolMm => exact - area(offset(box, 6, { join: 'round', tolMm })))
    // Chords lie within the arc, by two thirds of the tolerance on average: 2/3·tol·2πd at most.
    off.forEach((o, k) => {
      expect(o).toBeGreaterThan(-1e-3)
      expect(o).toBeLessThan(10 ** -(k + 1) * 2 * Math.PI * 6)
    })
    expect(off[0]! / off[1]!).toBeGreaterThan(5)
    expect(off[1]! / off[2]!).toBeGreaterThan(5)
  })

  it('of a circle is the greater circle, and back again', () => {
    const c = circle(100, 0.001)
    expect(area(offset(c, 10, round))).toBeCloseTo(Math.PI * 3600, -0.5)
    expect(Math.abs(area(offset(offset(c, 10, round), -10, round)) - area(c))).toBeLessThan(
      0.01 * 2 * perimeter(c)
    )
  })

  it('takes in exactly what lies within the distance: probes about 40 stars', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const region = starOf(seed)
      const random = randomFrom(seed + 100)
      for (const d of [-3, 5]) {
        const moved = offset(region, d, round)
        for (let k = 0; k < 60; k++) {
          const [x, y] = [150 * random() - 75, 150 * random() - 75] as const
          const { distanceMm } = nearest(region, x, y)
          // The band of the tolerance is left out.
          if (Math.abs(distanceMm - d) < 0.011) continue
          expect(inside(moved, x, y), `seed ${seed}, d ${d}, (${x}, ${y}), ${distanceMm} mm`).toBe(
            distanceMm < d
          )
        }
      }
    }
  })
})

describe('offset', () => {
  it('agrees with the C++ clipper, round, square and mitred, on 60 stars with holes', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const outer = starOf(seed)
      const region = difference(outer, { rings: [star(randomFrom(seed + 900), 9, 4, 9, 0, 0)] })
      const theirs = new manifold.CrossSection(
        region.rings.map(r =>
          Array.from({ length: r.length / 2 }, (_, k): [number, number] => [r[2 * k]!, r[2 * k + 1]!])
        ),
        'Positive'
      )
      for (const [join, name] of [
        ['round', 'Round'],
        ['square', 'Square'],
        ['mitre', 'Miter']
      ] as const) {
        for (const d of [-4, -0.5, 1.25, 6]) {
          const ours = area(offset(region, d, { join, tolMm: 0.001 }))
          const other = theirs.offset(d, name, 2, 1024)
          // Round: chords of 0.001 mm here, of 1024 segments there, along at most the whole edge. Others: our grid
          // moves each corner by at most 7e-5 mm.
          const slack = (join === 'round' ? 0.001 : 7e-5) * perimeter(outer)
          expect(Math.abs(ours - other.area()), `seed ${seed}, ${join} ${d}`).toBeLessThan(slack)
          other.delete()
        }
      }
      theirs.delete()
    }
  })

  it('out and in again closes, in and out again opens: contains, is contained', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const region = starOf(seed)
      const closed = offset(offset(region, 2, round), -2, round)
      const opened = offset(offset(region, -2, round), 2, round)
      // Within the tolerance along the edge.
      const slack = 0.02 * perimeter(region)
      expect(area(difference(region, closed)), `seed ${seed}`).toBeLessThan(slack)
      expect(area(difference(opened, region)), `seed ${seed}`).toBeLessThan(slack)
      expect(area(closed)).toBeGreaterThan(area(region) - slack)
      expect(area(opened)).toBeLessThan(area(region) + slack)
    }
  })

  it('of a mitred square stays a square; of a square join cuts corners at the distance', () => {
    const box = rectangle(10, 10, 0, 0.1)
    expect(area(offset(box, 3, { join: 'mitre', tolMm: 0.01 }))).toBe(256)
    expect(area(offset(box, -3, { join: 'mitre', tolMm: 0.01 }))).toBe(16)
    // Corner triangle left out beyond the distance: legs d·(2 − √2).
    const legs = 3 * (2 - Math.SQRT2)
    expect(area(offset(box, 3, { join: 'square', tolMm: 0.01 }))).toBeCloseTo(256 - 2 * legs * legs, 2)
  })

  it('opens holes when moved inward and closes them outward', () => {
    const frame = polygon(ringOf([0, 0], [40, 0], [40, 40], [0, 40]), [
      ringOf([15, 15], [25, 15], [25, 25], [15, 25])
    ])
    const mitre = { join: 'mitre', tolMm: 0.01 } as const
    expect(area(offset(frame, -2, mitre))).toBe(36 * 36 - 14 * 14)
    expect(area(offset(frame, 2, mitre))).toBe(44 * 44 - 6 * 6)
    expect(offset(frame, 5, mitre).rings.length).toBe(1)
    expect(offset(frame, -8, mitre)).toBe(EMPTY)
  })

  it('keeps a dense ring within the tolerance when it goes in steps', () => {
    // 10,000 points, 10 mm; with 20,000 taken at once the clipper does not finish in minutes.
    const ring = wavy(10_000, 50, 0.4, 400)
    for (const d of [-10, 10]) {
      const moved = offset({ rings: [ring] }, d, round)
      // Probes on the true offset: rays through crests (outward) or troughs (inward) reach the circle.
      const radius = 50 + (d > 0 ? 0.4 : -0.4) + d
      for (let k = 0; k < 40; k++) {
        const crest = (2 * Math.PI * (k * 10 + (d > 0 ? 0.25 : 0.75))) / 400
        for (const off of [-0.0115, 0.0115]) {
          const [x, y] = [(radius + off) * Math.cos(crest), (radius + off) * Math.sin(crest)] as const
          expect(inside(moved, x, y), `d ${d}, crest ${k}, ${off}`).toBe(off < 0)
        }
      }
      expect(fault(moved, [[0, 0]])).toBeNull()
    }
  })

  it('of nothing, or by nothing, is the same region', () => {
    const box = rectangle(10, 10, 0, 0.1)
    expect(offset(box, 0, round)).toBe(box)
    expect(offset(EMPTY, 5, round)).toBe(EMPTY)
    expect(() => offset(box, Number.NaN, round)).toThrow(/offset of NaN/)
    expect(() => offset(box, 1, { join: 'round', tolMm: 0 })).toThrow(/tolerance/)
  })
})

describe('stroke', () => {
  const tolMm = 0.001

  it('of a straight line has the area w·l, with round ends + π·w²/4', () => {
    const line = Float64Array.of(0, 0, 30, 40)
    expect(area(stroke(line, 6, { ends: 'flat', tolMm }))).toBeCloseTo(300, 2)
    expect(area(stroke(line, 6, { ends: 'round', tolMm }))).toBeCloseTo(300 + 9 * Math.PI, 1)
    expect(bounds(stroke(Float64Array.of(0, 0, 30, 0), 6, { ends: 'round', tolMm })).maxX).toBeCloseTo(33, 3)
  })

  it('of a ring is its edge with both sides, closed by its first point or by word', () => {
    const ring = ringOf([0, 0], [40, 0], [40, 40], [0, 40])
    // Outer side A + P·r + π·r², inner side mitred by itself.
    const exact = 1600 + 160 * 2 + Math.PI * 4 - 36 * 36
    const byWord = stroke(ring, 4, { ends: 'flat', tolMm, closed: true })
    const byPoint = stroke(Float64Array.from([...ring, 0, 0]), 4, { ends: 'round', tolMm })
    for (const r of [byWord, byPoint]) {
      expect(r.rings.length).toBe(2)
      expect(area(r)).toBeCloseTo(exact, 1)
    }
  })

  it('takes in exactly what lies within half the width of a crooked line', () => {
    for (let seed = 1; seed <= 30; seed++) {
      const random = randomFrom(seed)
      const line = Float64Array.from({ length: 16 }, () => 60 * random())
      const groove = stroke(line, 5, { ends: 'round', tolMm: 0.01 })
      for (let k = 0; k < 80; k++) {
        const [x, y] = [70 * random() - 5, 70 * random() - 5] as const
        let least = Number.POSITIVE_INFINITY
        for (let i = 0; i + 3 < line.length; i += 2) {
          const [ax, ay, bx, by] = line.subarray(i, i + 4) as unknown as [number, number, number, number]
          const t = ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2)
          const u = Math.max(0, Math.min(1, t))
          least = Math.min(least, Math.hypot(ax + u * (bx - ax) - x, ay + u * (by - ay) - y))
        }
        if (Math.abs(least - 2.5) < 0.011) continue
        expect(inside(groove, x, y), `seed ${seed}, (${x}, ${y}), ${least} mm`).toBe(least < 2.5)
      }
    }
  })

  it('of a line without length is a dot or nothing', () => {
    for (const line of [
      Float64Array.of(5, 5),
      Float64Array.of(5, 5, 5, 5),
      Float64Array.of(5, 5, 5, 5, 5, 5)
    ]) {
      expect(area(stroke(line, 4, { ends: 'round', tolMm }))).toBeCloseTo(4 * Math.PI, 1)
      expect(stroke(line, 4, { ends: 'flat', tolMm })).toBe(EMPTY)
    }
  })

  it('there and back along one stretch is that stretch', () => {
    const r = stroke(Float64Array.of(0, 0, 10, 0, 0, 0), 2, { ends: 'round', tolMm })
    expect(area(r)).toBeCloseTo(20 + Math.PI, 1)
  })

  it('refuses widths, tolerances and lines that are none', () => {
    const line = Float64Array.of(0, 0, 1, 1)
    expect(() => stroke(line, 0, { ends: 'round', tolMm })).toThrow(/wide/)
    expect(() => stroke(line, Number.NaN, { ends: 'round', tolMm })).toThrow(/wide/)
    expect(() => stroke(line, 1, { ends: 'round', tolMm: -1 })).toThrow(/tolerance/)
    expect(() => stroke(new Float64Array(0), 1, { ends: 'round', tolMm })).toThrow(/point/)
  })

  it('of a self-crossing line counts the crossing once', () => {
    const cross = stroke(Float64Array.of(0, 0, 20, 0, 20, 10, 10, 10, 10, -10), 2, { ends: 'flat', tolMm })
    expect(fault(cross, [[10, 0]])).toBeNull()
    expect(
      area(intersection(cross, union(regionOfRings([ringOf([5, -3], [15, -3], [15, 3], [5, 3])]))))
    ).toBeCloseTo(20 + 12 - 4, 2)
  })
})
