import { describe, expect, it } from 'vitest'
import { linesHere, regionHere, shareOf } from '../../src/cuts/operation/in-position.ts'
import type { Position } from '../../src/cuts/operation/position.ts'
import { circle, rectangle } from '../../src/shape/build.ts'
import { union } from '../../src/shape/combine.ts'
import { area } from '../../src/shape/measure.ts'

const STRIPS = [
  { fromMm: -300, toMm: 20 },
  { fromMm: -20, toMm: 300 }
]
const at = (number: 1 | 2): Position => ({
  number,
  count: 2,
  axis: 'x',
  strips: STRIPS,
  movedMm: number === 1 ? 0 : 280,
  pitchMm: 280,
  travelMm: 360,
  acrossMm: 300,
  middleMm: number === 1 ? -140 : 140,
  stands: [],
  makes: []
})

describe('what is worked in a position', () => {
  it('what a strip holds is worked there whole, in one strip alone', () => {
    for (let x = -290; x <= 290; x += 7)
      expect([shareOf(at(1), x - 5, x + 5), shareOf(at(2), x - 5, x + 5)].sort()).toEqual(['all', 'none'])
    expect(shareOf(at(1), -100, 100)).toBe('part')
    expect(shareOf(null, -1e4, 1e4)).toBe('all')
  })

  it('parts of a region each by themselves; areas by hand', () => {
    const region = union(
      rectangle(400, 10, 0, 0.01, 0, 50),
      circle(30, 0.001, -200, 0),
      circle(30, 0.001, 200, 0)
    )
    const here = area(regionHere(at(1), region))
    // 220 of 400 mm of the bar, one of the two discs.
    expect(here).toBeCloseTo(2200 + Math.PI * 225, 0)
  })

  it('a closed line goes on past its start', () => {
    const ring = Float64Array.of(-100, -50, 100, -50, 100, 50, -100, 50, -100, -50)
    const [one, two] = [linesHere(at(1), [ring], 3), linesHere(at(2), [ring], 3)]
    expect(one).toHaveLength(1)
    expect(two).toHaveLength(1)
    const long = (l: Float64Array) => {
      let sum = 0
      for (let k = 2; k < l.length; k += 2) sum += Math.hypot(l[k]! - l[k - 2]!, l[k + 1]! - l[k - 1]!)
      return sum
    }
    // Way round 600; the overlap of 40 is run twice on both sides.
    expect(long(one[0]!) + long(two[0]!)).toBeCloseTo(600 + 80, 6)
  })
})
