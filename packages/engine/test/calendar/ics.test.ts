import ICAL from 'ical.js'
import { ICalCalendar } from 'ical-generator'
import { describe, expect, it } from 'vitest'
import type { IcsInput } from '../../src/calendar/ics.ts'
import { icsOf } from '../../src/calendar/ics.ts'

const HOSTILE = `Pour; "green", the\nfirst \\ one 🌊🌊🌊 ${'ß'.repeat(90)}`

function input(more: Partial<IcsInput> = {}): IcsInput {
  const entry = (id: string, startMin: number, says = id) => ({
    task: { id, piece: 'salt marsh', says, safety: ['Wear gloves; read the data sheet.'], attended: true },
    placed: { startMin, endMin: startMin + 45 },
    lines: ['310 g: 214 g A, 96 g B'],
    alarmMin: 15
  })
  return {
    name: HOSTILE,
    // The night of the change to winter time in Europe.
    originMs: Date.parse('2026-10-24T20:00:00Z'),
    timeZone: 'Europe/Berlin',
    stampMs: Date.parse('2026-10-01T00:00:00Z'),
    revision: 3,
    entries: [
      entry('pour green', 0, HOSTILE),
      entry('watch', 260),
      { ...entry('wait', 300), task: { ...entry('wait', 300).task, attended: false } }
    ],
    cancelled: [{ piece: 'salt marsh', id: 'old', says: 'Old task', startMin: 600, endMin: 630 }],
    ...more
  }
}

function events(text: string) {
  const root = new ICAL.Component(ICAL.parse(text))
  return root.getAllSubcomponents('vevent').map(c => ({ c, e: new ICAL.Event(c) }))
}

describe('the calendar file, read back by ical.js', () => {
  it('holds the same instants over a change of the clock, attended tasks only', () => {
    const got = events(icsOf(input()))
    expect(got.map(({ e }) => e.startDate.toJSDate().toISOString())).toEqual([
      '2026-10-24T20:00:00.000Z',
      '2026-10-25T00:20:00.000Z',
      '2026-10-25T06:00:00.000Z'
    ])
    expect(got.map(({ e }) => e.duration.toSeconds())).toEqual([2700, 2700, 1800])
    expect(got.map(({ c }) => c.getFirstPropertyValue('sequence'))).toEqual([3, 3, 3])
    expect(got.map(({ c }) => c.getFirstPropertyValue('status'))).toEqual([
      'CONFIRMED',
      'CONFIRMED',
      'CANCELLED'
    ])
    expect(String(got[0]!.c.getFirstPropertyValue('dtstamp'))).toBe('2026-10-01T00:00:00Z')
  })

  // Summer time begins and ends: Europe, America, half an hour in Australia, about Ramadan in Morocco; and never.
  it.each([
    ['Europe/Berlin', '2026-10-24T20:00Z'],
    ['Europe/Berlin', '2027-03-27T20:00Z'],
    ['America/New_York', '2026-10-31T22:00Z'],
    ['America/New_York', '2027-03-13T22:00Z'],
    ['Australia/Lord_Howe', '2027-04-03T06:00Z'],
    ['Africa/Casablanca', '2027-02-06T18:00Z'],
    ['Asia/Kolkata', '2026-10-24T20:00Z'],
    ['Etc/GMT+5', '2026-10-24T20:00Z']
  ])('holds every instant on the clock of %s about %s, by its own definition of the zone', (zone, from) => {
    const originMs = Date.parse(from)
    const { entries } = input()
    const at = [...Array.from({ length: 80 }, (_, n) => n * 10), 60_000, 200_000, 400_000]
    const text = icsOf(
      input({
        timeZone: zone,
        originMs,
        cancelled: [],
        entries: at.map(m => ({
          ...entries[0]!,
          task: { ...entries[0]!.task, id: `at ${m}` },
          placed: { startMin: m, endMin: m + 45 }
        }))
      })
    )
    const got = events(text)
    const local = new Intl.DateTimeFormat('sv-SE', { timeZone: zone, dateStyle: 'short', timeStyle: 'short' })
    let inUtc = 0
    for (const [i, { c, e }] of got.entries()) {
      const ms = originMs + at[i]! * 60_000
      expect(e.startDate.toUnixTime() * 1000).toBe(ms)
      expect(e.endDate.toUnixTime() * 1000).toBe(ms + 45 * 60_000)
      const property = c.getFirstProperty('dtstart')!
      if (property.getParameter('tzid') === zone)
        expect(String(property.getFirstValue()).replace('T', ' ').slice(0, 16)).toBe(local.format(ms))
      else {
        expect(String(property.getFirstValue())).toBe(`${new Date(ms).toISOString().slice(0, 19)}Z`)
        inUtc++
      }
    }
    // In UTC only what touches the hour that is shown twice: those two hours and the 45 minutes before them.
    expect(inUtc).toBeLessThanOrEqual(Math.ceil((120 + 45) / 10))
    const zones = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vtimezone')
    expect(zones.map(z => z.getFirstPropertyValue('tzid'))).toEqual([zone])
    for (const part of zones[0]!.getAllSubcomponents())
      for (const name of ['dtstart', 'tzoffsetfrom', 'tzoffsetto'])
        expect(part.getAllProperties(name)).toHaveLength(1)
    expect(text).not.toContain('X-WR-TIMEZONE')
  })

  it('is in UTC, without a zone, for a shop in UTC and for a name no list has', () => {
    for (const timeZone of ['UTC', 'Europe/Nowhere', '+02:00']) {
      const text = icsOf(input({ timeZone }))
      expect(text).not.toMatch(/TZID|VTIMEZONE/)
      expect(text).toContain('DTSTART:20261024T200000Z')
    }
  })

  it('keeps hostile names, amounts and safety lines', () => {
    const { e } = events(icsOf(input()))[0]!
    expect(e.summary).toBe(HOSTILE)
    expect(e.description).toBe('310 g: 214 g A, 96 g B\nWear gloves; read the data sheet.')
  })

  it('rings a quarter of an hour before', () => {
    const alarm = events(icsOf(input()))[0]!.c.getFirstSubcomponent('valarm')!
    expect(alarm.getFirstPropertyValue('action')).toBe('DISPLAY')
    expect(String(alarm.getFirstPropertyValue('trigger'))).toBe('-PT15M')
    expect(alarm.getFirstPropertyValue('description')).toBe(HOSTILE)
  })

  it('has no line over 75 octets, every line ended by CRLF, and none of a name its own property', () => {
    const text = icsOf(input())
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/)
    for (const line of text.split('\r\n'))
      expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75)
    const sly = icsOf(input({ name: 'x\r\nBEGIN:VALARM\u0000' }))
    expect(new ICAL.Component(ICAL.parse(sly)).getAllSubcomponents('valarm')).toEqual([])
  })

  // A library that shares nothing with it, on lines of its own.
  it('writes what is in UTC line by line as ical-generator does, folds apart', () => {
    const unfolded = (text: string) =>
      text
        .replace(/\r\n /g, '')
        .split('\r\n')
        .filter(l => l !== '')
    const twin = new ICalCalendar({ prodId: { company: 'Castwright', product: 'Days', language: 'EN' } })
    const { entries, originMs, stampMs } = input()
    for (const { task, placed, lines, alarmMin } of entries.filter(e => e.task.attended)) {
      const made = twin.createEvent({
        id: 'x',
        stamp: new Date(stampMs),
        start: new Date(originMs + placed.startMin * 60_000),
        end: new Date(originMs + placed.endMin * 60_000),
        summary: task.says,
        description: [...lines, ...task.safety].join('\n')
      })
      made.createAlarm({ triggerBefore: alarmMin! * 60, description: task.says })
    }
    const kinds = /^(DTSTAMP|DTSTART|DTEND|SUMMARY|DESCRIPTION|TRIGGER|ACTION|PRODID|BEGIN|END):/
    const told = (text: string) =>
      unfolded(text)
        .filter(l => kinds.test(l))
        .sort()
    expect(told(icsOf(input({ timeZone: 'UTC', cancelled: [] })))).toEqual(told(twin.toString()))
  })

  it('gives no end to what takes no time, and a line end to the last line', () => {
    const [entry] = input().entries
    const text = icsOf(input({ entries: [{ ...entry!, placed: { startMin: 5, endMin: 5 } }], cancelled: [] }))
    expect(text).not.toContain('DTEND')
    expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true)
  })

  it('gives the same bytes twice, and the same names in a later plan', () => {
    expect(icsOf(input())).toBe(icsOf(input()))
    const ids = (text: string) => events(text).map(({ e }) => e.uid)
    const later = ids(icsOf(input({ revision: 4 })))
    expect(later).toEqual(ids(icsOf(input())))
    expect(new Set(later).size).toBe(3)
  })
})
