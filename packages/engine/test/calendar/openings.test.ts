import { describe, expect, it } from 'vitest'
import type { ShopHours } from '../../src/calendar/openings.ts'
import { neverOpen, openingsOf } from '../../src/calendar/openings.ts'
import { zoneClock } from '../../src/quantity/zone-clock.ts'

const none = { mon: [], tue: [], wed: [], thu: [], fri: [], sat: [], sun: [] }
const at = (text: string) => Date.parse(text)

describe('hours at the bench in true minutes', () => {
  it('loses an hour of Sunday night in Berlin in March and gains one in October', () => {
    const shop: ShopHours = { timeZone: 'Europe/Berlin', hours: { ...none, sun: ['01:00-04:00'] } }
    // 2026-03-29, 02:00 to 03:00 skipped; 2026-10-25, 02:00 to 03:00 twice (EU directive 2000/84/EC; memory).
    expect(openingsOf(shop, at('2026-03-29T00:00+01:00'), 1)).toEqual([[60, 180]])
    expect(openingsOf(shop, at('2026-10-25T00:00+02:00'), 1)).toEqual([[60, 300]])
  })

  it('does so in New York on the second Sunday of March and the first of November', () => {
    const shop: ShopHours = { timeZone: 'America/New_York', hours: { ...none, sun: ['08:00-09:00'] } }
    expect(openingsOf(shop, at('2026-03-08T00:00-05:00'), 1)).toEqual([[420, 480]])
    expect(openingsOf(shop, at('2026-11-01T00:00-04:00'), 1)).toEqual([[540, 600]])
  })

  it('is 7 to 22 where no hours are given, without the days away, from the moment on', () => {
    const got = openingsOf({ timeZone: 'UTC', away: ['2026-05-05'] }, at('2026-05-04T09:00Z'), 1)
    expect(got.slice(0, 2)).toEqual([
      [0, 13 * 60],
      [2 * 1440 - 120, 2 * 1440 + 13 * 60]
    ])
    expect(got.length).toBe(7)
  })

  it('agrees with the clock of the platform at every edge, in zones of every kind', () => {
    for (const timeZone of [
      'Europe/Berlin',
      'America/New_York',
      'Australia/Lord_Howe',
      'Asia/Kathmandu',
      'Pacific/Apia'
    ]) {
      const format = new Intl.DateTimeFormat('en-GB', {
        timeZone,
        hour: '2-digit',
        minute: '2-digit',
        hourCycle: 'h23'
      })
      const from = at('2026-01-01T00:00Z')
      for (const [a, b] of openingsOf({ timeZone }, from, 52).slice(1, -1)) {
        expect(format.format(from + a * 60_000)).toBe('07:00')
        expect(format.format(from + b * 60_000)).toBe('22:00')
      }
    }
  })

  it('knows hours that never occur', () => {
    expect(neverOpen({ timeZone: 'UTC', hours: none })).toBe(true)
    expect(neverOpen({ timeZone: 'UTC' })).toBe(false)
    expect(openingsOf({ timeZone: 'UTC', hours: none }, 0, 2)).toEqual([])
  })

  it('takes an unknown zone for UTC', () => expect(zoneClock('Moon/Crater').offsetMin(0)).toBe(0))
})
