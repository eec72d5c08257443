import type { Patch } from '../../../engine/src/piece/patch.ts'

/** A task put by the maker, in minutes since the origin. */
export interface DayMove {
  readonly id: string
  readonly toMin: number
}

/** What a task asks of the maker: how its bar is drawn. */
export type DayLane = 'hands' | 'stay' | 'machine' | 'alone'

export interface DayTaskView {
  readonly id: string
  readonly says: string
  readonly lane: DayLane
  readonly startMin: number
  readonly endMin: number
  /** "Thu 26 Nov 17:30 to 18:45". */
  readonly when: string
  /** The same under the heading of its day: "17:30 to 18:45". */
  readonly hours: string
  readonly takes: string
  readonly basis: string
  readonly slack: string | null
  readonly fixed: boolean
  readonly canMove: boolean
  /** Put there by hand, as the piece says. */
  readonly placed: boolean
  readonly safety: readonly string[]
}

export interface DaySpan {
  readonly id: string
  readonly lane: DayLane
  readonly fromMin: number
  readonly toMin: number
}

/** One day: its spans, and stretches drawn to one scale each. */
export interface DayView {
  readonly name: string
  readonly date: string
  readonly quiet: boolean
  readonly fromMin: number
  readonly toMin: number
  readonly width: number
  readonly stretches: readonly {
    readonly kind: 'open' | 'night' | 'away'
    readonly fromMin: number
    readonly toMin: number
    readonly at: number
    readonly width: number
  }[]
  readonly ticks: readonly { readonly atMin: number; readonly says: string }[]
  readonly spans: readonly DaySpan[]
}

/** When something is best done: min since the origin; the ends are as soft as the doubt. */
export interface BestTime {
  /** The task it is for. */
  readonly id: string
  readonly says: string
  /** Earliest it may open, latest it does, earliest it may close, latest it does. */
  readonly ends: readonly [number, number, number, number]
}

export interface DaysView {
  /** ISO 8601 with the offset of the place; null in a clash. */
  readonly ready: string | null
  readonly readyWords: string
  readonly handsOn: string
  readonly calendarDays: number | null
  readonly visits: number
  readonly settled: boolean
  readonly late: string | null
  readonly tightest: { readonly says: string; readonly slack: string } | null
  /** What to order, day by day, the first first. */
  readonly orderBy: readonly {
    readonly by: string
    readonly what: readonly { readonly name: string; readonly days: number }[]
  }[]
  readonly clash: readonly string[] | null
  readonly waysOut: readonly {
    readonly id: string
    readonly says: string
    readonly ready: string
    readonly risk: string
    readonly on: 'piece' | 'shop' | 'plan'
    readonly patch: Patch | null
  }[]
  readonly days: readonly DayView[]
  readonly tasks: readonly DayTaskView[]
  /** What the last task that was put did; null when none was. */
  readonly moved: {
    readonly says: string
    readonly outsideHours: boolean
    readonly clash: readonly string[] | null
    readonly others: readonly string[]
    /** Ready later (or sooner, below 0) than before any was put, min. */
    readonly readyMin: number
  } | null
  /** Tasks put by hand once this is kept, and those that could not be held, in words. */
  readonly placed: readonly { readonly task: string; readonly at: string }[]
  readonly notPlaced: readonly string[]
  readonly best: readonly BestTime[]
  readonly ics: string
}
