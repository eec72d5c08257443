import type { CalendarProblem } from '../../../src/calendar/solve/problem.ts'
import type { Gap, Opening, Task } from '../../../src/calendar/task.ts'

/** A task with what the tests do not speak of filled in. */
export function task(id: string, minutes: number, more: Partial<Task> = {}): Task {
  return {
    id,
    piece: 'p',
    step: null,
    at: '',
    kind: 'prepare',
    says: id,
    minutes,
    band: null,
    basis: { from: 'practice', says: 'test' },
    attended: false,
    mayPause: false,
    needs: [],
    safety: [],
    fixed: null,
    notBeforeMin: null,
    dueMin: null,
    ...more
  }
}

export function gap(
  before: string,
  after: string,
  least = 0,
  most: number | null = null,
  more: Partial<Gap> = {}
): Gap {
  return {
    before,
    after,
    from: 'end',
    to: 'start',
    leastMin: least,
    mostMin: most,
    says: 'test',
    late: null,
    soft: false,
    ...more
  }
}

const ALWAYS: readonly Opening[] = [[0, 1_000_000]]

export function problem(
  tasks: readonly Task[],
  gaps: readonly Gap[],
  more: Partial<CalendarProblem> = {}
): CalendarProblem {
  return { tasks, gaps, openings: ALWAYS, asOfMin: 0, ...more }
}

/** Days of these hours, from day 0 on. */
export function days(count: number, ...hours: readonly (readonly [number, number])[]): Opening[] {
  return Array.from({ length: count }, (_, d) =>
    hours.map(([a, b]) => [d * 1440 + a * 60, d * 1440 + b * 60] as const)
  ).flat()
}

/** A sequence of its own for seeded tests: mulberry32. */
export function seeded(seed: number): { below(n: number): number; chance(p: number): boolean } {
  let a = seed >>> 0
  const next = () => {
    a = (a + 0x6d2b79f5) >>> 0
    let t = a
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
  return { below: n => Math.floor(next() * n), chance: p => next() < p }
}
