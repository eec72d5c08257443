import { signal } from '@preact/signals'
import type { PieceSummary, StoredPiece } from '../net/api.ts'
import { api, newId, Unreachable } from '../net/api.ts'
import { keepList, keepPiece, keptList, keptPieces } from '../offline/keep.ts'
import type { Json, Thumb } from '../worker/messages.ts'
import { engineAnswer } from './engine.ts'
import { reached, unreached } from './reach.ts'
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
    pieces.value = (await keptList()) ?? []
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
    return (await keptPieces()).find(k => k.id === id) ?? null
  }
}

/** Keeps a new piece here and sends it; the id. Without a server it is sent when there is one. */
export async function createPiece(
  document: Json,
  files: Readonly<Record<string, string>> = {}
): Promise<string> {
  const id = newId()
  const pending = { base: 0, edit: newId(), document, says: '' }
  await keepPiece({ id, revision: 0, saved: new Date().toISOString(), document, files, pending })
  try {
    await api('PUT', `/api/pieces/${id}`, pending)
    for (const [name, text] of Object.entries(files))
      await api(
        'PUT',
        `/api/pieces/${id}/files/${encodeURIComponent(name)}`,
        new Blob([text], { type: 'text/plain' })
      )
    await keepPiece({ id, revision: 1, saved: new Date().toISOString(), document, files, pending: null })
  } catch (e) {
    if (!(e instanceof Unreachable)) throw e
    unreached()
  }
  return id
}
