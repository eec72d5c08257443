import { PRACTICE_WAIT } from '../../calendar/practice-minutes.ts'
import type { PourCast } from '../../cast/cast.ts'
import { MACHINE_DAYS } from '../../cast/windows.ts'
import type { Entry } from '../../piece/entry.ts'
import type { Cut, Pour } from '../../piece/piece-schema.ts'
import { needsMould } from '../../steps/step.ts'
import type { StepProgress } from '../../steps/step-states.ts'
import type { RescueCase, TroubleCase } from '../condition.ts'

/** Whether the piece lies in its mould now. */
export function inMould({ built, state }: RescueCase): boolean {
  if (!needsMould(built.piece)) return false
  const k = built.steps.findIndex(s => s.kind === 'demould')
  return k < 0 || !isDone(state.steps[k]!.progress)
}

export function isDone(progress: StepProgress): boolean {
  return progress === 'done' || progress === 'implied'
}

/** Whether a pour is poured. */
export function isPoured({ built, state }: RescueCase, index: number): boolean {
  const k = built.steps.findIndex(s => s.kind === 'pour' && s.pour!.index === index)
  return k >= 0 && state.steps[k]!.progress !== 'left'
}

/** A pour that went differently, and what lies around it. */
export interface PourSpot {
  readonly index: number
  readonly entry: Entry<Pour>
  readonly cast: PourCast | null
  /** The next casting into the mould that is not poured yet; null: none, or it is poured. */
  readonly next: Entry<Pour> | null
  /** Whether a casting stands on it already. */
  readonly covered: boolean
  /** Whether it is the last casting. */
  readonly last: boolean
  /** Minutes since it was begun; null: not known. */
  readonly ageMin: number | null
}

/** The pour a trouble is about: the one it names, else the last one poured, else the first. */
export function pourSpot(at: TroubleCase): PourSpot {
  const { entries } = at.built
  const named = entries.pours.find(p => p.id === at.trouble.of)
  const poured = entries.pours.filter(p => p.value.kind === 'cast' && isPoured(at, p.index))
  const casts = entries.pours.filter(p => p.value.kind === 'cast')
  return spotOf(at, named ?? poured.at(-1) ?? casts[0] ?? entries.pours[0]!)
}

export function spotOf(at: RescueCase, entry: Entry<Pour>): PourSpot {
  const { entries, casts } = at.built
  const after = entries.pours.filter(p => p.index > entry.index && p.value.kind === 'cast')
  const begun = entry.value.start
  return {
    index: entry.index,
    entry,
    cast: casts[entry.index] ?? null,
    next: after[0] !== undefined && !isPoured(at, after[0].index) ? after[0] : null,
    covered: after[0] !== undefined && isPoured(at, after[0].index),
    last: after.length === 0,
    ageMin: begun === undefined ? null : (Date.parse(at.asOf) - Date.parse(begun)) / 60_000
  }
}

/** The cut a trouble is about: the one it names, else the first. */
export function cutSpot(at: TroubleCase): Entry<Cut> | null {
  const { cuts } = at.built.entries
  return cuts.find(c => c.id === at.trouble.of) ?? cuts[0] ?? null
}

/** By how much, mm: as answered, as read, else a first guess that the maker replaces. */
export function howMuch(at: TroubleCase, otherwise: number): number {
  const typed = at.answers.get('by')
  return typed === undefined ? (at.trouble.byMm ?? otherwise) : Number(typed)
}

/** Why nothing more can be laid on a pour; null: it can. A flood and an inlay are filled where they are. */
export function notOn(at: TroubleCase, { entry, covered }: PourSpot): string | null {
  if (entry.value.kind !== 'cast') return null
  if (!inMould(at)) return 'it is out of the mould: nothing holds the resin'
  return covered ? 'another layer stands on it already' : null
}

/** Asks by how much where nothing was read. */
export function askBy(at: TroubleCase, asks: string) {
  return at.trouble.byMm === null ? [{ key: 'by', asks, options: [], free: 'mm' as const }] : []
}

/** Whether the next layer still bonds by itself: its words, and what to do when it does not. */
export function bonding({ cast, ageMin }: PourSpot): {
  readonly open: boolean
  readonly how: readonly string[]
} {
  const close = cast?.windows.recoat.close ?? null
  if (ageMin !== null && close !== null && ageMin <= close)
    return {
      open: true,
      how: ['its recoat window is open: pour onto it as it is, once it has gelled and cooled']
    }
  return {
    open: false,
    how: [
      'when its recoat window is over: wash the face with warm water and a pad, dry it, sand it matt with 120 to 150, vacuum, wipe with a clean cloth'
    ]
  }
}

/** Days in the air of a room, free on all sides, after which a piece or a timber has come to it for the most part (practice; thicker takes longer). */
export const REST_DAYS = 14

/** A day, min. */
const DAY_MIN = 1440

/**
 * Days that what is poured anew takes until the build can go on: to the window of the next layer where one is still to
 * come, which then cures on its own, else to the cutter. By the cast of the pour; without one by practice.
 */
export function curedAnewDays({ cast, next }: Pick<PourSpot, 'cast' | 'next'>): number {
  return next === null
    ? (cast?.windows.machine.open ?? MACHINE_DAYS * DAY_MIN) / DAY_MIN
    : (cast?.windows.recoat.open ?? DAY_MIN) / DAY_MIN
}

/** Days that a mould sealed anew takes until it can be poured into: sealant overnight, and dry after its water test. */
export function mouldAnewDays({ built }: RescueCase): number {
  return (built.piece.mould.sealant + PRACTICE_WAIT.mouldDries) / DAY_MIN
}

/** Hazards of sanding a layer matt and pouring on it. */
export const TOP_UP_HAZARDS = ['wet-sanding', 'mixing-resin', 'pouring', 'leftover-in-cup'] as const
