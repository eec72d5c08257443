import polygons from 'polygon-clipping'
import { describe, expect, it } from 'vitest'
import { bushFor, bushOffsetMm, openingOf, slotsOf } from '../../../src/cuts/hand/bush.ts'
import { rectangle } from '../../../src/shape/build.ts'
import { area, bounds } from '../../../src/shape/measure.ts'
import { offset } from '../../../src/shape/offset.ts'

const size = (r: ReturnType<typeof openingOf>) => {
  const b = bounds(r)
  return [b.maxX - b.minX, b.maxY - b.minY]
}

describe('guide bush', () => {
  it('bush 14 and bit 8: 3.0 off; 60 × 36 opens 66 × 42 with corners of 7', () => {
    const off = bushOffsetMm(14, 8)
    expect(off).toBe(3)
    const open = openingOf(rectangle(60, 36, 4, 0.005), off, 0.005)
    expect(size(open)[0]).toBeCloseTo(66, 2)
    expect(size(open)[1]).toBeCloseTo(42, 2)
    // A rectangle with corners of 7 holds 66·42 − (4 − π)·7² (closed form).
    expect(area(open)).toBeCloseTo(66 * 42 - (4 - Math.PI) * 49, 0)
  })

  it('what the bit sweeps inside the opening is the pocket, corners of half a bit', () => {
    const [bush, bit] = [17, 6]
    const square = rectangle(50, 30, 0, 0.005)
    const open = openingOf(square, bushOffsetMm(bush, bit), 0.005)
    // The bush runs inside the opening, the bit round its middle: in by B/2, out by b/2.
    const round = { join: 'round', tolMm: 0.002 } as const
    const swept = offset(offset(open, -bush / 2, round), bit / 2, round)
    const expected = rectangle(50, 30, bit / 2, 0.002)
    // An other library's symmetric difference: next to nothing.
    const poly = (r: typeof swept): [number, number][][] =>
      r.rings.map(ring => Array.from({ length: ring.length / 2 }, (_, k) => [ring[2 * k]!, ring[2 * k + 1]!]))
    const apart = polygons.xor(poly(swept), poly(expected))
    const shoelace = apart
      .flat()
      .reduce(
        (sum, ring) =>
          sum +
          Math.abs(
            ring.reduce(
              (s, [x, y], k) => s + x * ring[(k + 1) % ring.length]![1] - y * ring[(k + 1) % ring.length]![0],
              0
            )
          ) /
            2,
        0
      )
    expect(shoelace).toBeLessThan(1)
  })

  it('a groove 12 wide by bush 24 and bit 12: the slot is as wide as the bush', () => {
    const [slot] = slotsOf([Float64Array.of(0, 0, 100, 0)], 12, bushOffsetMm(24, 12), 0.005)
    expect(size(slot!)[1]).toBeCloseTo(24, 2)
    expect(size(slot!)[0]).toBeCloseTo(124, 2)
  })

  it('takes the smallest bush with room for chips', () => {
    expect(bushFor(12, [30, 17, 24])).toBe(17)
    expect(bushFor(14, [17])).toBe(17)
    expect(bushFor(14.1, [17])).toBeNull()
  })

  it('refuses a bit wider than its bush', () => {
    expect(() => bushOffsetMm(10, 12)).toThrow('guide bush is 10 mm; allowed 12 to 500 mm')
  })
})
