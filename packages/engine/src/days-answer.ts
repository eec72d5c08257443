import type { CalendarProblem } from './calendar/solve/problem.ts'
import type { Opening, Task } from './calendar/task.ts'
import type { Work } from './findings/work.ts'
import type { Patch } from './piece/patch.ts'

/** A task in its place. Minutes since the origin. */
export interface DayTask {
  readonly task: Task
  readonly startMin: number
  readonly endMin: number
  /** Spans worked: apart only where it pauses over closed hours. */
  readonly parts: readonly Opening[]
  /** How much later it may begin before the finish moves. */
  readonly slackMin: number
  /** How long before it somebody is to be called, min; null: not. */
  readonly alarmMin: number | null
}

/** What has to be ordered, and until when. */
export interface OrderBy {
  readonly item: string
  /** What it is called on the buy list. */
  readonly name: string
  readonly says: string
  readonly byMin: number
  readonly days: number
}

/** A way out of a clash: what is changed, and the calendar that follows, planned anew. */
export interface WayOut {
  readonly id: string
  readonly says: string
  /** Ready so many days after the moment the plan was asked. */
  readonly readyDays: number
  readonly risk: string
  readonly on: 'piece' | 'shop' | 'plan'
  /** null: nothing in a document says it. */
  readonly patch: Patch | null
}

/** How the days are asked for. */
export interface DaysOptions {
  /** The only source of "now": ISO 8601 with offset. */
  readonly asOf: string
  /** quick: the first calendar found, machine minutes by feeds, nothing cast anew. */
  readonly effort?: 'quick' | 'full'
  /** More of a resource than one: two pairs of hands, say. */
  readonly capacity?: Readonly<Record<string, number>>
  /** Hours at the bench beside those of the shop, once: minutes from the origin. */
  readonly openOnce?: readonly Opening[]
}

/** The days of one piece or of several. */
export interface Days {
  readonly asOf: string
  readonly timeZone: string
  readonly originMs: number
  readonly names: readonly string[]
  readonly tasks: readonly DayTask[]
  /** When each piece is ready, ms since 1970, in the order of the pieces; null in a clash. */
  readonly readyMs: readonly number[] | null
  readonly firstMs: number | null
  readonly handsOnMin: number
  /** Days from the first hand on it until it is ready. */
  readonly calendarDays: number | null
  readonly visits: number
  readonly orderBy: readonly OrderBy[]
  /** By how much a wanted date is missed, min; 0 when it is kept. */
  readonly lateMin: number
  /** Why there is no calendar, in words, and the ways out; null when there is one. */
  readonly clash: { readonly says: readonly string[]; readonly smallest: boolean } | null
  readonly waysOut: readonly WayOut[]
  /** Tasks put by hand that could not be held, in words. */
  readonly notPlaced: readonly string[]
  /** Times the pours were cast anew at the starts the calendar chose; `settled`: the windows held. */
  readonly rounds: number
  readonly settled: boolean
  /** How the pours of each piece cure at those starts, in the order of the piece. */
  readonly casts: readonly Work['casts'][]
  readonly problem: CalendarProblem
}
