import { describe, expect, test } from 'vitest'
import { daysOf } from '../../src/days.ts'
import { exampleInput } from './example-work.ts'

// Shops that are hardly ever open. Days of the week of the dates by the calendar: 2026-11-02 is a Monday.
const asOf = '2026-11-02T08:00:00Z'
const closed = { mon: [], tue: [], wed: [], thu: [], fri: [], sat: [], sun: [] }
const on = (name: string, hours: object, more: object = {}) =>
  daysOf(exampleInput(name, { shop: { hours: { ...closed, ...hours }, ...more } }), { asOf })
const weekdays = (span: string) =>
  Object.fromEntries(['mon', 'tue', 'wed', 'thu', 'fri'].map(d => [d, [span]]))
const weekdayOf = (day: string) => new Date(`${day}T12:00:00Z`).getUTCDay()

describe('a shop that works on Saturdays alone', () => {
  const days = on('saltmarsh-panel', { sat: ['09:00-17:00'] })
  const way = (id: string) => days.waysOut.find(w => w.id === id)

  test('clashes with the coats, each within a day of the one before', () => {
    expect(days.clash!.says.some(s => /^Coat 2 of 2 .*: 12 h to 24 h after “Coat 1 of 2/.test(s))).toBe(true)
  })

  test('finds its way out by hours once, on the days the windows fall: in the morning after a Saturday', () => {
    const once = way('open once')!
    const dates = [...once.says.matchAll(/(\d{4}-\d\d-\d\d) (\d\d):(\d\d) to/g)]
    expect(dates.length).toBeGreaterThanOrEqual(2)
    for (const [, day, hour] of dates) {
      expect(weekdayOf(day!)).toBe(0)
      expect(Number(hour)).toBeGreaterThanOrEqual(6)
    }
    expect(once.readyDays).toBeGreaterThan(0)
    expect(once.risk).not.toBe('')
  })

  test('finds it by a second day, sooner than by letting all windows pass', () => {
    const sunday = way('day more')!
    expect(sunday.says).toContain('Sunday')
    // With those hours the calendar is made as the way says.
    const hours = (sunday.patch![0] as { value: object }).value
    const again = on('saltmarsh-panel', hours)
    expect((again.readyMs![0]! - again.originMs) / 86_400_000).toBeLessThanOrEqual(sunday.readyDays + 1e-6)
    expect(sunday.readyDays).toBeLessThan(way('let it pass')!.readyDays)
  })

  test('offers no change that helps only with the very waits that may be let pass without it', () => {
    const passed = way('let it pass')!.readyDays
    for (const w of days.waysOut)
      if (w.id !== 'let it pass' && w.says.includes('Besides')) expect(w.readyDays).toBeLessThan(passed - 0.5)
  })
})

test('two hours of an evening hold no pour that is looked after for eight: one long Saturday does', () => {
  const days = on('heron-table', weekdays('18:00-20:00'))
  expect(days.clash).not.toBe(null)
  const once = days.waysOut.find(w => w.id === 'open once')!
  const [, day] = /once: (\d{4}-\d\d-\d\d) 07:00 to 22:00\.$/.exec(once.says)!
  expect([0, 6]).toContain(weekdayOf(day!))
}, 60_000)

test('an hour a day clashes with what takes longer, and more hours mend it', () => {
  const days = on('saltmarsh-panel', weekdays('18:00-19:00'))
  expect(days.clash!.says.join('\n')).toMatch(
    /takes 1 h 30 of somebody, in one go[\s\S]*open for 60 min at the most/
  )
  expect(days.waysOut.map(w => w.id)).toContain('later')
})

test('no hours at all are said to be none, and nothing is tried', () => {
  const days = on('saltmarsh-panel', {})
  expect(days.clash!.says).toContain('The hours at the bench: there are none')
  expect(days.waysOut).toEqual([])
})

test('three months away put all off until after them', () => {
  const away = Array.from({ length: 92 }, (_, i) =>
    new Date(Date.parse('2026-11-02T12:00:00Z') + i * 86_400_000).toISOString().slice(0, 10)
  )
  const days = on('saltmarsh-panel', weekdays('08:00-18:00'), { away })
  expect(days.clash).toBe(null)
  const first = Math.min(...days.tasks.filter(t => t.task.attended).map(t => t.startMin))
  expect(days.originMs + first * 60_000).toBeGreaterThanOrEqual(Date.parse('2027-02-02T00:00:00Z'))
})
