import type { Work } from '../findings/work.ts'
import type { Patch } from '../piece/patch.ts'
import type { TROUBLES } from '../piece/reading-schema.ts'
import type { PlanInput } from '../work.ts'
import type { BuildState } from './state.ts'

/** What went differently. */
export type TroubleKind = (typeof TROUBLES)[number]

/** One thing that went differently, as it was read, found in readings, or asked about. */
export interface Trouble {
  readonly kind: TroubleKind
  /** The entry it is about: a pour, a cut, a timber, a face; null: the piece. */
  readonly of: string | null
  /** By how much, mm; null: not known. */
  readonly byMm: number | null
  /** In one sentence, with the limit it passed. */
  readonly says: string
  /** Readings it rests on; none where it is asked about. */
  readonly readings: readonly string[]
}

/** What a condition sees. */
export interface RescueCase {
  readonly input: PlanInput
  /** The plan without its readings, and with them. */
  readonly plan: Work
  readonly built: Work
  readonly state: BuildState
  readonly asOf: string
}

/** A case of one trouble, with what was answered so far. */
export interface TroubleCase extends RescueCase {
  readonly trouble: Trouble
  readonly answers: ReadonlyMap<string, string>
}

/** What is asked about a trouble. The tool asks and never says what the cause was. */
export interface Question {
  readonly key: string
  readonly asks: string
  /** Words that may be answered, each with what it changes. Empty: a number of mm, or a name. */
  readonly options: readonly { readonly word: string; readonly means: string }[]
  /** Where it is no choice: what is to be answered. */
  readonly free?: 'mm' | 'name' | 'point'
}

/** A cause that cannot have been, with the arithmetic. */
export interface Refusal {
  readonly key: string
  readonly says: string
}

/** How often a way works, as those who do it say. */
export type Chance = 'usually works' | 'about even' | 'seldom works'

/** A way on before it is re-planned. Its minutes, days and chance: common practice, no source. */
export interface WayDraft {
  readonly id: string
  /** What it is, as a button says it. */
  readonly does: string
  /** What is done, in order. */
  readonly how: readonly string[]
  /** Rows of the table of safety lines that bite. */
  readonly hazards: readonly string[]
  /** Change of the piece; empty: the piece stays as it is drawn. */
  readonly patch: Patch
  /** What is given up; empty: nothing that shows. */
  readonly gives: readonly string[]
  /** Work of hands that the plan has no step for, min. */
  readonly handsMin: number
  /** Waiting that the plan has no step for, days. */
  readonly waitDays: number
  readonly chance: Chance
  /** The piece is given up. */
  readonly lost?: boolean
  /** What answer excludes it, or speaks for it. */
  readonly excluded?: string | null
  readonly favoured?: string | null
}

/** What can be done about one kind of trouble. One a file; an index lists them. */
export interface Condition {
  readonly kind: TroubleKind
  /** What it looks for, for the list of conditions. */
  readonly about: string
  /** Finds it in readings, by the bands of the plan itself. */
  readonly found: (at: RescueCase) => readonly Trouble[]
  readonly questions: (at: TroubleCase) => readonly Question[]
  readonly refused: (at: TroubleCase) => readonly Refusal[]
  readonly ways: (at: TroubleCase) => readonly WayDraft[]
}
