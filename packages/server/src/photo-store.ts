import type Database from 'libsql'
import type { Db } from './database.ts'
import type { Picture } from './picture.ts'

/** A photo as it is kept; `laid` is the JSON of how it lies on the plan. */
export interface KeptPhoto {
  readonly id: string
  readonly piece: string
  readonly picture: Picture
  readonly bytes: Uint8Array
  readonly laid: string | null
  readonly saved: string
}

/**
 * The bytes of photos. A statement holds a copy of what it was last given until the collector comes by it, which
 * within one transaction is never: so there is one statement each way, and it is given nothing in the end.
 */
export class PhotoStore {
  private readonly put: Database.Statement
  private readonly got: Database.Statement

  constructor(db: Db) {
    this.put = db.prepare(
      'INSERT OR IGNORE INTO photo (id, piece, type, width, height, bytes, laid, saved) SELECT ?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8 WHERE ?1 IS NOT NULL'
    )
    this.got = db.prepare('SELECT type, bytes FROM photo WHERE piece = ? AND id = ?')
  }

  /** Keeps a photo. @returns whether it was not here */
  keep({ id, piece, picture, bytes, laid, saved }: KeptPhoto): boolean {
    const { type, width, height } = picture
    const { changes } = this.put.run(id, piece, type, width, height, bytes, laid, saved)
    this.put.run(null, null, null, null, null, null, null, null)
    return changes > 0
  }

  photo(piece: string, id: string): { readonly type: string; readonly bytes: Buffer } | null {
    const row = this.got.get(piece, id) as { type: string; bytes: Uint8Array } | undefined
    if (row === undefined) return null
    const { buffer, byteOffset, byteLength } = row.bytes
    return { type: row.type, bytes: Buffer.from(buffer as ArrayBuffer, byteOffset, byteLength) }
  }

  /** Photos of a piece by their names, as long as they are together no larger than so many bytes. */
  named(piece: string, ids: readonly string[], mostBytes: number): Readonly<Record<string, Uint8Array>> {
    const out: Record<string, Uint8Array> = {}
    let left = mostBytes
    for (const id of new Set(ids)) {
      const bytes = this.photo(piece, id)?.bytes
      if (bytes === undefined || bytes.length > left) continue
      left -= bytes.length
      out[id] = bytes
    }
    return out
  }
}
