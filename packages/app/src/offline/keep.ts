import type { DBSchema, IDBPDatabase } from 'idb'
import { openDB } from 'idb'
import type { PieceSummary } from '../net/api.ts'
import type { Json } from '../worker/document.ts'

/** An edit that the server has not acknowledged. */
export interface Pending {
  readonly base: number
  readonly edit: string
  readonly document: Json
  readonly says: string
}

/** A piece as this browser keeps it. */
export interface KeptPiece {
  readonly id: string
  readonly revision: number
  readonly saved: string
  readonly document: Json
  readonly files: Readonly<Record<string, string>>
  readonly readings?: readonly Json[]
  readonly pending: Pending | null
  /** Names of the drawings that the server has not acknowledged. */
  readonly drawings: readonly string[]
  /** What the server keeps aside and need not once the edits are acknowledged: they hold it. */
  readonly settled: readonly number[]
  /** Readings that the server has not acknowledged, oldest first. */
  readonly unread: readonly Json[]
}

/** As it was kept before drawings, settled ones and readings were. */
type Stored = Omit<KeptPiece, 'drawings' | 'settled' | 'unread'> & Partial<KeptPiece>

interface Kept extends DBSchema {
  pieces: { key: string; value: Stored }
  list: { key: string; value: { key: string; pieces: readonly PieceSummary[] } }
  shop: { key: string; value: { key: string; revision: number; document: Json; pending: Pending | null } }
}

let opened: Promise<IDBPDatabase<Kept> | null> | null = null

// A browser that keeps nothing (storage shut off) still works while the server is there.
function keep(): Promise<IDBPDatabase<Kept> | null> {
  opened ??= openDB<Kept>('castwright', 1, {
    upgrade(db) {
      db.createObjectStore('pieces', { keyPath: 'id' })
      db.createObjectStore('list', { keyPath: 'key' })
      db.createObjectStore('shop', { keyPath: 'key' })
    }
  }).catch(() => null)
  return opened
}

function whole(stored: Stored): KeptPiece {
  return { drawings: [], settled: [], unread: [], ...stored }
}

export async function keptPiece(id: string): Promise<KeptPiece | null> {
  const stored = await (await keep())?.get('pieces', id)
  return stored === undefined ? null : whole(stored)
}

export async function keptPieces(): Promise<readonly KeptPiece[]> {
  return ((await (await keep())?.getAll('pieces')) ?? []).map(whole)
}

/** @throws DOMException when the browser has no room for it */
export async function keepPiece(piece: KeptPiece): Promise<void> {
  await (await keep())?.put('pieces', piece)
}

/**
 * Changes what is kept of a piece, if anything is: read and written in one, whatever else goes on. Without room it
 * stays as it was: what is sent once more is known to the server.
 */
export async function changeKept(id: string, change: (kept: KeptPiece) => KeptPiece): Promise<void> {
  const all = (await keep())?.transaction('pieces', 'readwrite')
  if (all === undefined) return
  const changed = all.store
    .get(id)
    .then(stored => (stored === undefined ? undefined : all.store.put(change(whole(stored)))))
  await Promise.allSettled([changed, all.done])
}

export async function keptList(): Promise<readonly PieceSummary[] | null> {
  return (await (await keep())?.get('list', 'all'))?.pieces ?? null
}

export async function keepList(pieces: readonly PieceSummary[]): Promise<void> {
  await (await keep())?.put('list', { key: 'all', pieces })
}

export type KeptShop = {
  readonly revision: number
  readonly document: Json
  readonly pending: Pending | null
}

export async function keptShop(): Promise<KeptShop | null> {
  return (await (await keep())?.get('shop', 'own')) ?? null
}

export async function keepShop(shop: KeptShop): Promise<void> {
  await (await keep())?.put('shop', { key: 'own', ...shop })
}
