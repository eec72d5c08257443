import type { Gap, Opening, Resource, Task } from '../task.ts'

/**
 * What a calendar is asked, and what it answers. Minutes since the origin throughout; the origin is a whole minute.
 */
export interface CalendarProblem {
  readonly tasks: readonly Task[]
  readonly gaps: readonly Gap[]
  /** Hours in which attended work may lie: in order, apart, up to as far as is looked. */
  readonly openings: readonly Opening[]
  /** How many there are of a resource, 1 where not named. */
  readonly capacity?: Readonly<Record<Resource, number>>
  /** Nothing that is not fixed begins before it. */
  readonly asOfMin: number
  /** Odd hours (night, meals): attended work in them is put elsewhere where it costs nothing else. */
  readonly odd?: readonly Opening[]
}

/** How much is searched: counts, never time, so that the answer is the same on every machine. */
export interface SolveEffort {
  /** Orders of two tasks tried to find the earliest finish. */
  readonly nodes: number
  /** Moves tried to come to the bench less often. */
  readonly moves: number
  /** Sets of constraints tried to name the smallest clash; fifty nodes of search count as one, large problems for more. */
  readonly asks: number
  /** false: a clash is told by any set of which every member is needed, not by the smallest. */
  readonly smallest?: boolean
}

/** One task in its place. */
export interface Placed {
  readonly id: string
  readonly startMin: number
  readonly endMin: number
  /** The spans worked, apart only where the task pauses over closed hours. */
  readonly parts: readonly Opening[]
  /** Latest start that keeps the finish of its piece, the order of work being kept. */
  readonly latestStartMin: number
}

/** Why a link of the critical chain cannot begin earlier. */
export type ChainWhy =
  | { readonly kind: 'gap'; readonly gap: number }
  | { readonly kind: 'resource'; readonly resource: Resource }
  | { readonly kind: 'as of' | 'not before' | 'fixed' }

export interface ChainLink {
  readonly id: string
  /** What it waits for: the end or start of the link before it, or a date of its own. */
  readonly why: ChainWhy
  /** Minutes lost to closed hours between what it waits for and its start. */
  readonly hoursMin: number
}

export interface CalendarSolution {
  readonly kind: 'placed'
  readonly placed: readonly Placed[]
  readonly finishMin: number
  readonly finishOf: Readonly<Record<string, number>>
  /** Nothing can finish earlier than this; equal to the finish when `proved`. */
  readonly boundMin: number
  /** Whether the finish (and before it the minutes late against soft ends) is shown to be the least there is. */
  readonly proved: boolean
  /** From the first that holds the finish to the last. */
  readonly chain: readonly ChainLink[]
  /** Runs of attended work: times the maker comes to the bench. Not proved to be fewest. */
  readonly visits: number
  readonly daysVisited: number
  /** Attended minutes in odd hours. */
  readonly oddMin: number
  /** Soft ends that are missed. */
  readonly late: readonly { readonly id: string; readonly byMin: number }[]
  /** Fixed attended tasks that lie outside the hours at the bench. */
  readonly outsideHours: readonly string[]
  /** Gaps between things already done that were not kept: history, no clash. */
  readonly passed: readonly number[]
  readonly nodes: number
}

/**
 * One member of a clash. 'task': that the task takes its minutes, holds its resources and, if attended, lies in the
 * hours; 'hours': the openings; 'as of': that nothing begins before now.
 */
export type ClashMember =
  | { readonly kind: 'gap'; readonly gap: number; readonly side: 'least' | 'most' }
  | { readonly kind: 'fixed' | 'not before' | 'due' | 'task'; readonly id: string }
  | { readonly kind: 'hours' | 'as of' }

export interface CalendarClash {
  readonly kind: 'clash'
  /** With any one of them taken away the others can be kept. */
  readonly members: readonly ClashMember[]
  /** Whether no smaller set clashes. */
  readonly smallest: boolean
  /** Whether each member is shown to be needed; false when the asks ran out. */
  readonly irreducible: boolean
}

/** The search ran out of nodes before it found a calendar or showed that there is none. */
export interface CalendarUnsettled {
  readonly kind: 'unsettled'
  readonly nodes: number
}

export type CalendarAnswer = CalendarSolution | CalendarClash | CalendarUnsettled

/** How much is searched, and for one calendar at once. Effort, no fact: what is found is right with any, and told as no better than it is. */
const FULL_EFFORT: SolveEffort = { nodes: 2000, moves: 400, asks: 1500 }
export const QUICK_EFFORT: SolveEffort = { nodes: 1, moves: 0, asks: 300 }

/** Tasks placed together at the most: 600 take half a minute (measured), and each step of the search grows with them. */
export const MOST_TASKS = 600
/** Beyond so many tasks a first calendar takes more steps than usual: so many a task (measured on rows of trays). */
const MANY_TASKS = 400
const NODES_A_TASK = 16

/** The effort for a whole calendar of so many tasks. */
export function fullEffort(tasks: number): SolveEffort {
  return tasks > MANY_TASKS ? { ...FULL_EFFORT, nodes: NODES_A_TASK * tasks } : FULL_EFFORT
}
