import { describe, expect, it } from 'vitest'
import { daysOf } from '../../src/days.ts'
import type { DaysOptions } from '../../src/days-answer.ts'
import { foundInDays } from '../../src/days-found.ts'
import { FINDING_IDS } from '../../src/findings/every-check.ts'
import { applyPatch } from '../../src/piece/patch.ts'
import { plan, withFindings } from '../../src/plan.ts'
import { EXAMPLES, exampleInput } from './example-work.ts'

const ALL = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun']
const hours = (spans: readonly string[]) => ({
  timeZone: 'Europe/Berlin',
  hours: Object.fromEntries(ALL.map(d => [d, spans]))
})
const OPTIONS: DaysOptions = { asOf: '2026-11-30T08:00:00+01:00' }
const found = (
  name: string,
  more: Parameters<typeof exampleInput>[1] = {},
  options: DaysOptions = OPTIONS
) => {
  const input = exampleInput(name, more)
  return foundInDays(daysOf(input, options), input)
}
const ids = (...given: Parameters<typeof found>) => found(...given).map(f => f.id)

describe('findings of the days, each with and without', () => {
  it('nothing stands against the days of the sound examples', () => {
    for (const name of EXAMPLES) expect(ids(name), name).toEqual([])
  })

  it('every one is among those that can be let stand by its id', () => {
    for (const id of ['days-late', 'order-late', 'hours-never', 'days-clash', 'days-unsettled'])
      expect(FINDING_IDS).toContain(id)
  })

  it('late for the wanted date, and on time; the day it is ready mends it, the day before does not', () => {
    const [late, ...rest] = found('meadow-boards', { piece: { wanted: '2026-12-04' } })
    expect(rest).toEqual([])
    expect(late).toMatchObject({ id: 'days-late', severity: 'caution', at: '/wanted', unit: 'd', limit: 0 })
    const { document } = exampleInput('meadow-boards', { piece: { wanted: '2026-12-04' } }).piece
    const mended = applyPatch(document, late!.fix!) as { wanted: string }
    expect(ids('meadow-boards', { piece: { wanted: mended.wanted } })).toEqual([])
    const before = new Date(Date.parse(mended.wanted) - 86_400_000).toISOString().slice(0, 10)
    expect(ids('meadow-boards', { piece: { wanted: before } })).toEqual(['days-late'])
  })

  it('a date in the past is planned all the same, and said to be missed', () => {
    const [late] = found('meadow-boards', { piece: { wanted: '2026-01-04' } })
    expect(late!.says).toMatch(/^It is ready on 2026-12-\d\d, .* after 2026-01-04, when it is wanted/)
  })

  it('material that had to be ordered before today', () => {
    const with_ = (days: number, wanted: string) => ({
      piece: { wanted },
      shop: { prices: [{ item: 'hardwax-oil', unit: 'ml', price: 20, days }] }
    })
    const both = found('meadow-boards', with_(30, '2026-12-25'))
    expect(both.map(f => f.id)).toEqual(['days-late', 'order-late'])
    expect(both[1]!.says).toMatch(/^Hardwax oil is 30 days on its way: .* ordered by 2026-11-/)
    expect(ids('meadow-boards', with_(30, '2027-02-25'))).toEqual([])
    expect(ids('meadow-boards', with_(1, '2026-12-25'))).toEqual([])
  })

  it('hours that never occur, and hours at the weekend', () => {
    expect(ids('meadow-boards', { shop: hours([]) })).toEqual(['hours-never'])
    expect(
      ids('meadow-boards', {
        shop: { hours: { ...hours([]).hours, sat: ['08:00-20:00'], sun: ['08:00-20:00'] } }
      })
    ).toEqual([])
  })

  it('a window nobody can keep, and hours in which it can', () => {
    const [clash, ...rest] = found('heron-table', { shop: hours(['09:00-15:00']) })
    expect(rest).toEqual([])
    expect(clash).toMatchObject({ id: 'days-clash', severity: 'caution' })
    expect(clash!.says).toMatch(/^No calendar keeps these together: .{20,250}\. [A-Z].*\.$/)
    expect(clash!.fix).not.toBe(null)
    const input = exampleInput('heron-table', { shop: hours(['09:00-15:00']) })
    const mended = applyPatch(input.piece.document, clash!.fix!) as object
    expect(ids('heron-table', { piece: mended, shop: hours(['09:00-15:00']) })).not.toContain('days-clash')
    expect(ids('heron-table', { shop: hours(['07:00-21:00']) })).toEqual([])
  })

  it('windows that did not come to rest, in a room that swings with the day, and those of a steady one', () => {
    const split = { hours: hours(['08:00-12:00', '14:00-18:00']).hours }
    const climate = (night: number, day: number) => ({
      piece: { quantity: 1 },
      shop: { ...split, climate: { night, day } }
    })
    const afternoon: DaysOptions = { asOf: '2026-11-30T15:00:00+01:00' }
    expect(found('meadow-boards', climate(10, 30), afternoon).map(f => [f.id, f.severity])).toEqual([
      ['days-unsettled', 'note']
    ])
    expect(ids('meadow-boards', climate(20, 20), afternoon)).toEqual([])
  })

  it('missing prices: planned without them', () => {
    const input = exampleInput('meadow-boards', { shop: { prices: [] } })
    const days = daysOf(input, OPTIONS)
    expect(days.clash).toBe(null)
    expect(days.readyMs).not.toBe(null)
    expect(days.orderBy).toEqual([])
  })

  it('join the plan and move its verdict; the moment it is ready stands among its totals', () => {
    const input = exampleInput('meadow-boards', { piece: { wanted: '2026-12-04' } })
    const options = { asOf: OPTIONS.asOf, effort: 'preview' } as const
    const before = plan(input, options)
    expect(before.plan.totals.ready).toBe(null)
    const days = daysOf(input, OPTIONS)
    const after = withFindings(before, foundInDays(days, input), {
      ...options,
      ready: '2026-12-18T10:00+01:00'
    })
    expect(after.plan.findings.map(f => f.id)).toContain('days-late')
    expect(after.plan.totals.cautions).toBe(before.plan.totals.cautions + 1)
    expect(after.plan.totals.ready).toBe('2026-12-18T10:00+01:00')
  })
})
