import type { TroubleKind } from '../../../engine/src/rescue/condition.ts'
import type { BenchAsk } from '../../../engine/src/sheets/bench-ask.ts'
import type { BenchTimer } from '../../../engine/src/sheets/bench-timer.ts'
import type { RunAmounts, RunTable } from '../../../engine/src/sheets/run-part.ts'
import type { RunSafety } from '../../../engine/src/sheets/run-sheet.ts'

/** One step as the bench shows it. */
export interface BenchStepView {
  readonly number: number
  readonly key: string
  readonly kind: string
  readonly title: string
  readonly face: string
  readonly brief: string
  readonly when: string
  readonly does: readonly string[]
  readonly amounts: RunAmounts | null
  readonly facts: readonly string[]
  readonly tables: readonly RunTable[]
  readonly findings: readonly { readonly kind: 'stop' | 'caution' | 'note'; readonly says: string }[]
  readonly safety: readonly RunSafety[]
  readonly timers: readonly BenchTimer[]
  readonly asks: readonly BenchAsk[]
  /** null: not yet; without a moment when it follows from what was done after it. */
  readonly done: { readonly atMs: number | null } | null
  /** When it was begun; null: not, or nothing says when. */
  readonly begunMs: number | null
  /** Whether its beginning is told by a press: what a maker does, and no pour, which is begun by mixing. */
  readonly mayBegin: boolean
  /** Notes and photos taken at it, oldest first. */
  readonly kept: readonly BenchKept[]
}

/** A note or a photo of a step. */
export interface BenchKept {
  readonly id: string
  readonly atMs: number
  readonly note: string
  /** Name the photo is kept under; null: words alone. */
  readonly photo: string | null
}

export interface BenchView {
  readonly name: string
  readonly verdict: 'stop' | 'caution' | 'ready'
  /** false: a stop stands; steps are those already begun. */
  readonly written: boolean
  readonly stops: readonly string[]
  readonly count: number
  /** Where the build stands, in words. */
  readonly says: string
  /** What is otherwise than planned, and readings that do not go together. */
  readonly changed: readonly string[]
  readonly odd: readonly string[]
  readonly steps: readonly BenchStepView[]
  readonly makingSafe: readonly RunSafety[]
  /** What may go differently, for the maker to choose from. */
  readonly troubles: readonly { readonly kind: TroubleKind; readonly about: string }[]
}
