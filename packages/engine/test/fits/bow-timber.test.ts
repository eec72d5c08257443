import { describe, expect, it } from 'vitest'
import { TIMBERS } from '../../src/catalogue/timber.ts'
import { ELASTIC } from '../../src/catalogue/timber-elastic.ts'
import { timberElastic } from '../../src/fits/bow-timber.ts'

const mean = (row: readonly (number | null)[]) => {
  const known = row.filter(x => x !== null)
  return known.reduce((a, b) => a + b, 0) / known.length
}

// A timber whose bending modulus is known and whose ratios are not: by the means of table 5-1, two figures.
describe('a timber that was not measured in shear', () => {
  const own = new Set(ELASTIC.map(e => e.id))
  const plain = TIMBERS.find(t => !own.has(t.id) && t.modulus12MPa !== null)!

  it('has the mean of those that were, along the grain', () => {
    const shear = mean(ELASTIC.flatMap(e => [e.shearLongRadialRatio, e.shearLongTangentialRatio]))
    for (const rings of ['flat', 'quarter'] as const) {
      const { e1MPa, g12MPa } = timberElastic(plain, rings)
      expect(g12MPa / e1MPa).toBeCloseTo(shear, 2)
    }
  })

  it('and across it: what turns the grain by 45° asks for', () => {
    const [flat, quarter, rift] = (['flat', 'quarter', 'rift'] as const).map(r => timberElastic(plain, r))
    // The compliance of the 45° direction, solved for the shear in it; ν_RT of Douglas-fir, 0.390 (Wood Handbook, read).
    const [er, et] = [quarter!.e2MPa, flat!.e2MPa]
    const one = 4 / rift!.e2MPa - 1 / er - 1 / et + (2 * 0.39) / er
    expect(1 / one / rift!.e1MPa).toBeCloseTo(mean(ELASTIC.map(e => e.shearRadialTangentialRatio)), 3)
  })
})
