import { describe, expect, it } from 'vitest'
import { find } from '../../src/catalogue/find.ts'
import { LONGITUDINAL_OVER_BENDING, TIMBERS } from '../../src/catalogue/timber.ts'
import {
  ELASTIC,
  ELASTIC_GENERIC,
  elasticOf,
  POISSON_DOUGLAS_FIR
} from '../../src/catalogue/timber-elastic.ts'
import { fixture } from './fixture.ts'

const lines = fixture('elastic.txt').trim().split('\n')

describe('elastic ratios', () => {
  it('are those of the published table, cell by cell', () => {
    expect(lines).toHaveLength(22)
    expect(ELASTIC).toHaveLength(22)
    for (const [i, line] of lines.entries()) {
      const words = line.split(' ')
      const published = words.slice(-5).map(cell => (cell === '-' ? null : Number(cell)))
      const row = ELASTIC[i]!
      expect(
        [
          row.tangentialRatio,
          row.radialRatio,
          row.shearLongRadialRatio,
          row.shearLongTangentialRatio,
          row.shearRadialTangentialRatio
        ],
        row.id
      ).toEqual(published)
      // The same species: each word of the table's name is in ours.
      for (const word of words.slice(0, -5)) {
        expect(row.name.toLowerCase(), line).toContain(word.toLowerCase())
      }
    }
  })

  it('belong to timbers of the catalogue', () => {
    for (const row of ELASTIC) expect(find('timber', row.id)?.id).toBe(row.id)
  })

  it('say which were read', () => {
    expect(ELASTIC.filter(r => r.confidence === 'read').map(r => r.id)).toEqual(['douglas-fir-coast'])
  })

  it('fall back on round ones, inside the spread that they state', () => {
    expect(elasticOf('walnut-black').radialRatio).toBe(0.106)
    expect(elasticOf('no-such-timber')).toBe(ELASTIC_GENERIC)
    for (const row of ELASTIC) {
      expect(row.tangentialRatio / ELASTIC_GENERIC.tangentialRatio).toBeGreaterThanOrEqual(0.25)
      expect(row.tangentialRatio / ELASTIC_GENERIC.tangentialRatio).toBeLessThanOrEqual(1.5)
      expect(row.radialRatio / ELASTIC_GENERIC.radialRatio).toBeGreaterThanOrEqual(0.45)
      expect(row.radialRatio / ELASTIC_GENERIC.radialRatio).toBeLessThanOrEqual(2)
    }
  })

  // Maxwell's reciprocity of an elastic solid: ν_ij/E_i = ν_ji/E_j. Measured values keep it roughly.
  it('agree with Poisson’s ratios of Douglas-fir by reciprocity to less than a factor of two', () => {
    const { tangentialRatio: t, radialRatio: r } = elasticOf('douglas-fir-coast')
    const p = POISSON_DOUGLAS_FIR
    const near = (a: number, b: number): void => expect(Math.max(a / b, b / a)).toBeLessThan(1.9)
    near(p.lr * r, p.rl)
    near(p.lt * t, p.tl)
    near(p.rt * (t / r), p.tr)
  })

  // Wood Handbook Table 5-3b, million psi × 6.895, as read: GPa at 12 %.
  it('stand on the bending moduli as tabulated, which the ratio 1.10 turns into the modulus along the grain', () => {
    const read: Readonly<Record<string, number>> = {
      'ash-white': 12,
      'beech-american': 11.9,
      'birch-yellow': 13.9,
      'cherry-black': 10.3,
      'elm-american': 9.2,
      'basswood-american': 10.1,
      'alder-red': 9.5,
      'maple-red': 11.3
    }
    for (const [id, gPa] of Object.entries(read)) {
      expect(TIMBERS.find(t => t.id === id)!.modulus12MPa! / 1000, id).toBeCloseTo(gPa, 1)
    }
    expect(LONGITUDINAL_OVER_BENDING).toBe(1.1)
  })
})
