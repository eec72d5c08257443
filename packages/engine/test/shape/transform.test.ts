import { describe, expect, it } from 'vitest'
import { circle, polygon, rectangle } from '../../src/shape/build.ts'
import { area, bounds, centroid, inside, ringArea } from '../../src/shape/measure.ts'
import type { Region } from '../../src/shape/region.ts'
import { mirrorX, mirrorY, rotate, scale, translate } from '../../src/shape/transform.ts'
import { randomFrom, ringOf } from './random.ts'

const l = polygon(ringOf([0, 0], [30, 0], [30, 10], [10, 10], [10, 40], [0, 40]), [
  ringOf([2, 2], [6, 2], [6, 6], [2, 6])
])
const senses = (r: Region) => r.rings.map(ring => Math.sign(ringArea(ring)))

describe('transforms', () => {
  it('move points as they say', () => {
    const random = randomFrom(1)
    for (let k = 0; k < 200; k++) {
      const [x, y] = [40 * random(), 50 * random()] as const
      const was = inside(l, x, y)
      expect(inside(translate(l, 3, -4), x + 3, y - 4)).toBe(was)
      expect(inside(mirrorX(l), -x, y)).toBe(was)
      expect(inside(mirrorX(l, 7), 14 - x, y)).toBe(was)
      expect(inside(mirrorY(l), x, -y)).toBe(was)
      expect(inside(mirrorY(l, 20), x, 40 - y)).toBe(was)
      expect(inside(scale(l, 3), 3 * x, 3 * y)).toBe(was)
      const a = (37 * Math.PI) / 180
      expect(
        inside(rotate(l, 37), x * Math.cos(a) - y * Math.sin(a), x * Math.sin(a) + y * Math.cos(a))
      ).toBe(was)
    }
  })

  it('keep outer rings counter-clockwise, holes clockwise, and areas', () => {
    for (const t of [translate(l, 5, 5), rotate(l, 33), mirrorX(l), mirrorY(l, 4)]) {
      expect(senses(t)).toEqual([1, -1])
      expect(area(t)).toBeCloseTo(area(l), 10)
    }
    expect(area(scale(l, 2))).toBe(4 * area(l))
  })

  it('turn exactly by quarters, also by many and backwards', () => {
    const box = rectangle(30, 10, 0, 0.1, 20, 0)
    expect(bounds(rotate(box, 90))).toEqual({ minX: -5, maxX: 5, minY: 5, maxY: 35 })
    expect(rotate(box, 450)).toEqual(rotate(box, 90))
    expect(rotate(box, -270)).toEqual(rotate(box, 90))
    expect(rotate(rotate(box, 90), 270)).toEqual(box)
    expect(centroid(rotate(box, 180, 20, 0))).toEqual({ x: 20, y: 0 })
    expect(rotate(box, 360)).toEqual(box)
  })

  it('undo each other', () => {
    expect(mirrorX(mirrorX(l, 3), 3)).toEqual(l)
    expect(translate(translate(l, 7, 9), -7, -9)).toEqual(l)
    const back = rotate(rotate(l, 12.5, 3, 4), -12.5, 3, 4)
    l.rings.forEach((ring, i) => {
      ring.forEach((v, k) => {
        expect(back.rings[i]![k]).toBeCloseTo(v, 11)
      })
    })
  })

  it('refuse factors and angles that are none', () => {
    for (const bad of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => scale(l, bad)).toThrow(/factor/)
    expect(() => rotate(circle(1, 0.1), Number.NaN)).toThrow(/angle/)
  })
})
