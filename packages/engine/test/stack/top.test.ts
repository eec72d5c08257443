import { describe, expect, it } from 'vitest'
import { area } from '../../src/shape/measure.ts'
import type { Ring } from '../../src/shape/region.ts'
import type { Top } from '../../src/stack/top.ts'
import { areaAbove, ringsAbove, topAt, topFloor, topRange, volumeUnder } from '../../src/stack/top.ts'
import { chance } from './random.ts'
import { wavyOf } from './seeded-shape.ts'

const ring = (points: readonly (readonly [number, number])[]): Ring => Float64Array.from(points.flat())
const box = (x0: number, y0: number, x1: number, y1: number): Ring =>
  ring([
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1]
  ])

const crown = (rise: number, angle = 0, half = 50): Top => ({
  kind: 'crown',
  edge: 20,
  rise,
  cx: 0,
  cy: 0,
  nx: -Math.sin(angle),
  ny: Math.cos(angle),
  half
})
const grid = (rises: readonly (readonly number[])[], step = 20, x0 = -40, y0 = -40): Top => ({
  kind: 'grid',
  edge: 20,
  x0,
  y0,
  dx: step,
  dy: step,
  columns: rises[0]!.length,
  rows: rises.length,
  rises: Float64Array.from(rises.flat())
})

function seededTops(): { top: Top; rings: Ring[]; name: string }[] {
  const c = chance(99)
  return Array.from({ length: 40 }, (_, k) => {
    const rings = [
      ring(
        wavyOf([c.span(-20, 20), c.span(-20, 20)], c.span(20, 60), c.span(20, 60), c.whole(5, 40), [
          { k: 5, size: 0.2, phase: k }
        ])
      )
    ]
    const rises = Array.from({ length: c.whole(2, 6) }, () => [0])
    const columns = c.whole(2, 6)
    const top =
      k % 2 === 0
        ? crown(c.span(-5, 5), c.span(0, 6.28), c.span(20, 60))
        : grid(
            rises.map(() => Array.from({ length: columns }, () => c.span(-3, 4))),
            c.span(8, 30)
          )
    return { top, rings, name: `case ${k}, ${top.kind}` }
  })
}

describe('the top of a timber', () => {
  it('holds its lowest and highest place, found on a fine raster of points inside', () => {
    for (const { top, rings, name } of seededTops()) {
      const { low, high } = topRange(top, rings)
      let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
      // Points along the edge and towards its middle: it is star-shaped.
      const [outline] = rings as [Ring]
      const n = outline.length / 2
      const middle = [0, 1].map(o => outline.filter((_, k) => k % 2 === o).reduce((a, b) => a + b, 0) / n)
      for (let k = 0; k < n; k++) {
        const m = (k + 1) % n
        for (let s = 0; s < 20; s++) {
          for (let r = 0; r <= 60; r++) {
            const at = (o: number) => {
              const edge = outline[2 * k + o]! + (s / 20) * (outline[2 * m + o]! - outline[2 * k + o]!)
              return middle[o]! + (r / 60) * (edge - middle[o]!)
            }
            const z = topAt(top, at(0), at(1))
            least = Math.min(least, z)
            most = Math.max(most, z)
          }
        }
      }
      expect(least, name).toBeGreaterThanOrEqual(low - 1e-9)
      expect(most, name).toBeLessThanOrEqual(high + 1e-9)
      // And not by much: the raster comes within a millimetre or two of every place.
      expect(least - low, name).toBeLessThan(0.6)
      expect(high - most, name).toBeLessThan(0.6)
      expect(topFloor(top)).toBeLessThanOrEqual(low + 1e-9)
    }
  })

  it('does not count measured points that lie outside the outline', () => {
    const rises = [
      [9, 9, 9, 9, 9],
      [9, 0, 1, 0, 9],
      [9, 1, 2, 1, 9],
      [9, 0, 1, 0, 9],
      [9, 9, 9, 9, 9]
    ]
    expect(topRange(grid(rises), [box(-20, -20, 20, 20)])).toEqual({ low: 20, high: 22 })
    // A hole over the middle takes the highest place away.
    const hole = Float64Array.from(box(-10, -10, 10, 10))
    const turned = ring([
      [hole[0]!, hole[1]!],
      [hole[6]!, hole[7]!],
      [hole[4]!, hole[5]!],
      [hole[2]!, hole[3]!]
    ])
    expect(topRange(grid(rises), [box(-20, -20, 20, 20), turned]).high).toBeCloseTo(21.5, 9)
  })

  it('cut level encloses the area that it says lies above', () => {
    for (const { top, rings, name } of seededTops()) {
      const { low, high } = topRange(top, rings)
      for (const share of [-0.1, 0.05, 0.35, 0.6, 0.95, 1.1]) {
        const z = low + share * (high - low)
        const above = areaAbove(top, rings, z)
        const drawn = area({ rings: ringsAbove(top, rings, z) })
        // Corners move onto the clipping grid, 1e-4 mm along some hundred millimetres of edge.
        expect(Math.abs(above - drawn), `${name} at ${share}`).toBeLessThan(0.1)
      }
      expect(areaAbove(top, rings, high + 1)).toBe(0)
    }
  })

  it('bounds a volume whose slope is the area above', () => {
    for (const { top, rings, name } of seededTops()) {
      const { low, high } = topRange(top, rings)
      // A top that is level all over has its whole area at one height, and no slope there.
      if (high - low < 1e-6) continue
      for (const share of [-0.2, 0.21, 0.53, 0.87]) {
        const z = low + share * (high - low)
        const h = 1e-4 * (high - low)
        const slope = (volumeUnder(top, rings, z + h) - volumeUnder(top, rings, z - h)) / (2 * h)
        expect(Math.abs(slope - areaAbove(top, rings, z)), `${name} at ${share}`).toBeLessThan(0.5)
      }
    }
  })

  it('of a crown goes on level beyond its width', () => {
    const top = crown(4)
    expect(topAt(top, 0, 0)).toBe(24)
    expect(topAt(top, 0, 25)).toBeCloseTo(20 + 4 * 0.75, 12)
    expect(topAt(top, 7, 50)).toBe(20)
    expect(topAt(top, 7, 80)).toBe(20)
    // 100 × 160: under the crown 20 + 2/3·4, beside it 20.
    const whole = volumeUnder(top, [box(-50, -80, 50, 80)], 99)
    expect(whole).toBeCloseTo(100 * 100 * (20 + 8 / 3) + 100 * 60 * 20, 6)
  })

  it('at the very edge of a crown or hollow draws no bad number', () => {
    for (const rise of [0.88, -0.88, 0]) {
      for (const z of [20 + rise, 20 + rise + 1e-15, 20 + rise - 1e-15, 20, 20 - 1e-15]) {
        const rings = ringsAbove(crown(rise), [box(-50, -50, 50, 50)], z)
        for (const r of rings) for (const v of r) expect(Number.isFinite(v)).toBe(true)
      }
    }
  })
})
