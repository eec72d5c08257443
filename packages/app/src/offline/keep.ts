import type { DBSchema, IDBPDatabase } from 'idb'
import { openDB } from 'idb'
import type { PieceSummary } from '../net/api.ts'
import type { Json } from '../worker/messages.ts'

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
  readonly pending: Pending | null
}

interface Kept extends DBSchema {
  pieces: { key: string; value: KeptPiece }
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

export async function keptPiece(id: string): Promise<KeptPiece | null> {
  return (await (await keep())?.get('pieces', id)) ?? null
}

export async function keptPieces(): Promise<readonly KeptPiece[]> {
  return (await (await keep())?.getAll('pieces')) ?? []
}

export async function keepPiece(piece: KeptPiece): Promise<void> {
  await (await keep())?.put('pieces', piece)
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
