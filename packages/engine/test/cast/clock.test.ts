import { describe, expect, it } from 'vitest'
import type { PourCast } from '../../src/cast/cast.ts'
import { clockOf } from '../../src/cast/clock.ts'
import type { Step } from '../../src/steps/step.ts'

const HOUR = 60
const DAY = 24 * HOUR

const cast = (hardMin: number): PourCast =>
  ({ windows: { demould: { open: hardMin }, sand: { open: hardMin } } }) as PourCast
const pour = (index: number, kind: string) => ({
  kind: 'pour' as const,
  pour: { id: `pour ${index}`, at: '', index, value: { kind } }
})
const fill = { kind: 'fill' as const, marking: { id: 'scale', at: '', index: 0, value: {} } }
const sandWait = { kind: 'wait' as const, why: 'sand' as const }

/** How long the wait at the end of these steps is taken to last, min. */
function lastWait(
  steps: readonly object[],
  casts: readonly (PourCast | null)[],
  use: 'thin' | 'medium' | 'deep' | 'none' = 'thin'
): number {
  const numbered = steps.map((s, i) => ({ number: i + 1, ...s })) as unknown as Step[]
  return clockOf(numbered, casts, [], [{ record: { use } }]).at(-1)!.waitMin
}

describe('the wait before a filling is sanded', () => {
  // The body of the piece is a deep casting that leaves its mould after five days.
  const body = [pour(0, 'cast'), { kind: 'demould' as const }]

  it('after a marking is that of its own resin, whatever was cast: a day for a thin one (common practice)', () => {
    expect(lastWait([...body, fill, sandWait], [cast(5 * DAY)])).toBe(DAY)
    // Common practice again: 48 to 72 h until a deep resin is hard.
    expect(lastWait([...body, fill, sandWait], [cast(5 * DAY)], 'deep')).toBe(3 * DAY)
    expect(lastWait([...body, fill, sandWait], [cast(5 * DAY)], 'medium')).toBe(2 * DAY)
  })

  it('after an inlay is that of the inlay, and a day at least', () => {
    const inlay = [...body, pour(1, 'inlay'), sandWait]
    expect(lastWait(inlay, [cast(5 * DAY), cast(40 * HOUR)])).toBe(40 * HOUR)
    expect(lastWait(inlay, [cast(5 * DAY), cast(9 * HOUR)])).toBe(DAY)
  })

  it('after an inlay of a resin that is not predicted is two days', () => {
    expect(lastWait([...body, pour(1, 'inlay'), sandWait], [cast(5 * DAY), null])).toBe(2 * DAY)
  })

  it('is what the document says, when it says', () => {
    const given = { ...sandWait, waitMin: 90 }
    expect(lastWait([...body, fill, given], [cast(5 * DAY)])).toBe(90)
  })
})
