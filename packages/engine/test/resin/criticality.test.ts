import { describe, expect, it } from 'vitest'
import {
  criticalDelta,
  frankKamenetskiiDelta,
  SEMENOV_CRITICAL,
  semenovNumber
} from '../../src/resin/frank-kamenetskii.ts'
import { lumpedRunsAway, rows, runsAway } from './criticality.evidence.ts'
import { checkRows } from './rows.ts'

checkRows(rows)

describe('thermal explosion', () => {
  it('stays 2 % below the critical number and runs away 2 % above it, in each shape', () => {
    for (const shape of ['slab', 'cylinder', 'sphere'] as const) {
      expect(runsAway(shape, 0.98 * criticalDelta(shape)), shape).toBe(false)
      expect(runsAway(shape, 1.02 * criticalDelta(shape)), shape).toBe(true)
    }
    expect(lumpedRunsAway(0.98 * SEMENOV_CRITICAL)).toBe(false)
    expect(lumpedRunsAway(1.02 * SEMENOV_CRITICAL)).toBe(true)
  })

  it('goes over into Semenov when the film is the only resistance: (j + 1)·Bi/e', () => {
    for (const [shape, j] of [
      ['slab', 0],
      ['cylinder', 1],
      ['sphere', 2]
    ] as const)
      expect((criticalDelta(shape, 1e-4) * Math.E) / ((j + 1) * 1e-4)).toBeCloseTo(1, 3)
  })

  it('rises with the Biot number towards the fixed wall', () => {
    for (const shape of ['slab', 'cylinder', 'sphere'] as const) {
      let before = 0
      for (const biot of [0.01, 0.1, 1, 10, 100, 1e4, Number.POSITIVE_INFINITY]) {
        const now = criticalDelta(shape, biot)
        expect(now, `${shape} ${biot}`).toBeGreaterThan(before)
        before = now
      }
    }
    expect(() => criticalDelta('slab', 0)).toThrow(/Biot number is 0/)
  })

  it('has δ = ψ·Bi·(shape) by definition of its two numbers', () => {
    const body = { eJPerMol: 52_000, tempK: 298, heatWm3: 2500 }
    const delta = frankKamenetskiiDelta({ ...body, lengthM: 0.05, kWmK: 0.2 })
    const psi = semenovNumber({ ...body, volumePerAreaM: 0.05, hWm2K: 9 })
    expect(delta / psi).toBeCloseTo((9 * 0.05) / 0.2, 10)
    // critical rise R·T0²/E is 14.2 K at 52 kJ/mol and 298 K (computed beforehand)
    expect((2500 * 0.05) / 9 / psi).toBeCloseTo(14.2, 1)
  })
})
