import { describe, expect, it } from 'vitest'
import { openingsOf } from '../../../src/calendar/openings.ts'
import type { CalendarProblem } from '../../../src/calendar/solve/problem.ts'
import { solveCalendar } from '../../../src/calendar/solve/solve.ts'
import type { Gap, Task } from '../../../src/calendar/task.ts'
import { tasksOf } from '../../../src/calendar/tasks.ts'
import { EXAMPLES, exampleWork } from '../example-work.ts'
import { wrongs } from './verify.ts'

const from = Date.parse('2026-10-19T07:00:00Z')
const asked = (tasks: readonly Task[], gaps: readonly Gap[]): CalendarProblem => ({
  tasks,
  gaps,
  openings: openingsOf({ timeZone: 'Europe/Berlin' }, from, 30),
  asOfMin: 0
})

describe('calendars of the examples', () => {
  it.each(EXAMPLES)('places every task of %s', name => {
    const { tasks, gaps } = tasksOf(exampleWork(name), { piece: name, originMs: from })
    const p = asked(tasks, gaps)
    const s = solveCalendar(p)
    // Where an example's own windows clash the set is named; where it is placed nothing is wrong.
    if (s.kind === 'placed') expect(wrongs(p, s)).toEqual([])
    else expect(s).toMatchObject({ kind: 'clash', irreducible: true })
  })
})
