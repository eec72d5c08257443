import type { Step } from '../steps/step.ts'
import type { LearnedFactor } from './learned-minutes.ts'
import type { PracticeKey } from './practice-minutes.ts'
import { practiceMin, practiceSays } from './practice-minutes.ts'
import type { Gap, Resource, Task, TaskBasis, TaskKind } from './task.ts'

/** Minutes with what they follow from. */
export interface Reckoned {
  readonly minutes: number
  readonly basis: TaskBasis
}

/** Minutes of practice: `count` times, over an area, m². */
export function byPractice(key: PracticeKey, count = 1, areaM2 = 0): Reckoned {
  return { minutes: practiceMin(key, count, areaM2), basis: { from: 'practice', says: practiceSays(key) } }
}

/** Minutes a model of the piece gives. */
export function byModel(minutes: number, says: string): Reckoned {
  return { minutes, basis: { from: 'model', says } }
}

/** Minutes the document gives. */
export function byDocument(minutes: number): Reckoned {
  return { minutes, basis: { from: 'source', says: 'as the piece says' } }
}

/** What a task is beside its step. */
export interface NewTask {
  readonly what: string
  readonly kind: TaskKind
  readonly says: string
  readonly takes: Reckoned
  readonly attended?: boolean
  readonly mayPause?: boolean
  readonly needs?: readonly Resource[]
  readonly at?: string
  /** So many times over, for as many blanks; left out: once. */
  readonly times?: number
  /** The safety lines of the step bite at this task; left out: they do. */
  readonly hazards?: boolean
}

/** A wait between two tasks of the list, by their ids. */
export type NewGap = Pick<Gap, 'before' | 'after' | 'says'> & Partial<Gap>

/** The step whose tasks are being written down. */
export interface OnStep {
  readonly step: Step
  readonly key: string
  readonly safety: readonly string[]
  /** Blanks it is done for here. */
  readonly blanks: number
  /** Which part of a row of blanks it is of: "fill 2 of 3", "blanks 1 to 7"; "" where it is of all. */
  readonly part: string
  /** The fill of the mould it is of, from 1; null: it is of none, or there is one. */
  readonly fill: number | null
}

/**
 * The tasks of a piece as they are written down: each after those it has to follow. Work of the maker holds the hands
 * and may pause unless it says otherwise; what passes by itself holds nothing.
 */
export class TaskList {
  readonly tasks: Task[] = []
  readonly gaps: Gap[] = []
  /** Minutes before corrections, by id: what recorded times are compared with. */
  readonly reckoned = new Map<string, number>()

  readonly piece: string
  readonly factors: ReadonlyMap<TaskKind, LearnedFactor>
  readonly corrections: ReadonlyMap<string, number>

  constructor(
    piece: string,
    factors: ReadonlyMap<TaskKind, LearnedFactor>,
    corrections: ReadonlyMap<string, number>
  ) {
    this.piece = piece
    this.factors = factors
    this.corrections = corrections
  }

  /** Adds a task after the ends of others; its id. */
  add(on: OnStep | null, task: NewTask, after: readonly string[]): string {
    const part = on?.part ?? ''
    const what = [task.what, part].filter(w => w !== '').join(', ')
    const id = this.free(on === null ? task.what : what === '' ? on.key : `${on.key}: ${what}`)
    const attended = task.attended ?? true
    const times = task.times ?? 1
    const takes = times === 1 ? task.takes : manyTimes(task.takes, times)
    const { minutes, basis } = attended ? this.corrected(task.kind, takes) : takes
    this.reckoned.set(id, takes.minutes)
    this.tasks.push({
      id,
      piece: this.piece,
      step: on?.key ?? null,
      at: task.at ?? on?.step.at ?? '',
      kind: task.kind,
      ...(on === null || on.fill === null ? {} : { fill: on.fill }),
      says: `${task.says}${times === 1 ? '' : `, ${times} times`}${part === '' ? '' : ` (${part})`}`,
      minutes,
      band: null,
      basis,
      attended,
      mayPause: task.mayPause ?? attended,
      needs: task.needs ?? (attended ? ['hands'] : []),
      safety: attended && task.hazards !== false ? (on?.safety ?? []) : [],
      fixed: null,
      notBeforeMin: null,
      dueMin: null
    })
    for (const before of new Set(after)) this.gap({ before, after: id, says: 'one after the other' })
    return id
  }

  gap(gap: NewGap): void {
    this.gaps.push({
      from: 'end',
      to: 'start',
      leastMin: 0,
      mostMin: null,
      late: null,
      soft: false,
      ...gap
    })
  }

  task(id: string): Task {
    return this.tasks.find(t => t.id === id)!
  }

  private free(id: string): string {
    if (!this.reckoned.has(id)) return id
    let n = 2
    while (this.reckoned.has(`${id} ${n}`)) n++
    return `${id} ${n}`
  }

  // What the maker wrote down stands before what was learned.
  private corrected(kind: TaskKind, { minutes, basis }: Reckoned): Reckoned {
    // A machine runs as its program says, whoever stands by.
    if (basis.from === 'source') return { minutes, basis }
    const own = this.corrections.get(kind)
    if (own !== undefined)
      return { minutes: minutes * own, basis: { from: 'shop', says: `${basis.says}; × ${own} in this shop` } }
    const learned = this.factors.get(kind)
    if (learned === undefined) return { minutes, basis }
    const times = Math.round(learned.factor * 100) / 100
    return {
      minutes: minutes * learned.factor,
      basis: {
        from: 'learned',
        says: `${basis.says}; × ${times} by ${learned.records} recorded ${learned.records === 1 ? 'time' : 'times'}`
      }
    }
  }
}

function manyTimes({ minutes, basis }: Reckoned, times: number): Reckoned {
  return { minutes: minutes * times, basis: { ...basis, says: `${times} times: ${basis.says}` } }
}
