import { describe, expect, it } from 'vitest'
import { pocketPath } from '../../../src/cuts/area/pocket-path.ts'
import { runOut } from '../../../src/cuts/area/run-out.ts'
import { rectangle } from '../../../src/shape/build.ts'
import { area } from '../../../src/shape/measure.ts'
import { eachPlace, flat, job, painted, pathOf } from './painted.ts'

describe('a rebate at the edge of the piece', () => {
  const piece = rectangle(100, 60, 0, 0.01)
  // 20 wide along a part of the right edge.
  const rebate = rectangle(20, 40, 0, 0.01, 40, 0)

  it('is cut out to the edge, its corners there square, the piece beside it whole', () => {
    const region = runOut(rebate, piece, 8, 0.04)
    const { moves } = pathOf(pocketPath(job(flat(8), 4), region))
    const picture = painted(moves, 4, [20, -32, 54, 32])
    let cornersLeft = 0
    eachPlace(picture, (x, y, z) => {
      if (x > 49.95) return
      const inRebate = x > 30.05 && Math.abs(y) < 19.95
      // The inner corners stay as round as the cutter; those at the edge do not.
      if (inRebate && z !== -4) {
        cornersLeft++
        expect(x).toBeLessThan(34.1)
      }
      if (x < 29.95 || Math.abs(y) > 20.05) expect(z).toBe(Number.POSITIVE_INFINITY)
    })
    expect(cornersLeft).toBeGreaterThan(0)
  })

  it('is as it was where it lies inside the piece', () => {
    const inside = rectangle(20, 20, 0, 0.01)
    expect(runOut(inside, piece, 8, 0.04)).toBe(inside)
    // A strip a diameter wide beside an edge along the whole of its side, round at its ends.
    expect(area(runOut(rebate, piece, 8, 0.04)) - area(rebate)).toBeCloseTo(8 * 40 + (Math.PI * 64) / 2, 0)
  })
})
