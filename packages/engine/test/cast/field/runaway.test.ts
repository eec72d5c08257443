import { describe, expect, it } from 'vitest'
import { runField } from '../../../src/cast/field/field-run.ts'
import { once } from '../../resin/rows.ts'
import { CLASSES } from '../../resin/sets.ts'
import { explicitField } from './field-twin.ts'
import { KERNELS } from './kernels.ts'
import { type MouldCase, problemOf, twinOf, twinPour } from './mould-case.ts'

/** A block of quick resin on a board, hotter at 200 °C within minutes; steps made for conduction do not follow it. */
const BLOCK: MouldCase = {
  size: [6, 5, 7],
  dxM: 0.01,
  dyM: 0.012,
  dzM: [0.009, 0.009, 0.007, 0.007, 0.007, 0.007, 0.007],
  cell: (ix, iy, iz) => (iz < 2 || ix === 0 || ix === 5 || iy === 0 || iy === 4 ? 0 : 1),
  materials: [
    { kind: 'inert', kWmK: 0.12, rhoCpJm3K: 1.19e6, startC: 24 },
    { kind: 'resin', resin: CLASSES.medium, atS: 0, startC: 24, rateFactor: 6 }
  ],
  films: { floor: 6, side: 8, up: 10, down: 5, sideways: 8 },
  ambientC: () => 24,
  untilS: 1500
}

describe('a runaway', () => {
  // Euler errs in proportion to its step: two small ones, and straight on to none (Richardson).
  const limit = once(() => {
    const at = (dt: number): ReturnType<typeof twinPour> =>
      twinPour(BLOCK, explicitField(twinOf(BLOCK), dt), [1], 0)
    const [coarse, fine] = [at(0.1), at(0.05)]
    return {
      peakC: 2 * fine.peakC - coarse.peakC,
      meanGelS: 2 * fine.meanGelS - coarse.meanGelS,
      stepK: Math.abs(fine.peakC - coarse.peakC)
    }
  })

  for (const [name, make] of KERNELS)
    it(`peaks within 0.5 °C of explicit steps of 0.1 and 0.05 s, extrapolated, ${name} kernel`, () => {
      const { peakC, meanGelS, stepK } = limit()
      expect(peakC).toBeGreaterThan(150)
      expect(stepK).toBeLessThan(1)
      const ours = runField(problemOf(BLOCK), make)
      const pour = ours.pours[0]!
      const text = `${pour.peakC} against ${peakC}, gel ${pour.meanGelS} against ${meanGelS}, ${stepK}`
      expect(Math.abs(pour.peakC - peakC), text).toBeLessThan(0.5)
      expect(Math.abs(pour.meanGelS! / meanGelS - 1), text).toBeLessThan(2e-3)
      expect(Math.abs(ours.energy.closure)).toBeLessThan(1e-3)
    })
})
