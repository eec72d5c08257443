import { describe, expect, it } from 'vitest'
import { quickCalendar, solveCalendar } from '../../../src/calendar/solve/solve.ts'
import { randomProblem } from './random.ts'
import { wrongs } from './verify.ts'

const COUNT = Number(process.env['CASTWRIGHT_CALENDARS'] ?? 200)

describe('seeded calendars through a verifier of its own', () => {
  it(`keeps every window, hour and resource in ${COUNT}`, () => {
    const kinds = { placed: 0, clash: 0, unsettled: 0 }
    for (let seed = 1; seed <= COUNT; seed++) {
      const p = randomProblem(seed, 4 + (seed % 27), 1 + (seed % 3))
      const quick = quickCalendar(p)
      const full = solveCalendar(p, { nodes: 24, moves: 24, asks: 0 })
      kinds[full.kind]++
      for (const s of [quick, full]) if (s.kind === 'placed') expect(wrongs(p, s), `seed ${seed}`).toEqual([])
      if (
        quick.kind === 'placed' &&
        full.kind === 'placed' &&
        full.late.length === 0 &&
        quick.late.length === 0
      )
        expect(full.finishMin).toBeLessThanOrEqual(quick.finishMin)
    }
    expect(kinds.placed).toBeGreaterThan(0.7 * COUNT)
    expect(kinds.unsettled).toBe(0)
  }, 600_000)
})
