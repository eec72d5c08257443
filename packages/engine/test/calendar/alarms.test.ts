import { describe, expect, it } from 'vitest'
import { alarmsOf } from '../../src/calendar/alarms.ts'

const task = (startMin: number, endMin: number, late = true, attended = true) => ({
  startMin,
  endMin,
  late,
  attended
})

// What is expected is written down by hand: when somebody who stands at the bench would want to be called.
describe('alarms', () => {
  it('ring the minutes of the shop before what must not begin late, for who is away', () => {
    expect(alarmsOf([task(0, 10, false), task(300, 310)], 30)).toEqual([null, 30])
  })
  it('ring before the first task of all', () => {
    expect(alarmsOf([task(420, 430)], 45)).toEqual([45])
  })
  it('are short for who is at the bench, and none where one goes straight on', () => {
    // Pour, pass at once, staying by it for 90 min, passes after pauses of 7 and 10 min.
    const pour = [task(0, 8), task(8, 11), task(8, 98), task(18, 21), task(31, 34)]
    expect(alarmsOf(pour, 30)).toEqual([30, null, null, 5, 5])
  })
  it('are never longer than the shop asks', () => {
    expect(alarmsOf([task(0, 8), task(18, 21)], 2)).toEqual([2, 2])
  })
  it('ring once for what begins together, and not for what needs nobody or can wait', () => {
    expect(
      alarmsOf([task(100, 110), task(100, 190), task(500, 900, true, false), task(1000, 1001, false)], 30)
    ).toEqual([30, null, null, null])
  })
})
