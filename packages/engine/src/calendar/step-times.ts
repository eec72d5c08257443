import type { StepState } from '../steps/step-states.ts'

/** What was recorded of a step: moments in ms since 1970. */
export interface StepRecord {
  readonly beganMs: number | null
  readonly doneMs: number | null
  /** Hands-on minutes, as said. */
  readonly tookMin: number | null
  /** From "began" to "done" as recorded, min: hands-on where nothing of the step waits; null: not recorded. */
  readonly spanMin: number | null
  /** Nothing says when it was done, but a step after it was begun. */
  readonly implied: boolean
}

/** What the readings say of each step that any of them tells of, by key: its state as moments. */
export function stepRecords(states: readonly StepState[]): Map<string, StepRecord> {
  const ms = (at: string | null) => (at === null ? null : Date.parse(at))
  return new Map(
    states
      .filter(s => s.beganAt !== null || s.doneAt !== null || s.minutes !== null)
      .map(s => [
        s.key,
        {
          beganMs: ms(s.beganAt),
          doneMs: ms(s.doneAt),
          tookMin: s.minutes,
          spanMin: s.spanMin,
          implied: s.progress === 'implied'
        }
      ])
  )
}
