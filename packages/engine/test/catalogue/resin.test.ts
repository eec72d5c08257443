import { describe, expect, it } from 'vitest'
import { RESINS } from '../../src/catalogue/resin.ts'

const classOf = (id: string) => {
  const row = RESINS.find(r => r.id === id)
  if (row?.model == null) throw new Error(`no class ${id}`)
  return { row, ...row.model }
}

/** The second fit: k2 at 25 °C, k1/k2, E1, E2 kJ/mol, J/g, gel, Tg0, Tginf, Pa·s at 25 °C, kJ/mol, C1, C2. */
const SECOND_FIT = {
  deep: [5.0e-5, 0.2, 48, 44, 210, 0.6, -45, 58, 0.35, 52, 4, 2.5],
  medium: [1.4e-4, 0.15, 52, 48, 320, 0.58, -40, 78, 0.7, 55, 3.5, 2],
  thin: [3.2e-4, 0.25, 54, 50, 340, 0.55, -38, 60, 1.1, 57, 3, 2]
} as const

describe('resin classes', () => {
  it('are those of the second fit', () => {
    for (const [id, published] of Object.entries(SECOND_FIT)) {
      const { kinetics: k, flow: f, row } = classOf(id)
      expect(
        [
          k.k2At25PerS,
          k.k1OverK2At25,
          k.e1JPerMol / 1000,
          k.e2JPerMol / 1000,
          k.heatJPerKg / 1000,
          k.gelConversion,
          k.tg0C,
          k.tgInfC,
          f.eta25PaS,
          f.etaEJPerMol / 1000,
          f.c1,
          f.c2
        ],
        id
      ).toEqual(published)
      expect([k.m, k.n, k.lambda], id).toEqual([1, 2, 0.42])
      expect(k.diffusion, id).toEqual({ offsetK: 15, widthK: 6 })
      expect(row.confidence, id).toBe('fitted')
    }
  })

  // Barral et al. 1995: 44 to 57 kJ/mol; the thin class's E1 is inside, its E2 too.
  it('have activation energies inside the published range', () => {
    for (const id of Object.keys(SECOND_FIT)) {
      const { kinetics: k } = classOf(id)
      for (const e of [k.e1JPerMol, k.e2JPerMol]) {
        expect(e).toBeGreaterThanOrEqual(44_000)
        expect(e).toBeLessThanOrEqual(57_000)
      }
    }
  })

  // ISO 3521: S = 100·(cured − liquid)/cured.
  it('shrink by their two densities as they say', () => {
    for (const id of Object.keys(SECOND_FIT)) {
      const { bulk, row } = classOf(id)
      expect((100 * (bulk.curedKgM3 - bulk.liquidKgM3)) / bulk.curedKgM3, id).toBeCloseTo(
        row.shrinkagePct,
        10
      )
      expect(row.shrinkageBandPct[0]).toBeLessThanOrEqual(row.shrinkagePct)
      expect(row.shrinkageBandPct[1]).toBeGreaterThanOrEqual(row.shrinkagePct)
    }
  })

  // A rule of thumb halves the pot life per 10 K; the row admits to 1.7 for the deep class.
  it('answer to temperature by the factor that the row states', () => {
    const { kinetics: k, row } = classOf('deep')
    const factor = Math.exp((k.e2JPerMol / 8.314462618) * (1 / 293.15 - 1 / 303.15))
    expect(factor).toBeGreaterThan(1.7)
    expect(factor).toBeLessThan(1.9)
    expect(row.note).toMatch(/1\.7/)
  })

  it('of other families carry no model', () => {
    for (const r of RESINS.filter(r => r.family !== 'epoxy')) expect(r.model, r.id).toBeNull()
  })
})
