import type { Db } from './database.ts'
import type { PieceStore } from './piece-store.ts'

/** The shop, with every revision of it. */
export class ShopStore {
  readonly db: Db
  readonly pieces: PieceStore

  constructor(db: Db, pieces: PieceStore) {
    this.db = db
    this.pieces = pieces
  }

  newest(): { revision: number; text: string | null } {
    const row = this.db.prepare('SELECT number, document FROM shop ORDER BY number DESC LIMIT 1').get() as
      | { number: number; document: string }
      | undefined
    return row === undefined ? { revision: 0, text: null } : { revision: row.number, text: row.document }
  }

  /** Saves the shop when it was changed on its newest revision; else says which one that is. */
  save(
    base: number,
    edit: string,
    text: string,
    device: string | null,
    saved: string
  ): { kind: 'saved' | 'clash'; revision: number; saved: string; text: string; again: boolean } {
    return this.pieces.inOne(() => {
      const again = this.db.prepare('SELECT number, saved FROM shop WHERE edit = ?').get(edit) as
        | { number: number; saved: string }
        | undefined
      if (again !== undefined)
        return { kind: 'saved', revision: again.number, saved: again.saved, text, again: true }
      const newest = this.newest()
      if (newest.revision !== base)
        return { kind: 'clash', revision: newest.revision, saved, text: newest.text ?? '{}', again: false }
      this.db
        .prepare('INSERT INTO shop (number, edit, document, device, saved) VALUES (?, ?, ?, ?, ?)')
        .run(base + 1, edit, text, device, saved)
      return { kind: 'saved', revision: base + 1, saved, text, again: false }
    })
  }
}
