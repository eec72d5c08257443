import { batch, computed, effect, signal } from '@preact/signals'
import type { Patch } from '../../../engine/src/piece/patch.ts'
import { applyPatch, invertPatch } from '../../../engine/src/piece/patch.ts'
import type { Problem } from '../../../engine/src/piece/problem.ts'
import { modelFrom } from '../../../engine/src/sheets/page-data.ts'
import { at as valueAt } from '../card/document-place.ts'
import type { Aside, StoredPiece } from '../net/api.ts'
import { ApiProblem, api, newId, Unreachable } from '../net/api.ts'
import type { KeptPiece, Pending } from '../offline/keep.ts'
import { keepPiece, keptPiece } from '../offline/keep.ts'
import type { Json, PlannedView } from '../worker/messages.ts'
import { askEngine } from './engine.ts'
import { reached, unreached } from './reach.ts'
import { face, width } from './screen.ts'
import { shop } from './shop.ts'

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
}

export type Saving = 'saved' | 'saving' | 'kept' | 'failed'

/** What another device made of the piece while it was changed here. */
export interface Clash {
  readonly revision: number
  readonly document: Json
  readonly aside: Aside | null
}

export const piece = signal<OpenPiece | null>(null)
export const missing = signal<string | null>(null)
export const view = signal<PlannedView | null>(null)
/** Set while the figures shown precede the last edit. */
export const stale = signal(false)
export const problems = signal<readonly Problem[]>([])
export const failure = signal<string | null>(null)
export const saving = signal<Saving>('saved')
export const saveSays = signal('')
export const clash = signal<Clash | null>(null)
export const done = signal<readonly Edit[]>([])
export const undone = signal<readonly Edit[]>([])
/** JSON Pointer of the entry in hand; null for none. */
export const chosen = signal<string | null>(null)
/** What was last done, for those who listen. */
export const said = signal('')
export const canUndo = computed(() => done.value.length > 0)
export const canRedo = computed(() => undone.value.length > 0)

/** Most edits that can be taken back. */
const MOST_EDITS = 500
/** How long the desk rests before the full pass of heat and cure, ms. */
const REST_MS = 350

let pending: Pending | null = null
let sending = false
let asked = 0
let drawnFor = ''
let rest: ReturnType<typeof setTimeout> | undefined

/** Puts a piece on the desk, from the server or, without one, from what this browser keeps. */
export async function openPiece(id: string): Promise<void> {
  if (piece.value?.id === id) return
  shut()
  missing.value = null
  const kept = await keptPiece(id)
  try {
    const stored = await api<StoredPiece>('GET', `/api/pieces/${id}`)
    reached()
    // What was changed here and not acknowledged goes on from what it was made on; the server says if it clashes.
    if (kept?.pending) lay({ ...kept, document: kept.pending.document, files: stored.files }, kept.pending)
    else lay(stored, null)
  } catch (e) {
    if (e instanceof Unreachable) unreached()
    if (kept !== null) lay({ ...kept, document: kept.pending?.document ?? kept.document }, kept.pending)
    else missing.value = id
  }
}

function lay(from: Omit<OpenPiece, never>, unsent: Pending | null): void {
  pending = unsent
  batch(() => {
    piece.value = { id: from.id, revision: from.revision, document: from.document, files: from.files }
    saving.value = unsent === null ? 'saved' : 'kept'
    chosen.value = null
  })
  void keepHere()
  plan()
  if (unsent !== null) void send()
}

/** Takes the piece off the desk. What was not sent stays in this browser. */
export function shut(): void {
  clearTimeout(rest)
  asked = 0
  pending = null
  batch(() => {
    piece.value = null
    view.value = null
    stale.value = false
    problems.value = []
    failure.value = null
    clash.value = null
    done.value = []
    undone.value = []
    chosen.value = null
  })
}

/** Makes an edit: at once on the desk, then planned, then saved. @throws PatchProblem, leaving all as it was */
export function edit(says: string, patch: Patch): void {
  const at = piece.value
  if (at === null || patch.length === 0) return
  const inverse = invertPatch(at.document, patch)
  change(applyPatch(at.document, patch), says)
  batch(() => {
    done.value = [...done.value.slice(-MOST_EDITS + 1), { says, patch, inverse }]
    undone.value = []
    said.value = says
  })
}

export function undo(): void {
  const last = done.value.at(-1)
  const at = piece.value
  if (last === undefined || at === null) return
  change(applyPatch(at.document, last.inverse), last.says)
  batch(() => {
    done.value = done.value.slice(0, -1)
    undone.value = [...undone.value, last]
    said.value = last.says
  })
}

export function redo(): void {
  const next = undone.value.at(-1)
  const at = piece.value
  if (next === undefined || at === null) return
  change(applyPatch(at.document, next.patch), next.says)
  batch(() => {
    undone.value = undone.value.slice(0, -1)
    done.value = [...done.value, next]
    said.value = next.says
  })
}

function change(document: Json, says: string): void {
  const at = piece.value!
  piece.value = { ...at, document }
  // What is in hand and no longer there is let go of.
  if (chosen.value !== null && chosen.value !== '/mould' && valueAt(document, chosen.value) === undefined)
    chosen.value = null
  pending = { base: at.revision, edit: newId(), document, says }
  saving.value = clash.value === null ? 'saving' : 'kept'
  void keepHere()
  plan()
  void send()
}

/** Puts a drawing beside the piece, for shapes that name it. */
export async function addFile(name: string, text: string): Promise<void> {
  const at = piece.value
  if (at === null) return
  await api(
    'PUT',
    `/api/pieces/${at.id}/files/${encodeURIComponent(name)}`,
    new Blob([text], { type: 'text/plain' })
  )
  piece.value = { ...at, files: { ...at.files, [name]: text } }
  void keepHere()
  plan()
}

/** Plans what is on the desk: a first pass at once, the full pass when the hand rests. */
export function plan(): void {
  clearTimeout(rest)
  ask('preview')
}

function ask(effort: 'preview' | 'full'): void {
  const at = piece.value
  if (at === null) return
  if (view.value !== null && effort === 'preview') stale.value = true
  const { document, files } = at
  asked = askEngine(
    {
      kind: 'plan',
      document,
      files,
      shop: shop.value?.document ?? null,
      asOf: new Date().toISOString(),
      width: width.value,
      face: face.value,
      effort
    },
    answer => {
      // An answer to what is no longer on the desk is not shown.
      if (answer.seq !== asked || piece.value?.id !== at.id) return
      batch(() => {
        if (answer.kind === 'planned') {
          view.value = { ...answer.view, model: modelFrom(JSON.parse(answer.view.model)) }
          stale.value = false
          problems.value = []
          failure.value = null
        } else if (answer.kind === 'refused') problems.value = answer.problems
        else if (answer.kind === 'failed') failure.value = answer.says
      })
      if (answer.kind === 'planned' && effort === 'preview') rest = setTimeout(() => ask('full'), REST_MS)
    }
  )
}

async function keepHere(): Promise<void> {
  const at = piece.value
  if (at === null) return
  const kept: KeptPiece = { ...at, saved: new Date().toISOString(), pending }
  await keepPiece(kept)
}

/** Sends what was not acknowledged. One at a time; what is edited meanwhile goes next. */
export async function send(): Promise<void> {
  const at = piece.value
  if (sending || pending === null || at === null || clash.value !== null) return
  sending = true
  const now: Pending = { ...pending, base: at.revision }
  try {
    const answer = await api<{ revision: number }>('PUT', `/api/pieces/${at.id}`, now)
    reached()
    if (piece.value?.id !== at.id) return
    piece.value = { ...piece.value, revision: answer.revision }
    if (pending?.edit === now.edit) pending = null
    saving.value = pending === null ? 'saved' : 'saving'
    void keepHere()
  } catch (e) {
    if (piece.value?.id !== at.id) return
    if (e instanceof ApiProblem && e.status === 409) {
      clash.value = {
        revision: e.body['revision'] as number,
        document: e.body['document'] as Json,
        aside: (e.body['aside'] as Aside | undefined) ?? null
      }
      saving.value = 'kept'
    } else if (e instanceof ApiProblem) {
      saving.value = 'failed'
      saveSays.value = e.message
    } else {
      unreached()
      saving.value = 'kept'
    }
    return
  } finally {
    sending = false
  }
  if (pending !== null) void send()
}

/** Settles a clash: mine goes on over theirs, or theirs is laid on the desk. Both stay among the revisions. */
export function settle(whose: 'mine' | 'theirs'): void {
  const at = piece.value
  const other = clash.value
  if (at === null || other === null) return
  clash.value = null
  const mine = at.document
  pending = null
  batch(() => {
    piece.value = { ...at, revision: other.revision, document: other.document }
    done.value = []
    undone.value = []
    saving.value = 'saved'
  })
  if (whose === 'mine') edit('mine', [{ op: 'replace', path: '', value: mine }])
  else {
    void keepHere()
    plan()
  }
}

/** Another device saved the piece that lies here. */
export async function changedElsewhere(id: string, revision: number): Promise<void> {
  const at = piece.value
  if (at === null || at.id !== id || revision <= at.revision || pending !== null || sending) return
  try {
    const stored = await api<StoredPiece>('GET', `/api/pieces/${id}`)
    if (pending !== null || piece.value?.id !== id || stored.revision <= piece.value.revision) return
    batch(() => {
      piece.value = { id, revision: stored.revision, document: stored.document, files: stored.files }
      done.value = []
      undone.value = []
    })
    void keepHere()
    plan()
  } catch {
    unreached()
  }
}

// Another face, or another width of the screen, is another drawing.
effect(() => {
  const now = `${face.value} ${width.value}`
  if (drawnFor !== '' && drawnFor !== now) plan()
  drawnFor = now
})
