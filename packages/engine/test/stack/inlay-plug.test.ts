import { describe, expect, it } from 'vitest'
import { circle, polygon, rectangle } from '../../src/shape/build.ts'
import { difference } from '../../src/shape/combine.ts'
import { edgeDistance, edgeTree } from '../../src/shape/edge-tree.ts'
import { area, perimeter } from '../../src/shape/measure.ts'
import { offset } from '../../src/shape/offset.ts'
import type { Region } from '../../src/shape/region.ts'
import { inlayPair, plugOf } from '../../src/stack/inlay-plug.ts'

const TOL = 0.01
const round = { join: 'round', tolMm: TOL / 4 } as const

// Every place along the edges, close together.
function* along(region: Region) {
  for (const ring of region.rings)
    for (let k = 0; k < ring.length; k += 2) {
      const j = (k + 2) % ring.length
      const n = Math.max(1, Math.ceil(Math.hypot(ring[j]! - ring[k]!, ring[j + 1]! - ring[k + 1]!) / 0.3))
      for (let i = 0; i < n; i++)
        yield [
          ring[k]! + ((ring[j]! - ring[k]!) * i) / n,
          ring[k + 1]! + ((ring[j + 1]! - ring[k + 1]!) * i) / n
        ] as const
    }
}

const L = polygon(Float64Array.of(0, 0, 40, 0, 40, 14, 16, 14, 16, 44, 0, 44))
const star = polygon(
  Float64Array.from(
    Array.from({ length: 10 }, (_, k) => {
      const [a, r] = [(k * Math.PI) / 5, k % 2 === 0 ? 30 : 16]
      return [r * Math.cos(a), r * Math.sin(a)]
    }).flat()
  )
)
const ring = polygon(rectangle(60, 40, 0, TOL).rings[0]!, [rectangle(20, 12, 0, TOL).rings[0]!])

describe('an inlay and its plug', () => {
  for (const [name, shape] of [
    ['L', L],
    ['star', star],
    ['frame', ring]
  ] as const)
    for (const [across, gap] of [
      [3, 0.1],
      [6, 0.3]
    ] as const)
      it(`${name}: a cutter of ${across} leaves a gap of ${gap} all round, and can make both`, () => {
        const { pocket, plug } = inlayPair(shape, across, gap, TOL)
        const walls = edgeTree(pocket.rings)
        for (const [x, y] of along(plug)) expect(Math.abs(edgeDistance(walls, x, y) - gap)).toBeLessThan(TOL)
        const sides = edgeTree(plug.rings)
        for (const [x, y] of along(pocket))
          expect(Math.abs(edgeDistance(sides, x, y) - gap)).toBeLessThan(TOL)
        // A cutter within the pocket, and one outside the plug, reach every place of the edge: rolled, nothing is left.
        const r = across / 2
        const rolled = offset(offset(pocket, -r, round), r, round)
        const filled = offset(offset(plug, r, round), -r, round)
        expect(area(difference(pocket, rolled))).toBeLessThan(perimeter(pocket) * TOL)
        expect(area(difference(filled, plug))).toBeLessThan(perimeter(plug) * TOL)
        // And the drawn shape could not have been: its corners are sharp.
        const drawn = offset(offset(shape, -r, round), r, round)
        expect(area(difference(shape, drawn))).toBeGreaterThan(0.1 * r * r)
      })

  it('of a rectangle has round corners by closed form', () => {
    const { pocket, plug } = inlayPair(rectangle(40, 30, 0, TOL), 6, 0.2, TOL)
    // ab − (4 − π)r², corners 3 and 3 − 0.2.
    expect(area(pocket)).toBeCloseTo(1200 - (4 - Math.PI) * 9, 1)
    expect(area(plug)).toBeCloseTo(39.6 * 29.6 - (4 - Math.PI) * 2.8 ** 2, 1)
    expect(area(plugOf(rectangle(40, 30, 0, TOL), 6, 0.2))).toBeCloseTo(area(plug), 6)
  })

  it('of a disc is a smaller disc; too small for the cutter there is none', () => {
    expect(area(plugOf(circle(20, 0.002), 6, 0.25))).toBeCloseTo((Math.PI * 19.5 ** 2) / 4, 0)
    expect(plugOf(circle(5, 0.002), 6, 0.1).rings).toEqual([])
    expect(() => plugOf(circle(5, 0.002), 0, 0.1)).toThrow('cutter')
    expect(() => plugOf(circle(5, 0.002), 1, -0.1)).toThrow('gap')
  })
})
