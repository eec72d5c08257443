import { describe, expect, it } from 'vitest'
import { runColumn } from '../../src/resin/column.ts'
import { type ResinResult, resinOf } from '../../src/resin/column-result.ts'
import type { ResinModel } from '../../src/resin/model.ts'
import { explicitColumn, type TwinLayer } from './explicit.ts'
import { altered, CLASSES } from './sets.ts'

/** The same resin in the twin's own words. */
function twinResin(resin: ResinModel): NonNullable<TwinLayer['resin']> {
  const { kinetics: k, flow, bulk } = resin
  return {
    k1: k.k2At25PerS * k.k1OverK2At25,
    k2: k.k2At25PerS,
    e1: k.e1JPerMol,
    e2: k.e2JPerMol,
    m: k.m,
    n: k.n,
    rhoH: bulk.liquidKgM3 * k.heatJPerKg,
    gel: k.gelConversion,
    tg: k.diffusion ? [k.tg0C, k.tgInfC, k.lambda] : null,
    eta: [flow.eta25PaS, flow.etaEJPerMol, flow.c1, flow.c2]
  }
}

const FINE = { errorK: 0.01, errorConversion: 3e-4, change: 0.01, longestS: 900 }

function compare(
  name: string,
  ours: ResinResult,
  twin: ReturnType<typeof explicitColumn>,
  from: number
): void {
  const { temp, conversion } = ours.final
  let offK = 0
  let off = 0
  for (let i = 0; i < temp.value.length; i++) {
    offK = Math.max(offK, Math.abs(temp.value[i]! - twin.tempC[from + i]!))
    off = Math.max(off, Math.abs(conversion.value[i]! - twin.conversion[from + i]!))
  }
  expect(offK, `${name}: temperature`).toBeLessThan(0.05)
  expect(off, `${name}: conversion`).toBeLessThan(1e-3)
  expect(Math.abs(ours.peakC - twin.peakC), `${name}: peak`).toBeLessThan(0.1)
  expect(Math.abs(ours.firstGelS! / twin.firstGelS - 1), `${name}: gel`).toBeLessThan(1e-3)
}

describe('the column against its slow explicit twin on the same grid', () => {
  for (const multiplier of [1, 3])
    it(`slab of deep resin on a board, k(α), diffusion limit, daily air, liquid multiplier ${multiplier}`, () => {
      const resin = CLASSES.deep
      const airC = (t: number): number => 22 + 3 * Math.sin((2 * Math.PI * t) / 86_400)
      const untilS = 20 * 3600
      const result = runColumn({
        shape: 'slab',
        layers: [
          { kind: 'inert', thicknessMm: 18, cells: 4, kWmK: 0.12, rhoCpJm3K: 1.19e6, startC: 22 },
          { kind: 'resin', thicknessMm: 50, cells: 12, resin, startC: 24, kLiquidMultiplier: multiplier }
        ],
        floor: { kind: 'convective', hWm2K: 6, ambientC: airC },
        top: { kind: 'convective', hWm2K: 9, ambientC: airC },
        untilS,
        control: FINE
      })
      const twin = explicitColumn(
        'slab',
        [
          { cells: 4, widthM: 0.018 / 4, rhoCp: 1.19e6, startC: 22, k: 0.12 },
          {
            cells: 12,
            widthM: 0.05 / 12,
            rhoCp: 1100 * 1800,
            startC: 24,
            k: 0.17,
            kSlope: 0.04,
            multiplier,
            resin: twinResin(resin)
          }
        ],
        { h: 6, airC },
        { h: 9, airC },
        4,
        untilS / 4
      )
      compare(`multiplier ${multiplier}`, resinOf(result), twin, 4)
    })

  for (const shape of ['cylinder', 'sphere'] as const)
    it(`${shape} of a resin with exponents that are no whole numbers, through its peak`, () => {
      const resin = altered(CLASSES.medium, {}, { m: 0.813, n: 1.74 })
      const untilS = 5 * 3600
      const result = runColumn({
        shape,
        layers: [{ kind: 'resin', thicknessMm: 12, cells: 10, resin, startC: 25 }],
        floor: { kind: 'insulated' },
        top: { kind: 'convective', hWm2K: 9, ambientC: 25 },
        untilS,
        control: FINE
      })
      const layer = { cells: 10, widthM: 0.0012, rhoCp: 1100 * 1800, startC: 25, k: 0.17, kSlope: 0.04 }
      const twin = explicitColumn(
        shape,
        [{ ...layer, resin: twinResin(resin) }],
        { h: 0, airC: () => 25 },
        { h: 9, airC: () => 25 },
        0.5,
        untilS / 0.5
      )
      compare(shape, resinOf(result), twin, 0)
    })
})
