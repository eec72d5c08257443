import { describe, expect, it } from 'vitest'
import { arcsOf } from '../../../src/cuts/area/arc-fit.ts'
import { pocketPath } from '../../../src/cuts/area/pocket-path.ts'
import { reliefPath, reliefs } from '../../../src/cuts/area/relief-path.ts'
import { restRegion } from '../../../src/cuts/area/rest-region.ts'
import { slotPath } from '../../../src/cuts/area/slot-path.ts'
import { strips } from '../../../src/cuts/area/strips.ts'
import { spanLength } from '../../../src/cuts/area/track.ts'
import { circle, rectangle } from '../../../src/shape/build.ts'
import { area } from '../../../src/shape/measure.ts'
import { offset } from '../../../src/shape/offset.ts'
import { chance } from '../../stack/random.ts'
import { cutLength, depthIn, eachPlace, flat, job, painted, pathOf, tipsOf } from './painted.ts'

describe('what a cutter leaves', () => {
  const square = rectangle(40, 30, 0, 0.01)

  it('in four square corners is (4 − π)·r²', () => {
    for (const d of [6, 10, 16]) {
      const { region, cleared } = restRegion(square, d)
      expect(area(square) - area(cleared)).toBeCloseTo((4 - Math.PI) * (d / 2) ** 2, 0)
      expect(region.rings).toHaveLength(4)
    }
  })

  it('is nothing in a disc, or where corners are as round as the cutter', () => {
    expect(restRegion(circle(40, 0.01), 10).region.rings).toHaveLength(0)
    expect(restRegion(rectangle(40, 30, 5, 0.01), 9.9).region.rings).toHaveLength(0)
  })

  it('is cleared by a smaller one, which comes down where the first has cut', () => {
    const { region, cleared } = restRegion(square, 12)
    const j = job(flat(3, { plunges: false }), 4)
    const { moves } = pathOf(pocketPath(j, region, { free: cleared }))
    const picture = painted(moves, 1.5, [-22, -17, 22, 17], 0.25)
    eachPlace(picture, (x, y, z) => {
      const deep = depthIn(square, x, y)
      if (deep < -0.05) expect(z).toBe(Number.POSITIVE_INFINITY)
      // Left by the first, and not in the corner of the second.
      if (deep > 0.05 && depthIn(cleared, x, y) < 0 && Math.hypot(20 - Math.abs(x), 15 - Math.abs(y)) > 1)
        expect(z).toBe(-4)
    })
  })
})

describe('corner relief', () => {
  it('of a square corner: the bore lies r/√2 from both sides, the corner on its circle', () => {
    const found = reliefs(rectangle(40, 30, 0, 0.01), 6, 0.02)
    expect(found).toHaveLength(4)
    for (const r of found) {
      expect(20 - Math.abs(r.cx)).toBeCloseTo(3 / Math.SQRT2, 9)
      expect(15 - Math.abs(r.cy)).toBeCloseTo(3 / Math.SQRT2, 9)
      expect(Math.hypot(r.x - r.cx, r.y - r.cy)).toBeCloseTo(3, 9)
      expect([20 - Math.abs(r.fromX), 15 - Math.abs(r.fromY)]).toEqual([
        expect.closeTo(3, 9),
        expect.closeTo(3, 9)
      ])
    }
  })

  it('lets a square part in, and stays out of round corners and islands', () => {
    const j = job(flat(6), 5)
    const region = rectangle(40, 30, 0, 0.01)
    const pocket = pathOf(pocketPath(j, region)).moves
    const bores = reliefPath(j, reliefs(region, 6, 0.02)).moves
    const picture = painted([...pocket, ...bores], 3, [-25, -20, 25, 20], 0.2)
    eachPlace(picture, (x, y, z) => {
      if (Math.abs(x) < 19.95 && Math.abs(y) < 14.95) expect(z).toBe(-5)
    })
    expect(reliefs(rectangle(40, 30, 4, 0.01), 6, 0.02)).toEqual([])
    expect(reliefs(rectangle(5, 5, 0, 0.01), 6, 0.02)).toEqual([])
  })
})

describe('arcs', () => {
  it('in the place of a circle: few, and as long', () => {
    const ring = circle(80, 0.01).rings[0]!
    const closed = Float64Array.from([...ring, ring[0]!, ring[1]!])
    const spans = arcsOf(closed, 0.02)
    expect(spans.length).toBeLessThanOrEqual(4)
    expect(spans.every(s => s.kind === 'arc')).toBe(true)
    expect(spans.reduce((sum, s) => sum + spanLength(s), 0)).toBeCloseTo(80 * Math.PI, 1)
  })

  it('keep a square square', () => {
    expect(arcsOf(Float64Array.of(0, 0, 9, 0, 9, 9, 0, 9, 0, 0), 0.05).map(s => s.kind)).toEqual([
      'line',
      'line',
      'line',
      'line'
    ])
  })

  it('round corners are four lines and four arcs', () => {
    const ring = offset(rectangle(60, 40, 0, 0.01), 5, { join: 'round', tolMm: 0.01 }).rings[0]!
    const spans = arcsOf(Float64Array.from([...ring, ring[0]!, ring[1]!]), 0.02)
    expect(spans.filter(s => s.kind === 'arc').length).toBeLessThanOrEqual(5)
    expect(spans.length).toBeLessThanOrEqual(10)
  })

  it.each([1, 2, 3, 4, 5, 6])('of seeded line %i stray no more than the tolerance', seed => {
    const c = chance(seed)
    const points: number[] = [0, 0]
    let heading = 0
    let bend = 0
    for (let k = 0; k < 400; k++) {
      if (k % 40 === 0) bend = c.pick([0, 0.02, -0.05, 0.1, 0.3, -0.2])
      if (k % 40 === 20 && c.is(0.5)) heading += c.span(-2, 2)
      heading += bend
      const step = c.span(0.2, 1)
      points.push(points[2 * k]! + step * Math.cos(heading), points[2 * k + 1]! + step * Math.sin(heading))
    }
    const line = Float64Array.from(points)
    const spans = arcsOf(line, 0.05)
    expect(spans.length).toBeLessThan(400)
    const drawn = spans.flatMap(s => {
      const n = Math.max(2, Math.ceil(spanLength(s) / 0.05))
      return Array.from({ length: n + 1 }, (_, k) => {
        if (s.kind === 'line')
          return [s.x0 + ((s.x1 - s.x0) * k) / n, s.y0 + ((s.y1 - s.y0) * k) / n] as const
        const r = Math.hypot(s.x0 - s.cx, s.y0 - s.cy)
        const a = Math.atan2(s.y0 - s.cy, s.x0 - s.cx) + ((s.clockwise ? -1 : 1) * spanLength(s) * k) / n / r
        return [s.cx + r * Math.cos(a), s.cy + r * Math.sin(a)] as const
      })
    })
    for (let k = 0; k < line.length; k += 2) {
      let least = Number.POSITIVE_INFINITY
      for (const [x, y] of drawn) least = Math.min(least, (x - line[k]!) ** 2 + (y - line[k + 1]!) ** 2)
      // Half of what lies between two places drawn comes on top.
      expect(least).toBeLessThan(0.05 ** 2 + 0.025 ** 2)
    }
    for (const [i, s] of spans.entries())
      if (i > 0) expect([s.x0, s.y0]).toEqual([spans[i - 1]!.x1, spans[i - 1]!.y1])
  })
})

describe('a slot', () => {
  it('as wide as the cutter: down a ramp to and fro, then level there and back', () => {
    const j = job(flat(6), 4)
    const { moves } = pathOf(slotPath(j, Float64Array.of(0, 0, 30, 0), 6))
    // From 1 over the top, 5 down at 3°, then twice its length.
    expect(cutLength(moves)).toBeCloseTo(5 / Math.sin((3 * Math.PI) / 180) + 60, 3)
    const picture = painted(moves, 3, [-4, -4, 34, 4])
    eachPlace(picture, (x, y, z) => {
      const r = Math.hypot(Math.max(0, -x, x - 30), y)
      if (r < 2.9) expect(z).toBe(-4)
      if (r > 3.05) expect(z).toBe(Number.POSITIVE_INFINITY)
    })
  })

  it('wider is a pocket with round ends; narrower has no path', () => {
    const { moves } = pathOf(slotPath(job(flat(6), 4), Float64Array.of(0, 0, 30, 0), 10))
    const picture = painted(moves, 3, [-6, -6, 36, 6])
    eachPlace(picture, (x, y, z) => {
      const r = Math.hypot(Math.max(0, -x, x - 30), y)
      if (r < 4.9) expect(z).toBe(-4)
      if (r > 5.06) expect(z).toBe(Number.POSITIVE_INFINITY)
    })
    expect(slotPath(job(flat(6), 4), Float64Array.of(0, 0, 30, 0), 5)).toMatchObject({ largestMm: 5 })
    expect(slotPath(job(flat(6), 4), Float64Array.of(0, 0, 30, 0), 0)).toMatchObject({ largestMm: null })
  })

  it('round in a ring ends where it starts', () => {
    const ring = circle(40, 0.01).rings[0]!
    const { moves } = pathOf(slotPath(job(flat(6), 3), Float64Array.from([...ring, ring[0]!, ring[1]!]), 6))
    const level = tipsOf(moves, 0.1).filter(t => t.z === -3)
    expect(level.length * 0.1).toBeGreaterThan(40 * Math.PI - 1)
  })
})

describe('a piece longer than the bed', () => {
  it('in strips: as few as do, alike, and overlapping', () => {
    const found = strips(-500, 1500, 800, 50)
    // (2000 − 50) / (800 − 50) = 2.6
    expect(found).toHaveLength(3)
    expect(found.map(s => s.toMm - s.fromMm)).toEqual([700, 700, 700])
    expect(found.map(s => s.fromMm)).toEqual([-500, 150, 800])
    for (const [i, s] of found.entries()) if (i > 0) expect(found[i - 1]!.toMm - s.fromMm).toBeCloseTo(50, 9)
    expect(strips(0, 2000, 2000, 50)).toHaveLength(1)
    expect(() => strips(0, 2000, 50, 50)).toThrow(/overlap/)
    expect(() => strips(0, 0, 800, 50)).toThrow(/length/)
  })
})
