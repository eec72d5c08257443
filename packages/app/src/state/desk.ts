import { batch } from '@preact/signals'
import type { Patch } from '../../../engine/src/piece/patch.ts'
import { applyPatch, invertPatch } from '../../../engine/src/piece/patch.ts'
import { at as valueAt } from '../card/document-place.ts'
import type { Aside, StoredPiece } from '../net/api.ts'
import { ApiProblem, api, Unreachable } from '../net/api.ts'
import type { KeptPiece } from '../offline/keep.ts'
import { keptPiece } from '../offline/keep.ts'
import type { Json } from '../worker/document.ts'
import type { OpenPiece, Unsent } from './open-piece.ts'
import {
  asides,
  chosen,
  clash,
  deskSays,
  done,
  failure,
  missing,
  NOTHING_UNSENT,
  piece,
  problems,
  said,
  saving,
  stale,
  undone,
  unsent,
  view,
  withUnsent,
  withUnsentReadings
} from './open-piece.ts'
import { plan, stopPlanning } from './planning.ts'
import { problemSays, reached, unreached } from './reach.ts'
import { changeTo, forgetRefused, keepHere, send } from './sending.ts'

export {
  canRedo,
  canUndo,
  castShare,
  chosen,
  done,
  failure,
  missing,
  piece,
  problems,
  said,
  saveSays,
  saving,
  stale,
  undone,
  view
} from './open-piece.ts'
export { plan } from './planning.ts'
export { addFile, send } from './sending.ts'

/** Most edits that can be taken back. */
const MOST_EDITS = 500

/** Which opening is the last one: an answer to one before it lays nothing. */
let turn = 0

/** Puts a piece on the desk, from the server or, without one, from what this browser keeps. */
export async function openPiece(id: string): Promise<void> {
  if (piece.value?.id === id) return
  shut()
  const mine = ++turn
  missing.value = null
  const kept = await keptPiece(id).catch(() => null)
  try {
    const stored = await api<StoredPiece>('GET', `/api/pieces/${id}`)
    reached()
    if (mine !== turn) return
    lay(kept === null ? stored : goesOn(stored, kept), unsentOf(kept), stored.aside ?? [])
  } catch (e) {
    if (e instanceof Unreachable) unreached()
    if (mine !== turn) return
    if (kept === null) missing.value = id
    else {
      lay({ ...kept, document: kept.pending?.document ?? kept.document }, unsentOf(kept), [])
      // One that was begun here without a server is not there yet, and is sent now.
      if (e instanceof ApiProblem && kept.revision > 0) deskSays.value = problemSays(e)
    }
  }
}

// What was changed here and not acknowledged goes on from what it was made on; the server says if it clashes.
function goesOn(stored: StoredPiece, kept: KeptPiece): OpenPiece {
  const own = Object.fromEntries(
    kept.drawings.flatMap(name => (kept.files[name] === undefined ? [] : [[name, kept.files[name]]]))
  )
  const files = { ...stored.files, ...own }
  return kept.pending === null
    ? { ...stored, files }
    : {
        id: stored.id,
        revision: kept.revision,
        document: kept.pending.document,
        files,
        readings: stored.readings ?? []
      }
}

function unsentOf(kept: KeptPiece | null): Unsent {
  return kept === null
    ? NOTHING_UNSENT
    : { drawings: kept.drawings, edit: kept.pending, settled: kept.settled, readings: kept.unread }
}

function lay(from: OpenPiece, mine: Unsent, aside: readonly Aside[]): void {
  batch(() => {
    const { id, revision, document, files, readings = [] } = from
    piece.value = { id, revision, document, files, readings: withUnsentReadings(readings, mine.readings) }
    unsent.value = mine
    asides.value = aside
    const whole = mine.edit === null && mine.drawings.length === 0 && mine.readings.length === 0
    saving.value = whole ? 'saved' : 'kept'
    chosen.value = null
  })
  void keepHere()
  plan()
  void send()
}

/** Lays what the server has over the desk, when nothing of the desk waits to be sent: undo begins anew. */
export function layNewer(stored: StoredPiece): void {
  const at = piece.value
  if (at === null) return
  batch(() => {
    piece.value = {
      id: at.id,
      revision: stored.revision,
      document: stored.document,
      files: withUnsent(stored.files, at.files),
      readings: withUnsentReadings(stored.readings ?? at.readings ?? [])
    }
    asides.value = stored.aside ?? asides.value
    done.value = []
    undone.value = []
  })
  void keepHere()
  plan()
}

/** Something was measured of a piece: the one on the desk is planned by it. */
export async function measured(id: string): Promise<void> {
  if (piece.value?.id !== id) return
  try {
    const { readings = [] } = await api<StoredPiece>('GET', `/api/pieces/${id}`)
    reached()
    if (piece.value?.id !== id) return
    piece.value = { ...piece.value, readings: withUnsentReadings(readings) }
    void keepHere()
    plan()
  } catch (e) {
    if (e instanceof Unreachable) unreached()
    else if (!(e instanceof ApiProblem)) throw e
  }
}

/** Takes the piece off the desk. What was not sent stays in this browser. */
export function shut(): void {
  turn++
  stopPlanning()
  forgetRefused()
  batch(() => {
    unsent.value = NOTHING_UNSENT
    piece.value = null
    view.value = null
    stale.value = false
    problems.value = []
    failure.value = null
    clash.value = null
    asides.value = []
    deskSays.value = ''
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
  // What is in hand and no longer there is let go of.
  if (chosen.value !== null && chosen.value !== '/mould' && valueAt(document, chosen.value) === undefined)
    chosen.value = null
  changeTo(document, says)
}
