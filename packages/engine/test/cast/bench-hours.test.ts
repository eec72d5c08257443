import { describe, expect, it } from 'vitest'
import { attended, nobodyThere } from '../../src/cast/bench-hours.ts'
import { localTime, minuteOfDay, timeWords, weekday } from '../../src/cast/local-time.ts'
import { checkShop } from '../../src/piece/read.ts'

const shop = (hours?: object) =>
  checkShop({ castwright: 1, ...(hours === undefined ? {} : { hours }) } as never, 'shop').value
const utc = { timeZone: 'UTC' }

describe('a moment on the shop’s clock', () => {
  // 2 March 2026 is a Monday, 1 January 2000 was a Saturday (Gregorian calendar).
  it('has the weekday of the calendar, and the next past midnight', () => {
    expect(weekday(localTime('2026-03-02T09:00+01:00', utc))).toBe('mon')
    expect(weekday(localTime('2000-01-01T12:00Z', utc))).toBe('sat')
    expect(weekday(localTime('2026-03-02T23:00+01:00', utc), 120)).toBe('tue')
    expect(timeWords(localTime('2026-03-02T23:50+01:00', utc), 15)).toBe('00:05 on Tuesday')
  })

  it('is read with its own offset, and in UTC by the time zone of the shop: Berlin is an hour ahead in winter, two in summer', () => {
    expect(minuteOfDay(localTime('2026-03-02T09:00-05:00', utc))).toBe(540)
    expect(minuteOfDay(localTime('2026-01-15T09:00Z', { timeZone: 'Europe/Berlin' }))).toBe(600)
    expect(minuteOfDay(localTime('2026-07-15T09:00Z', { timeZone: 'Europe/Berlin' }))).toBe(660)
    expect(minuteOfDay(localTime('2026-07-15T09:00Z', { timeZone: 'No/Such_Place' }))).toBe(540)
  })
})

// Directive 2000/84/EC: 01:00 UTC on the last Sundays of March and October, 28 March 2027 and 25 October 2026.
describe('a change of the clock in the middle of a cure', () => {
  const berlin = { timeZone: 'Europe/Berlin' }
  const shopThere = { ...shop({ sun: ['09:00-12:00'] }), ...berlin }

  it('moves the hour: poured on Saturday at 20:00, 14 h later it is 09:00 in autumn and 11:00 in spring', () => {
    for (const written of ['2026-10-24T20:00+02:00', '2026-10-24T18:00Z']) {
      const at = localTime(written, berlin)
      expect(timeWords(at)).toBe('20:00 on Saturday')
      expect(timeWords(at, 14 * 60)).toBe('09:00 on Sunday')
      // The bench opens an hour later after the pour than on another Sunday.
      expect(attended(shopThere, at, [0, 24 * 60])).toEqual([[14 * 60, 17 * 60]])
    }
    const spring = localTime('2027-03-27T20:00+01:00', berlin)
    expect(timeWords(spring, 14 * 60)).toBe('11:00 on Sunday')
    expect(attended(shopThere, spring, [0, 24 * 60])).toEqual([[12 * 60, 15 * 60]])
    expect(nobodyThere(shopThere, spring, 12 * 60)).toBeNull()
  })

  it('is not seen where the moment was typed with an offset of another place', () => {
    expect(timeWords(localTime('2026-10-24T20:00-04:00', berlin), 14 * 60)).toBe('10:00 on Sunday')
  })
})

describe('hours at the bench', () => {
  const monday = localTime('2026-03-02T09:00+01:00', utc)
  const hours = shop({ mon: ['08:00-12:00', '13:00-17:00'], tue: ['13:00-24:00'] })

  it('leave a dinner hour, an evening and a free day', () => {
    expect(nobodyThere(hours, monday, 0)).toBeNull()
    expect(nobodyThere(hours, monday, 3.5 * 60)).toBe('away')
    expect(nobodyThere(hours, monday, 14 * 60)).toBe('night')
    expect(nobodyThere(hours, monday, 48 * 60)).toBe('away')
  })

  it('in a span are counted by hand: Monday noon to Tuesday two is 4 h and 1 h', () => {
    expect(attended(hours, monday, [180, 29 * 60])).toEqual([
      [240, 480],
      [28 * 60, 29 * 60]
    ])
  })

  it('without any given are the day from seven to ten', () => {
    expect(nobodyThere(shop(), monday, 13 * 60 - 1)).toBeNull()
    expect(nobodyThere(shop(), monday, 13 * 60)).toBe('night')
    const week = attended(shop(), monday, [0, 7 * 1440])
    expect(week.reduce((sum, [a, b]) => sum + b - a, 0)).toBe(7 * 15 * 60)
  })
})
