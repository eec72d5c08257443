import type { DBSchema, IDBPDatabase } from 'idb'
import { openDB } from 'idb'

/** Photos taken at the bench that the server has not got, by piece and name. */
interface Photos extends DBSchema {
  photos: { key: string; value: { key: string; bytes: ArrayBuffer; type: string } }
}

let opened: Promise<IDBPDatabase<Photos> | null> | null = null
/** A browser that keeps nothing has them as long as the page is open. */
const here = new Map<string, Blob>()

function keep(): Promise<IDBPDatabase<Photos> | null> {
  opened ??= openDB<Photos>('castwright-photos', 1, {
    upgrade(db) {
      db.createObjectStore('photos', { keyPath: 'key' })
    }
  }).catch(() => null)
  return opened
}

const keyOf = (piece: string, photo: string) => `${piece}/${photo}`

/** Keeps a photo until it is sent: in this page at once, and in the browser when it has room. */
export async function keepPhoto(piece: string, photo: string, picture: Blob): Promise<void> {
  const key = keyOf(piece, photo)
  here.set(key, picture)
  const bytes = await picture.arrayBuffer()
  await (await keep())?.put('photos', { key, bytes, type: picture.type }).catch(() => undefined)
}

/** A photo that was not sent yet; null: it was, or it was taken elsewhere. */
export async function unsentPhoto(piece: string, photo: string): Promise<Blob | null> {
  const key = keyOf(piece, photo)
  const known = here.get(key)
  if (known !== undefined) return known
  const stored = await (await keep())?.get('photos', key)
  return stored === undefined ? null : new Blob([stored.bytes], { type: stored.type })
}

/** The server has it. */
export async function dropPhoto(piece: string, photo: string): Promise<void> {
  const key = keyOf(piece, photo)
  here.delete(key)
  await (await keep())?.delete('photos', key)
}
