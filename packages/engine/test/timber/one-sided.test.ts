import { describe, expect, it } from 'vitest'
import { ONE_SIDED_SLOPE, oneSidedHollowMm } from '../../src/timber/one-sided.ts'

/** The slow obvious twin: explicit diffusion into a slab with one face held and the other tight; its greatest slope. */
function explicit(cells: number): { share: number; fo: number } {
  const dx = 1 / cells
  const dt = 0.4 * dx * dx
  let u = new Float64Array(cells)
  let best = { share: 0, fo: 0 }
  for (let fo = 0; fo < 0.3; fo += dt) {
    const next = u.slice()
    let moment = 0
    for (let i = 0; i < cells; i++) {
      const left = i === 0 ? 2 * (1 - u[0]!) : u[i - 1]! - u[i]!
      const right = i === cells - 1 ? 0 : u[i + 1]! - u[i]!
      next[i] = u[i]! + ((left + right) * dt) / (dx * dx)
      moment += next[i]! * ((i + 0.5) * dx - 0.5) * dx
    }
    u = next
    if (Math.abs(12 * moment) > best.share) best = { share: Math.abs(12 * moment), fo: fo + dt }
  }
  return best
}

describe('a board open on one face', () => {
  it('has its greatest slope as explicit diffusion finds it, and at that time', () => {
    const twin = explicit(120)
    expect(ONE_SIDED_SLOPE.share).toBeCloseTo(twin.share, 3)
    expect(ONE_SIDED_SLOPE.fo).toBeCloseTo(twin.fo, 2)
  })

  it('goes hollow less than with the whole change between its faces, by the square of its width', () => {
    const walnut = { coefficientPerPct: 0.00274, moistureChangePct: 3, widthMm: 150, thicknessMm: 20 }
    // The full difference, linear through it, gives 1.16 mm (cup.ts).
    const f = oneSidedHollowMm(walnut)
    expect(f).toBeCloseTo(1.156 * ONE_SIDED_SLOPE.share, 2)
    expect(oneSidedHollowMm({ ...walnut, widthMm: 300 })).toBeCloseTo(4 * f, 9)
    expect(oneSidedHollowMm({ ...walnut, moistureChangePct: -3 })).toBe(f)
    expect(oneSidedHollowMm({ ...walnut, moistureChangePct: 0 })).toBe(0)
  })
})
