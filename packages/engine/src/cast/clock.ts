import type { CoatRecord } from '../catalogue/coat.ts'
import type { ResinRecord } from '../catalogue/resin.ts'
import type { Step, WaitReason } from '../steps/step.ts'
import type { PourCast } from './cast.ts'
import { MACHINE_DAYS } from './windows.ts'

/** When a step begins, on a clock that starts with the first pour into the mould. */
export interface StepTime {
  /** Minutes after the first pour; negative before it. */
  readonly startMin: number
  /** Length of a wait, min; 0 for other steps: their minutes are the calendar's. */
  readonly waitMin: number
  /** Whether the document gave the moment or the wait. */
  readonly given: boolean
}

const DAY = 24 * 60
/**
 * When a filling is hard enough to sand, by what its resin is made for, min: thin resins a day (hard after
 * 12 h), medium two, deep ones three (48-72 h until they are hard). Common practice, no source.
 */
const SAND_AFTER_MIN = { thin: DAY, medium: 2 * DAY, deep: 3 * DAY, none: 2 * DAY } as const

/**
 * A clock of waits: work itself takes no time on it, waits do. Waits of the document count as given; those we
 * put in take the opening of their window; a filled marking is sanded when its own resin (`fills`, by marking) is
 * hard. Moments (`at`) set the clock when at least two are given.
 *
 * Limits: no hours of work, no nights: the calendar knows those.
 */
export function clockOf(
  steps: readonly Step[],
  casts: readonly (PourCast | null)[],
  coats: readonly (CoatRecord | null)[],
  fills: readonly { readonly record: Pick<ResinRecord, 'use'> }[]
): StepTime[] {
  let clock = 0
  let lastPour: PourCast | null = null
  let anchor: { ms: number; min: number } | null = null
  const out = steps.map((step): StepTime => {
    let given = false
    const begins = step.begins ?? (step.kind === 'pour' ? step.pour!.value.start : undefined)
    if (begins !== undefined) {
      const ms = Date.parse(begins)
      if (anchor === null) anchor = { ms, min: clock }
      else {
        clock = Math.max(clock, anchor.min + (ms - anchor.ms) / 60_000)
        given = true
      }
    }
    if (step.kind !== 'wait') {
      const start = clock
      if (step.kind === 'pour') lastPour = casts[step.pour!.index] ?? lastPour
      return { startMin: start, waitMin: 0, given }
    }
    const next = steps[step.number]
    const after =
      step.why === 'recoat' && next !== undefined
        ? (untilMoment(steps, step, anchor, clock) ?? pourAfter(steps, step))
        : undefined
    const waitMin =
      step.waitMin ??
      after ??
      (step.why === 'sand' ? sandAfter(steps, step, casts, fills) : usualWait(step.why, lastPour, coats))
    const start = clock
    clock += waitMin
    return { startMin: start, waitMin, given: step.waitMin !== undefined || after !== undefined }
  })
  const first = steps.findIndex(s => s.kind === 'pour' && s.pour!.value.kind === 'cast')
  const zero = first < 0 ? 0 : out[first]!.startMin
  return out.map(t => ({ ...t, startMin: t.startMin - zero }))
}

/**
 * A wait that ends at the moment the document gives the next pour, min; undefined where it gives none. A moment that is
 * gone by already ends it at once: the pour then comes too early, and a finding says so.
 */
function untilMoment(
  steps: readonly Step[],
  wait: Step,
  anchor: { readonly ms: number; readonly min: number } | null,
  clock: number
): number | undefined {
  const pour = steps.slice(wait.number).find(s => s.kind === 'pour')
  const begins = pour?.begins ?? pour?.pour?.value.start
  if (begins === undefined || anchor === null) return undefined
  return Math.max(0, anchor.min + (Date.parse(begins) - anchor.ms) / 60_000 - clock)
}

function pourAfter(steps: readonly Step[], wait: Step): number | undefined {
  return steps.slice(wait.number).find(s => s.kind === 'pour')?.pour?.value.after
}

// What was filled since the last such wait decides, the slowest of it: a marking by its resin, an inlay by its own
// windows, a day at least.
function sandAfter(
  steps: readonly Step[],
  wait: Step,
  casts: readonly (PourCast | null)[],
  fills: readonly { readonly record: Pick<ResinRecord, 'use'> }[]
): number {
  const before = steps.slice(0, wait.number - 1)
  const since = before.slice(before.findLastIndex(s => s.kind === 'wait' && s.why === 'sand') + 1)
  const filled = since.filter(s => s.kind === 'fill' || s.pour?.value.kind === 'inlay')
  // Nothing was filled: the last pour is what hardens.
  const soft =
    filled.length > 0 ? filled : before.filter(s => s.kind === 'fill' || s.kind === 'pour').slice(-1)
  if (soft.length === 0) return SAND_AFTER_MIN.none
  const waits = soft.map(s =>
    s.kind === 'fill'
      ? SAND_AFTER_MIN[fills[s.marking!.index]?.record.use ?? 'none']
      : Math.max(DAY, casts[s.pour!.index]?.windows.sand.open ?? SAND_AFTER_MIN.none)
  )
  return Math.max(...waits)
}

function usualWait(
  why: Exclude<WaitReason, 'sand'> | undefined,
  pour: PourCast | null,
  coats: readonly (CoatRecord | null)[]
): number {
  switch (why) {
    case 'recoat':
      return pour?.windows.recoat.open ?? DAY
    case 'demould':
      return pour?.windows.demould.open ?? 2 * DAY
    case 'machine':
      return MACHINE_DAYS * DAY
    case 'load':
      return Math.max(0, ...coats.map(c => (c?.loadAfterDays[1] ?? 0) * DAY))
    default:
      return 0
  }
}
