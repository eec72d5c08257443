import { describe, expect, it } from 'vitest'
import { learnedOf } from '../../src/calendar/learned-of.ts'
import { stepRecords } from '../../src/calendar/step-times.ts'
import { tasksOf } from '../../src/calendar/tasks.ts'
import { stepStatesOf } from '../../src/steps/step-states.ts'
import { workOf } from '../../src/work.ts'
import { inputOf, reading } from '../rescue/bench.ts'

const learned = (readings: ReturnType<typeof reading>[]) => {
  const work = workOf(inputOf(readings))
  const records = stepRecords(stepStatesOf(work, '2026-12-20T12:00+01:00'))
  return learnedOf(tasksOf(work, { piece: '', originMs: 0, records }), records)
}

describe('minutes learned from "began" to "done"', () => {
  // The pocket is made by a router along a template: reckoned at 45 min, template and cut.
  const cut = (took: number, more: object = {}) => [
    reading(100, { kind: 'began', step: 'cut pocket' }),
    reading(100 + took / 60, { kind: 'done', step: 'cut pocket', ...more })
  ]

  it('by the law of learned minutes, where all of the step is work of hands', () => {
    // 90 of 45 min: twice as long, one record weighing 1/(1 + 2).
    expect(learned(cut(90)).get('hand cut')).toEqual({ factor: expect.closeTo(2 ** (1 / 3), 6), records: 1 })
  })

  it('not where minutes were said: these go before', () => {
    expect(learned(cut(90, { minutes: 45 })).get('hand cut')!.factor).toBeCloseTo(1, 6)
  })

  it('not over a night, nor with one of the two alone, nor where the step waits by itself', () => {
    expect(learned(cut(15 * 60)).size).toBe(0)
    expect(learned(cut(90).slice(1)).size).toBe(0)
    const mould = [
      reading(1, { kind: 'began', step: 'make mould' }),
      reading(3, { kind: 'done', step: 'make mould' })
    ]
    expect(learned(mould).size).toBe(0)
  })
})
