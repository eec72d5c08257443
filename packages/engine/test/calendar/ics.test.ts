import ICAL from 'ical.js'
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

  it('gives the same bytes twice, and the same names in a later plan', () => {
    expect(icsOf(input())).toBe(icsOf(input()))
    const ids = (text: string) => events(text).map(({ e }) => e.uid)
    const later = ids(icsOf(input({ revision: 4 })))
    expect(later).toEqual(ids(icsOf(input())))
    expect(new Set(later).size).toBe(3)
  })
})
