import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Reading } from '../../src/piece/reading-schema.ts'
import { readingSchema } from '../../src/piece/reading-schema.ts'
import { standingReadings } from '../../src/piece/standing-readings.ts'
import { workOf } from '../../src/work.ts'
import { given, inputOf } from './standing-input.ts'

const reading = (id: string, more: object): Reading =>
  readingSchema.parse({ id, at: '2026-11-28T09:00Z', ...more })
const note = (id: string) => reading(id, { kind: 'note' })
const gone = (id: string, of: string) => reading(id, { kind: 'withdrawn', reading: of })
const ids = (readings: readonly Reading[]) => readings.map(r => r.id)

describe('readings that were withdrawn', () => {
  it('do not count, nor do the withdrawals; a withdrawal is withdrawn in its turn', () => {
    const a = note('aaaaaaaa')
    const b = note('bbbbbbbb')
    const c = gone('cccccccc', 'aaaaaaaa')
    expect(ids(standingReadings([a, b, c]))).toEqual(['bbbbbbbb'])
    const d = gone('dddddddd', 'cccccccc')
    expect(ids(standingReadings([a, b, c, d]))).toEqual(['aaaaaaaa', 'bbbbbbbb'])
    expect(ids(standingReadings([a, b, c, d, gone('eeeeeeee', 'dddddddd')]))).toEqual(['bbbbbbbb'])
  })

  it('a withdrawal waits for what is not there yet, and twice is once', () => {
    const c = gone('cccccccc', 'aaaaaaaa')
    expect(ids(standingReadings([c, c]))).toEqual([])
    expect(ids(standingReadings([c, note('aaaaaaaa'), gone('dddddddd', 'aaaaaaaa')]))).toEqual([])
  })

  it('are the same in every order of the records, and by a slow twin', () => {
    const id = (n: number) => `reading-${n}`
    // Each withdrawal names an older one, as at a bench.
    const logs = fc
      .array(fc.tuple(fc.boolean(), fc.nat()), { minLength: 1, maxLength: 30 })
      .map(list =>
        list.map(([withdraws, of], i) => (withdraws && i > 0 ? gone(id(i), id(of % i)) : note(id(i))))
      )
    fc.assert(
      fc.property(logs, fc.integer(), (log, seed) => {
        // The twin: from the newest to the oldest, one by one.
        const out = new Set<string>()
        for (const r of [...log].reverse()) if (r.kind === 'withdrawn' && !out.has(r.id)) out.add(r.reading)
        const want = log.filter(r => r.kind !== 'withdrawn' && !out.has(r.id)).map(r => r.id)
        expect(ids(standingReadings(log))).toEqual(want)
        const mixed = [...log].sort(
          (x, y) => ((x.id.length * 7 + seed) % 5) - ((y.id.charCodeAt(8) * seed) % 3)
        )
        expect(ids(standingReadings(mixed)).sort()).toEqual([...want].sort())
      }),
      { numRuns: 200, seed: 71 }
    )
  })

  it('a chain of withdrawals as long as a log ends, and a ring of two ends too', () => {
    const chain = Array.from({ length: 20_000 }, (_, i) =>
      i === 0
        ? note('chain-00000')
        : gone(`chain-${String(i).padStart(5, '0')}`, `chain-${String(i - 1).padStart(5, '0')}`)
    )
    expect(standingReadings(chain)).toHaveLength(0)
    expect(standingReadings(chain.slice(0, -1))).toHaveLength(1)
    expect(standingReadings([gone('aaaaaaaa', 'bbbbbbbb'), gone('bbbbbbbb', 'aaaaaaaa')])).toEqual([])
  })

  it('are dropped by the plan before any stage reads them', () => {
    const at = '2026-12-05T13:00+01:00'
    const hot = reading('hothothot', { kind: 'temperature', pour: given.pours[0]!.id!, temperature: 66, at })
    expect(workOf(inputOf([hot])).readings).toHaveLength(1)
    expect(workOf(inputOf([hot, gone('undone-01', 'hothothot')])).readings).toEqual([])
  })
})
