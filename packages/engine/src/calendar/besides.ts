import type { Gap, Task } from './task.ts'
import type { PieceTasks } from './tasks.ts'

/** Work and waiting that no step of the piece stands for: putting right what went differently. Minutes. */
export interface Besides {
  readonly says: string
  readonly handsMin: number
  readonly waitMin: number
  /** Before all that is not begun; else only before the piece is ready. */
  readonly first: boolean
}

/**
 * The tasks of a piece with work besides: the hands do it in their hours, the wait follows, then what is not begun. What
 * is begun goes on meanwhile: its step waits for nothing.
 *
 * Limits: it is taken to come before everything that is not begun, also where two things could go on side by side.
 */
export function withBesides(of: PieceTasks, { says, handsMin, waitMin, first }: Besides): PieceTasks {
  if (!(handsMin > 0) && !(waitMin > 0)) return of
  const begun = new Set(of.tasks.flatMap(t => (t.fixed === null || t.step === null ? [] : [t.step])))
  const free = (t: Task) => t.fixed === null && t.kind !== 'delivery' && !begun.has(t.step ?? '')
  const last = of.tasks.findLast(t => t.kind !== 'delivery')
  const after = first ? of.tasks.filter(free) : last !== undefined && free(last) ? [last] : []
  const common: Omit<Task, 'id' | 'says' | 'minutes' | 'attended' | 'mayPause' | 'needs'> = {
    piece: of.tasks[0]?.piece ?? '',
    step: null,
    at: '',
    kind: 'mend',
    band: null,
    basis: { from: 'practice', says: 'common practice, no source' },
    safety: [],
    fixed: null,
    notBeforeMin: null,
    dueMin: null
  }
  const own: Task[] = []
  if (handsMin > 0)
    own.push({
      ...common,
      id: 'mend',
      says,
      minutes: handsMin,
      attended: true,
      mayPause: true,
      needs: ['hands']
    })
  if (waitMin > 0)
    own.push({
      ...common,
      id: 'mend: wait',
      says: `${says}: wait`,
      minutes: waitMin,
      attended: false,
      mayPause: false,
      needs: []
    })
  const gap = (before: string, then: string): Gap => ({
    before,
    after: then,
    from: 'end',
    to: 'start',
    leastMin: 0,
    mostMin: null,
    says: 'one after the other',
    late: null,
    soft: false
  })
  const done = own.at(-1)!.id
  const gaps = after.map(t => gap(done, t.id))
  if (own.length > 1) gaps.push(gap(own[0]!.id, done))
  return { ...of, tasks: [...of.tasks, ...own], gaps: [...of.gaps, ...gaps] }
}
