import { describe, expect, it } from 'vitest'
import { circle, polygon } from '../../src/shape/build.ts'
import { difference } from '../../src/shape/combine.ts'
import { area, inside, nearest } from '../../src/shape/measure.ts'
import { clipLines, thinned, thinnedRing } from '../../src/sheets/clip-line.ts'
import { grainLines } from '../../src/sheets/grain.ts'
import { CROSSED_MM, hatchLines, WIDE_MM } from '../../src/sheets/hatch.ts'
import type { HatchKind } from '../../src/sheets/mark.ts'
import { box } from '../../src/sheets/mark.ts'
import { seeded } from '../../src/sheets/seeded.ts'

const KINDS: HatchKind[] = ['along', 'across', 'crossed', 'paired', 'wide', 'dots', 'solid']
/** A ring-shaped area with a bite: concave, with a hole. */
const region = difference(
  polygon(Float64Array.of(0, 0, 60, 0, 60, 40, 34, 40, 30, 18, 26, 40, 0, 40)),
  circle(12, 0.02, 15, 14)
)

function length(lines: readonly Float64Array[]): number {
  let sum = 0
  for (const l of lines)
    for (let k = 2; k < l.length; k += 2) sum += Math.hypot(l[k]! - l[k - 2]!, l[k + 1]! - l[k - 1]!)
  return sum
}

describe('hatching', () => {
  it('stays inside its area, hole and notch left free', () => {
    for (const kind of KINDS) {
      for (const l of hatchLines(region.rings, { kind, seed: 2, angleDeg: 17 })) {
        for (let k = 0; k < l.length; k += 2) {
          const on = inside(region, l[k]!, l[k + 1]!) || nearest(region, l[k]!, l[k + 1]!).distanceMm < 0.02
          expect(on, `${kind} at ${l[k]}, ${l[k + 1]}`).toBe(true)
        }
      }
    }
  })

  // Cavalieri: lines a distance s apart are together as long as the area over s; the error is of the order of
  // the edge over s. Both ways for crossed lines.
  it('covers the area evenly: length of lines times spacing is the area', () => {
    const wide = length(hatchLines(region.rings, { kind: 'wide' })) * WIDE_MM
    const crossed = (length(hatchLines(region.rings, { kind: 'crossed' })) * CROSSED_MM) / 2
    expect(wide / area(region)).toBeCloseTo(1, 1)
    expect(crossed / area(region)).toBeCloseTo(1, 1.5)
  })

  it('keeps lines at least 0.7 mm apart (ISO 128-3)', () => {
    for (const kind of ['wide', 'crossed', 'paired'] as const) {
      const at45 = hatchLines([box(0, 0, 50, 50)], { kind }).filter(
        l => (l[3]! - l[1]!) * (l[2]! - l[0]!) > 0
      )
      const offsets = at45.map(l => (l[1]! - l[0]!) / Math.SQRT2).sort((a, b) => a - b)
      for (let k = 1; k < offsets.length; k++)
        expect(offsets[k]! - offsets[k - 1]!).toBeGreaterThanOrEqual(0.7)
    }
  })

  it('runs on from one area of a part to the next', () => {
    for (const kind of ['along', 'wide', 'crossed', 'paired'] as const) {
      const hatch = { kind, seed: 4 }
      const whole = length(hatchLines([box(0, 0, 40, 20)], hatch))
      const halves =
        length(hatchLines([box(0, 0, 17, 20)], hatch)) + length(hatchLines([box(17, 0, 40, 20)], hatch))
      expect(halves / whole, kind).toBeCloseTo(1, 2)
    }
  })

  it('is the same on every run and differs from part to part', () => {
    for (const kind of ['along', 'across'] as const) {
      const once = hatchLines(region.rings, { kind, seed: 1 })
      expect(hatchLines(region.rings, { kind, seed: 1 })).toEqual(once)
      expect(hatchLines(region.rings, { kind, seed: 2 })).not.toEqual(once)
    }
  })
})

describe('lines clipped to an area', () => {
  // The slow way: each line is looked at in 4000 places. What the two differ by is less than a place a crossing.
  it('keep the length that places along them tell, in a star of 300 points with a hole', () => {
    const random = seeded(5)
    const star = Float64Array.from({ length: 600 }, (_, k) => {
      const a = (2 * Math.PI * (k >> 1)) / 300
      const r = (k >> 1) % 2 === 0 ? 30 : 22
      return k % 2 === 0 ? r * Math.cos(a) : r * Math.sin(a)
    })
    const area = difference(polygon(star), circle(20, 0.02, 5, 3))
    const PLACES = 4000
    for (let n = 0; n < 60; n++) {
      const [ax, ay, bx, by] = Array.from({ length: 4 }, () => 80 * random() - 40) as [
        number,
        number,
        number,
        number
      ]
      const line = n % 10 === 0 ? Float64Array.of(ax, ay, bx, ay) : Float64Array.of(ax, ay, bx, by)
      const long = length([line])
      let within = 0
      for (let k = 0; k < PLACES; k++) {
        const t = (k + 0.5) / PLACES
        if (inside(area, ax + t * (bx - ax), line[1]! + t * (line[3]! - line[1]!))) within++
      }
      expect(length(clipLines(area.rings, [line]))).toBeGreaterThan(
        (within / PLACES) * long - (40 * long) / PLACES
      )
      expect(length(clipLines(area.rings, [line]))).toBeLessThan(
        (within / PLACES) * long + (40 * long) / PLACES
      )
    }
  })
})

describe('grain', () => {
  it('stays on its board and is the same on every run', () => {
    for (const sawn of ['flat', 'rift', 'quarter'] as const) {
      const lines = grainLines(region.rings, 12, sawn, 3)
      expect(lines.length).toBeGreaterThan(8)
      expect(grainLines(region.rings, 12, sawn, 3)).toEqual(lines)
      for (const l of lines)
        for (let k = 0; k < l.length; k += 2)
          expect(
            inside(region, l[k]!, l[k + 1]!) || nearest(region, l[k]!, l[k + 1]!).distanceMm < 0.05,
            `${sawn} at ${l[k]}, ${l[k + 1]}`
          ).toBe(true)
    }
  })
})

describe('lines on a sheet', () => {
  it('are cut where an area begins and ends', () => {
    const [a, b] = clipLines([box(10, 0, 20, 10), box(30, 0, 40, 10)], [Float64Array.of(0, 5, 50, 5)])
    expect([...a!]).toEqual([10, 5, 20, 5])
    expect([...b!]).toEqual([30, 5, 40, 5])
  })

  it('lose only points that do not show', () => {
    const random = seeded(8)
    const points = Float64Array.from({ length: 400 }, (_, k) =>
      k % 2 === 0 ? k / 10 : Math.sin(k / 40) + 0.02 * random()
    )
    const thin = thinned(points, 0.1)
    expect(thin.length).toBeLessThan(points.length / 3)
    for (let k = 0; k < points.length; k += 2) {
      let least = Number.POSITIVE_INFINITY
      for (let e = 0; e + 3 < thin.length; e += 2)
        least = Math.min(least, distance(points[k]!, points[k + 1]!, thin.subarray(e, e + 4)))
      expect(least).toBeLessThanOrEqual(0.1 + 1e-9)
    }
    const ring = circle(30, 0.001).rings[0]!
    const coarse = thinnedRing(ring, 0.02)
    expect(coarse.length).toBeLessThan(ring.length / 2)
    expect(area({ rings: [coarse] }) / area({ rings: [ring] })).toBeGreaterThan(0.997)
  })
})

function distance(x: number, y: number, [ax, ay, bx, by]: Float64Array): number {
  const [dx, dy] = [bx! - ax!, by! - ay!]
  const t = Math.min(1, Math.max(0, ((x - ax!) * dx + (y - ay!) * dy) / (dx * dx + dy * dy)))
  return Math.hypot(x - ax! - t * dx, y - ay! - t * dy)
}
