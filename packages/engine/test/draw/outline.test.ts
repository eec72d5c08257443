import { describe, expect, it } from 'vitest'
import type { ShapeChange } from '../../src/draw/board.ts'
import { vertexAdded, vertexMoved, vertexRemoved, verticesOf } from '../../src/draw/outline.ts'
import type { ShapeDocument } from '../../src/piece/shape-field.ts'
import { inside, nearest } from '../../src/shape/measure.ts'
import { chance } from '../stack/random.ts'
import { FORMS, regionFor } from './forms.ts'
import { symmetricDifference } from './same-region.ts'

const shapeIn = (c: ShapeChange): ShapeDocument => {
  expect(c).not.toHaveProperty('problem')
  return (c as { shape: ShapeDocument }).shape
}
const problem = (c: ShapeChange) => (c as { problem: string }).problem
const form = (name: string) => FORMS.find(([f]) => f === name)![1]

describe.each(['polygon', 'holes', 'path'])('the points of a %s', name => {
  const { grow: _, ...s } = form(name)
  const before = regionFor(s)

  it('lie on the boundary of its region, each in its place', () => {
    const all = verticesOf(s)
    expect(all.length).toBeGreaterThan(3)
    for (const v of all) expect(Math.abs(nearest(before, v.x, v.y).distanceMm)).toBeLessThan(2e-3)
  })

  it('added change nothing, and taken away again leave what was', () => {
    const c = chance(91)
    for (const v of verticesOf(s)) {
      const t = c.span(0.2, 0.8)
      const more = shapeIn(vertexAdded(s, v.ring, v.index, t))
      // An arc becomes curves: 0.03 % of 20 to 30 mm along it.
      expect(symmetricDifference(regionFor(more), before)).toBeLessThan(name === 'path' ? 3 : 0.3)
      expect(verticesOf(more).filter(w => w.ring === v.ring).length).toBe(
        verticesOf(s).filter(w => w.ring === v.ring).length + 1
      )
      if (v.curved) continue
      const less = shapeIn(vertexRemoved(more, v.ring, v.index + 1))
      expect(symmetricDifference(regionFor(less), before)).toBeLessThan(name === 'path' ? 3 : 1e-9)
    }
  })

  it('moved lie where they were moved to, and all others where they were', () => {
    const c = chance(92)
    for (const v of verticesOf(s)) {
      const to = [v.x + c.span(-1, 1), v.y + c.span(-1, 1)] as const
      const next = shapeIn(vertexMoved(s, v.ring, v.index, to))
      verticesOf(next).forEach((w, k) => {
        const was = verticesOf(s)[k]!
        const wanted = w.ring === v.ring && w.index === v.index ? to : [was.x, was.y]
        expect(Math.hypot(w.x - wanted[0]!, w.y - wanted[1]!)).toBeLessThan(1.6e-3)
      })
    }
  })
})

describe('an outline', () => {
  const square: ShapeDocument = {
    polygon: [
      ['1 in', 0],
      [100, 0],
      [100, 100],
      [0, 100]
    ]
  }

  it('keeps what was typed at points not touched', () => {
    expect(shapeIn(vertexMoved(square, 0, 2, [90, 95])).polygon).toEqual([
      ['1 in', 0],
      [100, 0],
      [90, 95],
      [0, 100]
    ])
    expect(shapeIn(vertexAdded(square, 0, 3, 0.5, [-7, 40])).polygon).toEqual([
      ['1 in', 0],
      [100, 0],
      [100, 100],
      [0, 100],
      [-7, 40]
    ])
  })

  it('is refused where it would cross itself, fold or leave nothing', () => {
    expect(problem(vertexMoved(square, 0, 2, [50, -50]))).toMatch(/^outline crosses itself at/)
    expect(problem(vertexMoved(square, 0, 2, [100, 0]))).toMatch(/two points in the same place/)
    expect(problem(vertexMoved(square, 0, 9, [0, 0]))).toMatch(/no such point/)
    expect(problem(vertexMoved(square, 0, 0, [Number.NaN, 0]))).toMatch(/allowed: within 10000 mm/)
    expect(
      problem(
        vertexRemoved(
          {
            polygon: [
              [0, 0],
              [9, 0],
              [0, 9]
            ]
          },
          0,
          0
        )
      )
    ).toMatch(/at least three/)
    expect(problem(vertexMoved({ circle: 9 }, 0, 0, [0, 0]))).toMatch(/has no points/)
    expect(problem(vertexMoved({ path: 'M0 0H9V9Z' }, 0, 1, [4, -15]))).toBeUndefined()
    expect(problem(vertexMoved({ path: 'M0 0H90V90H0Z' }, 0, 2, [45, 50]))).toMatch(/crosses itself/)
    expect(problem(vertexMoved({ path: 'nonsense' }, 0, 2, [45, 50]))).toMatch(/no such point/)
    const holed: ShapeDocument = {
      polygon: square.polygon!,
      holes: [
        [
          [40, 40],
          [60, 40],
          [50, 60]
        ]
      ]
    }
    expect(problem(vertexMoved(holed, 1, 2, [50, 140]))).toMatch(/a hole would leave/)
    expect(problem(vertexAdded(square, 0, 0, 1))).toMatch(/between 0 and 1/)
  })

  it('finds by the slow way no crossing it let through, and none it invented', () => {
    const c = chance(93)
    /** Twin: every pair of edges that are no neighbours, by the sign of areas. */
    const crosses = (p: [number, number][]) => {
      const n = p.length
      const area = (a: number[], b: number[], d: number[]) =>
        (b[0]! - a[0]!) * (d[1]! - a[1]!) - (b[1]! - a[1]!) * (d[0]! - a[0]!)
      for (let i = 0; i < n; i++)
        for (let j = i + 2; j < n; j++) {
          if (i === 0 && j === n - 1) continue
          const [a, b, d, e] = [p[i]!, p[(i + 1) % n]!, p[j]!, p[(j + 1) % n]!]
          if (area(a, b, d) * area(a, b, e) < 0 && area(d, e, a) * area(d, e, b) < 0) return true
        }
      return false
    }
    let refused = 0
    for (let k = 0; k < 400; k++) {
      const star = Array.from({ length: 14 }, (_, i): [number, number] => {
        const r = c.span(40, 100)
        return [
          Math.round(r * Math.cos((2 * Math.PI * i) / 14)),
          Math.round(r * Math.sin((2 * Math.PI * i) / 14))
        ]
      })
      const index = c.whole(0, 13)
      const to = [c.whole(-120, 120) + 0.377, c.whole(-120, 120) + 0.291] as const
      const got = vertexMoved({ polygon: star }, 0, index, to)
      const want = crosses(star.map((p, i) => (i === index ? [to[0], to[1]] : p)))
      expect('problem' in got, JSON.stringify([star, index, to])).toBe(want)
      if (want) refused++
    }
    expect(refused).toBeGreaterThan(50)
  })

  it('of 2000 points takes a change within 5 ms', () => {
    const polygon = Array.from({ length: 2000 }, (_, k): [number, number] => {
      const a = (2 * Math.PI * k) / 2000
      const r = 300 + 8 * Math.sin(40 * a)
      return [r * Math.cos(a), r * Math.sin(a)]
    })
    const times = Array.from({ length: 15 }, (_, k) => {
      const t = performance.now()
      shapeIn(vertexMoved({ polygon }, 0, 100 * k, [polygon[100 * k]![0] + 0.01, polygon[100 * k]![1]]))
      return performance.now() - t
    }).sort((a, b) => a - b)
    // The best of fifteen: what the work costs, whatever else the machine does.
    expect(times[0]).toBeLessThan(5)
  })

  it('holds a place that was given to it', () => {
    const region = regionFor(shapeIn(vertexMoved(square, 0, 2, [150, 150])))
    expect(inside(region, 140, 140)).toBe(true)
    expect(inside(region, 151, 151)).toBe(false)
  })
})
