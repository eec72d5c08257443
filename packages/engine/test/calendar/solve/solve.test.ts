import { describe, expect, it } from 'vitest'
import type { CalendarSolution } from '../../../src/calendar/solve/problem.ts'
import { quickCalendar, relaxed, solveCalendar } from '../../../src/calendar/solve/solve.ts'
import { WORKED, workedProblem } from './cpm-tables.ts'
import { days, gap, problem, task } from './problem.ts'
import { randomProblem } from './random.ts'

const hand = { attended: true, needs: ['hands'] }

function placed(answer: ReturnType<typeof solveCalendar>): CalendarSolution {
  if (answer.kind !== 'placed') throw new Error(JSON.stringify(answer))
  return answer
}
const starts = (s: CalendarSolution) => Object.fromEntries(s.placed.map(p => [p.id, p.startMin]))

describe('critical path, worked by hand', () => {
  for (const w of WORKED)
    it(w.name, () => {
      const s = placed(solveCalendar(workedProblem(w)))
      expect(s.finishMin).toBe(w.finish)
      expect(s.proved).toBe(true)
      expect(s.placed.map(p => [p.id, p.startMin, p.latestStartMin])).toEqual(
        w.rows.map(r => [r[0], r[3], r[4]])
      )
      expect(s.chain.map(c => c.id).join(' ')).toBe(w.chain)
    })
})

describe('hours at the bench', () => {
  it('puts what does not fit before closing to the next morning, and stretches what may pause', () => {
    const tasks = [task('a', 120, hand), task('b', 200, { ...hand, mayPause: true }), task('c', 120, hand)]
    const s = placed(
      solveCalendar(problem(tasks, [gap('a', 'b'), gap('b', 'c')], { openings: days(5, [8, 12]) }))
    )
    // By hand: a 08:00-10:00; b 10:00-12:00 and next day 08:00-09:20; c 09:20-11:20.
    expect(s.placed.map(p => p.startMin)).toEqual([480, 600, 1440 + 560])
    expect(s.placed[1]!.parts).toEqual([
      [600, 720],
      [1920, 2000]
    ])
    expect(s.finishMin).toBe(1440 + 680)
  })

  it('begins a pour late enough that its window meets the hours of the next day', () => {
    // Windows of 12 to 16 h after the end; hours 7 to 22, now 9: by hand the first pour of 60 min ends at 15:00 at the earliest.
    const tasks = [task('first', 60, hand), task('second', 60, hand)]
    const s = placed(
      solveCalendar(
        problem(tasks, [gap('first', 'second', 720, 960)], { openings: days(5, [7, 22]), asOfMin: 540 })
      )
    )
    expect(starts(s)).toEqual({ first: 14 * 60, second: 1440 + 420 })
  })

  it('says which task of five hours never fits into hours of four', () => {
    const s = solveCalendar(
      problem([task('c', 300, hand), task('d', 10, hand)], [], { openings: days(5, [8, 12]) })
    )
    expect(s).toMatchObject({ kind: 'clash', smallest: true, irreducible: true })
    expect(s.kind === 'clash' && s.members).toEqual([{ kind: 'task', id: 'c' }, { kind: 'hours' }])
  })

  it('keeps what is begun, even in closed hours, and goes on after it', () => {
    const begun = { startMin: -60, endMin: null, why: 'begun' } as const
    const tasks = [task('pour', 30, { ...hand, fixed: begun }), task('watch', 60, hand)]
    const s = placed(solveCalendar(problem(tasks, [gap('pour', 'watch', 0)], { openings: days(2, [7, 22]) })))
    expect(starts(s)).toEqual({ pour: -60, watch: 420 })
    expect(s.outsideHours).toEqual(['pour'])
  })

  it('comes to the bench once where twice gains nothing', () => {
    // A wait of a day holds the finish; the odd job of ten minutes, first possible at 17:00, can wait for it.
    const tasks = [
      task('pour', 60, hand),
      task('odd job', 10, { ...hand, notBeforeMin: 1020 }),
      task('demould', 30, hand)
    ]
    const gaps = [gap('pour', 'demould', 1440), gap('odd job', 'demould', 0)]
    const s = placed(solveCalendar(problem(tasks, gaps, { openings: days(9, [10, 12], [17, 18]) })))
    expect(s.finishMin).toBe(1440 + 690)
    expect(s.visits).toBe(2)
  })
})

describe('what holds for every problem', () => {
  it('gives the same answer twice', () => {
    for (const seed of [3, 8, 21]) {
      const p = randomProblem(seed, 14, 2)
      expect(solveCalendar(p)).toEqual(solveCalendar(p))
    }
  })

  it('never finishes later for more hours where both are proved', () => {
    let proved = 0
    for (let seed = 300; seed < 360; seed++) {
      const p = { ...randomProblem(seed, 7), odd: [] }
      const less = solveCalendar(p)
      const more = solveCalendar(
        relaxed(p, [
          { kind: 'opening', opening: [660, 900] },
          { kind: 'opening', opening: [2000, 2400] }
        ])
      )
      if (less.kind !== 'placed') continue
      expect(more.kind).toBe('placed')
      // A finish that is not proved may be later for more hours: only proved ones are held to it.
      if (more.kind !== 'placed' || !less.proved || !more.proved || less.late.length + more.late.length > 0)
        continue
      proved++
      expect(more.finishMin, `seed ${seed}`).toBeLessThanOrEqual(less.finishMin)
    }
    expect(proved).toBeGreaterThan(25)
  })

  it('answers an edit of sixty tasks at once', () => {
    const p = randomProblem(8, 60)
    quickCalendar(p)
    const from = performance.now()
    for (let k = 0; k < 5; k++) quickCalendar(p)
    // The bar is 10 ms; a busy machine is allowed for.
    expect((performance.now() - from) / 5).toBeLessThan(60)
  })
})

describe('bad input', () => {
  it('names the gap and the task that are wrong', () => {
    expect(() => solveCalendar(problem([task('a', 1)], [gap('a', 'b')]))).toThrow(
      'a gap names "b", which is no task'
    )
    expect(() => solveCalendar(problem([task('a', 1), task('a', 2)], []))).toThrow('two tasks are called "a"')
  })
})
