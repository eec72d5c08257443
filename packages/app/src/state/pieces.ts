import { signal } from '@preact/signals'
import type { PieceSummary, StoredPiece } from '../net/api.ts'
import { ApiProblem, api, newId, Unreachable } from '../net/api.ts'
import type { KeptPiece } from '../offline/keep.ts'
import { changeKept, keepList, keepPiece, keptList, keptPiece, keptPieces } from '../offline/keep.ts'
import type { Json } from '../worker/document.ts'
import type { Thumb } from '../worker/views.ts'
import { piece } from './desk.ts'
import { engineAnswer } from './engine.ts'
import { reached, unreached } from './reach.ts'
import { acknowledged, passing, putDrawing } from './sending.ts'
import { shop } from './shop.ts'

/** All pieces, newest first; null until they are read. */
export const pieces = signal<readonly PieceSummary[] | null>(null)
export const thumbs = signal<ReadonlyMap<string, Thumb | 'none'>>(new Map())

let onScreen = false

/** Reads the list and, one after the other, the picture of each piece. */
export async function showPieces(): Promise<void> {
  onScreen = true
  try {
    const list = await api<{ pieces: readonly PieceSummary[] }>('GET', '/api/pieces')
    reached()
    pieces.value = list.pieces
    await keepList(list.pieces)
  } catch (e) {
    if (e instanceof Unreachable) unreached()
    pieces.value = await listHere()
  }
  for (const p of pieces.value ?? []) {
    if (!onScreen) return
    await picture(p)
  }
}

export function leavePieces(): void {
  onScreen = false
}

export function listChanged(): void {
  if (onScreen) void showPieces()
}

// The list as it was last seen, with what was made and renamed here since.
async function listHere(): Promise<readonly PieceSummary[]> {
  const seen = (await keptList()) ?? []
  const changed = (await keptPieces()).flatMap(k =>
    k.pending === null ? [] : [{ ...k, pending: k.pending }]
  )
  const summary = (k: (typeof changed)[number]): PieceSummary => ({
    id: k.id,
    name: String(k.pending.document['name']),
    kind: typeof k.pending.document['kind'] === 'string' ? k.pending.document['kind'] : null,
    revision: k.revision,
    saved: k.saved
  })
  return [
    ...changed.map(summary).sort((a, b) => b.saved.localeCompare(a.saved)),
    ...seen.filter(p => !changed.some(k => k.id === p.id))
  ]
}

/**
 * Sends what this browser keeps of pieces that are not on the desk. One that was changed elsewhere meanwhile stays
 * kept: which one goes on is asked when it is opened.
 */
export async function sendKept(): Promise<void> {
  let sent = false
  for (const k of await keptPieces()) {
    const whole =
      k.pending === null && k.drawings.length === 0 && k.settled.length === 0 && k.unread.length === 0
    if (whole || k.id === piece.value?.id) continue
    try {
      await putKept(k)
      sent = true
    } catch (e) {
      if (e instanceof Unreachable) return unreached()
      if (!(e instanceof ApiProblem)) throw e
    }
  }
  if (sent) listChanged()
}

// Drawings before the edit that names them; a piece that the server has not got takes them only after it.
async function putKept(kept: KeptPiece): Promise<void> {
  const { id, pending } = kept
  if (kept.revision > 0 || pending === null) await putDrawings(kept)
  if (pending !== null) {
    const now = { ...pending, base: kept.revision }
    const { revision } = await api<{ revision: number }>('PUT', `/api/pieces/${id}`, now)
    await acknowledged(id, pending, revision)
    if (kept.revision === 0) await putDrawings(kept)
  }
  for (const reading of kept.unread) {
    await api('POST', `/api/pieces/${id}/readings`, reading).catch(unlessRefused)
    await changeKept(id, k => ({ ...k, unread: k.unread.filter(r => r['id'] !== reading['id']) }))
  }
  for (const number of kept.settled) {
    await api('DELETE', `/api/pieces/${id}/asides/${number}`).catch(unlessRefused)
    await changeKept(id, k => ({ ...k, settled: k.settled.filter(n => n !== number) }))
  }
}

async function putDrawings({ id, files, drawings }: KeptPiece): Promise<void> {
  for (const name of drawings) {
    const text = files[name]
    try {
      if (text !== undefined) await putDrawing(id, name, text)
    } catch (e) {
      // One that is refused stays here and holds nothing up; it is said when the piece is opened.
      unlessRefused(e)
      continue
    }
    await changeKept(id, k =>
      k.files[name] === text ? { ...k, drawings: k.drawings.filter(n => n !== name) } : k
    )
  }
}

function unlessRefused(e: unknown): void {
  if (!(e instanceof ApiProblem) || passing(e.status)) throw e
}

async function picture(p: PieceSummary): Promise<void> {
  const key = `${p.id} ${p.revision}`
  if (thumbs.value.has(key)) return
  const stored = await storedPiece(p.id)
  if (stored === null) return
  const answer = await engineAnswer({
    kind: 'thumb',
    document: stored.document,
    files: stored.files,
    shop: shop.value?.document ?? null,
    asOf: new Date().toISOString()
  })
  thumbs.value = new Map(thumbs.value).set(key, answer.kind === 'thumb' ? answer.thumb : 'none')
}

async function storedPiece(id: string): Promise<Pick<StoredPiece, 'document' | 'files'> | null> {
  try {
    return await api<StoredPiece>('GET', `/api/pieces/${id}`)
  } catch {
    const kept = await keptPiece(id)
    return kept === null ? null : { files: kept.files, document: kept.pending?.document ?? kept.document }
  }
}

/** Keeps a new piece here and sends it; the id. Without a server it is sent when there is one. */
export async function createPiece(
  document: Json,
  files: Readonly<Record<string, string>> = {}
): Promise<string> {
  const id = newId()
  const pending = { base: 0, edit: newId(), document, says: '' }
  const kept: KeptPiece = {
    id,
    revision: 0,
    saved: new Date().toISOString(),
    document,
    files,
    pending,
    drawings: Object.keys(files),
    settled: [],
    unread: []
  }
  await keepPiece(kept)
  try {
    await putKept(kept)
  } catch (e) {
    if (!(e instanceof Unreachable)) throw e
    unreached()
  }
  return id
}
