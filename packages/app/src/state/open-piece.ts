import { computed, signal } from '@preact/signals'
import type { Patch } from '../../../engine/src/piece/patch.ts'
import type { Problem } from '../../../engine/src/piece/problem.ts'
import type { PlacedPicture } from '../../../engine/src/sheets/picture-mark.ts'
import type { Aside } from '../net/api.ts'
import type { Pending } from '../offline/keep.ts'
import type { Json } from '../worker/document.ts'
import type { PlannedView } from '../worker/views.ts'

/** One edit: what it did, in words, and both ways. */
export interface Edit {
  readonly says: string
  readonly patch: Patch
  readonly inverse: Patch
}

/** The piece on the desk. */
export interface OpenPiece {
  readonly id: string
  readonly revision: number
  readonly document: Json
  readonly files: Readonly<Record<string, string>>
  /** What was measured of it, as the server had it last. */
  readonly readings?: readonly Json[]
}

/** What the server has not acknowledged of the piece on the desk. It goes out in this order. */
export interface Unsent {
  /** Names of drawings beside the piece. */
  readonly drawings: readonly string[]
  readonly edit: Pending | null
  /** What is kept aside and need not be once the edit is there. */
  readonly settled: readonly number[]
  /** Readings, oldest first; each has an id of its own, so that sending one twice counts once. */
  readonly readings: readonly Json[]
}

export type Saving = 'saved' | 'saving' | 'kept' | 'failed'

/** What another device made of the piece while it was changed here. */
export interface Clash {
  readonly revision: number
  readonly document: Json
  /** Drawings beside it; null when they could not be asked for. */
  readonly files: Readonly<Record<string, string>> | null
  /** Mine as the server keeps it, and the edit it came by. */
  readonly aside: Aside | null
  readonly edit: string
}

export const NOTHING_UNSENT: Unsent = { drawings: [], edit: null, settled: [], readings: [] }

export const piece = signal<OpenPiece | null>(null)
export const missing = signal<string | null>(null)
export const view = signal<PlannedView | null>(null)
/** Colours to lay on the plan where they vary over it, and what they are of (see planning.ts). */
export const picture = signal<{ readonly of: string; readonly placed: PlacedPicture | null } | null>(null)
/** What the plan shown is of, as a picture would be: its model and face. */
export const pictured = signal('')
/** Set while the figures shown precede the last edit. */
export const stale = signal(false)
/** How much of the cast of the whole mould lies behind, 0..1; null while none is under way. */
export const castShare = signal<number | null>(null)
export const problems = signal<readonly Problem[]>([])
export const failure = signal<string | null>(null)
export const unsent = signal<Unsent>(NOTHING_UNSENT)
export const saving = signal<Saving>('saved')
export const saveSays = signal('')
/** What the maker should know of the piece, in words, until it is put away; empty for nothing. */
export const deskSays = signal('')
export const clash = signal<Clash | null>(null)
/** What the server keeps of the piece beside its revisions. */
export const asides = signal<readonly Aside[]>([])
export const done = signal<readonly Edit[]>([])
export const undone = signal<readonly Edit[]>([])
/** JSON Pointer of the entry in hand; null for none. */
export const chosen = signal<string | null>(null)
/** What was last done, for those who listen. */
export const said = signal('')
export const canUndo = computed(() => done.value.length > 0)
export const canRedo = computed(() => undone.value.length > 0)

/** Readings as the server has them, with those after them that it has not got yet. */
export function withUnsentReadings(
  stored: readonly Json[],
  mine: readonly Json[] = unsent.value.readings
): readonly Json[] {
  return [...stored, ...mine.filter(m => !stored.some(r => r['id'] === m['id']))]
}

/** Drawings as the server has them, with those over them that it has not got yet. */
export function withUnsent(files: OpenPiece['files'], own: OpenPiece['files']): OpenPiece['files'] {
  const mine = unsent.value.drawings.flatMap(name =>
    own[name] === undefined ? [] : [[name, own[name]] as const]
  )
  return { ...files, ...Object.fromEntries(mine) }
}
