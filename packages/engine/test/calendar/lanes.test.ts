import { describe, expect, it } from 'vitest'
import { clashWords } from '../../src/calendar/clash-words.ts'
import { lanesOf, placeOn } from '../../src/calendar/lanes.ts'
import { moved } from '../../src/calendar/moved.ts'
import { midnightsOf, nightHours, openingsOf } from '../../src/calendar/openings.ts'
import { quickCalendar } from '../../src/calendar/solve/solve.ts'
import { gap, problem, task } from './solve/problem.ts'

const shop = { timeZone: 'Europe/Berlin' }
// Midnight there, the day the clock goes back: 25 hours.
const from = Date.parse('2026-10-25T00:00+02:00')
const hand = { attended: true, needs: ['hands'] }
const asked = problem(
  [task('pour', 60, hand), task('hardens', 4000), task('demould', 30, hand)],
  [gap('pour', 'hardens', 0, 0), gap('hardens', 'demould', 0)],
  { openings: openingsOf(shop, from, 2) }
)

describe('the days as lanes', () => {
  it('gives every minute of every task a place, the days of change at their length', () => {
    const answer = quickCalendar(asked)
    if (answer.kind !== 'placed') throw new Error('no calendar')
    const midnights = midnightsOf(shop, from, 7)
    const days = lanesOf(asked.tasks, answer.placed, asked.openings, nightHours(shop, from, 2), midnights)
    expect(days[0]!.toMin - days[0]!.fromMin).toBe(25 * 60)
    const sum = (id: string) =>
      days
        .flatMap(d => [...d.attended, ...d.unattended])
        .filter(s => s.id === id)
        .reduce((n, s) => n + s.toMin - s.fromMin, 0)
    expect([sum('pour'), sum('hardens'), sum('demould')]).toEqual([60, 4000, 30])
    for (const d of days) {
      expect(d.stretches.reduce((n, s) => n + s.toMin - s.fromMin, 0)).toBe(d.toMin - d.fromMin)
      let last = -1
      for (let t = d.fromMin; t <= d.toMin; t += 30) {
        const x = placeOn(d, t)
        expect(x).toBeGreaterThan(last)
        last = x
      }
    }
    // Busy days wide, quiet days narrow.
    expect(days.map(d => d.quiet)).toEqual([false, true, true, false, true, true, true])
    expect(days[1]!.width).toBeLessThan(days[0]!.width / 3)
  })
})

describe('a task put elsewhere', () => {
  it('takes the rest along', () => {
    const { answer, outsideHours } = moved(asked, 'pour', 1500 + 600)
    // By hand: hard at 05:40 of the fourth day, so it waits for 07:00.
    expect(answer.kind === 'placed' && answer.placed.map(p => p.startMin)).toEqual([2100, 2160, 6240])
    expect(outsideHours).toBe(false)
    expect(moved(asked, 'pour', 60).outsideHours).toBe(true)
  })

  it('says in words what clashes', () => {
    const tight = {
      ...asked,
      gaps: [...asked.gaps, gap('pour', 'demould', 0, 4100, { says: 'before the plug is stuck' })]
    }
    const { answer, problem: changed } = moved(tight, 'pour', 1500 + 540)
    expect(answer.kind).toBe('clash')
    if (answer.kind !== 'clash') return
    const words = clashWords(changed, answer, min => `minute ${min}`)
    expect(words).toContain('pour: stands at minute 2040')
    expect(words).toContain('demould: 2 d 20 h after “pour” at the latest (before the plug is stuck)')
    expect(words.join('; ')).toContain('The hours at the bench: open for ')
  })

  it('leaves what is begun', () => {
    const begun = {
      ...asked,
      tasks: [task('pour', 60, { fixed: { startMin: 0, endMin: null, why: 'begun' } })],
      gaps: []
    }
    expect(() => moved(begun, 'pour', 10)).toThrow('"pour" is begun: it stays where it is')
    expect(() => moved(begun, 'sand', 10)).toThrow('no task is called "sand"')
  })
})
