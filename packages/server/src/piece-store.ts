import type { Db } from './database.ts'
import { inOne } from './database.ts'
import { MOST_DRAWINGS } from './document.ts'
import { refused, ServerProblem } from './problem.ts'

export interface PieceRow {
  readonly id: string
  readonly name: string
  readonly kind: string | null
  readonly revision: number
  readonly saved: string
}

export interface AsideRow {
  readonly number: number
  readonly base: number
  readonly saved: string
  readonly device: string | null
}

export interface Save {
  readonly id: string
  readonly base: number
  readonly edit: string
  /** The document as JSON, and what is read from it. */
  readonly text: string
  readonly name: string
  readonly kind: string | null
  readonly says: string
  readonly device: string | null
  readonly saved: string
}

export type Saved =
  | { readonly kind: 'saved'; readonly revision: number; readonly saved: string; readonly again: boolean }
  | { readonly kind: 'clash'; readonly revision: number; readonly text: string; readonly aside: AsideRow }

/** Pieces with every revision. Nothing is ever taken away: a piece put away comes back as it was. */
export class PieceStore {
  readonly db: Db

  constructor(db: Db) {
    this.db = db
  }

  list(away = false): PieceRow[] {
    return this.db
      .prepare(
        `SELECT id, name, kind, revision, saved FROM piece WHERE away IS ${away ? 'NOT ' : ''}NULL ORDER BY saved DESC, id`
      )
      .all() as PieceRow[]
  }

  /** @throws ServerProblem 404 */
  row(id: string): PieceRow {
    const row = this.db.prepare('SELECT id, name, kind, revision, saved FROM piece WHERE id = ?').get(id) as
      | PieceRow
      | undefined
    if (row === undefined) throw new ServerProblem(404, 'no-such-piece', `no piece ${id} here`)
    return row
  }

  document(id: string, revision: number): string {
    const row = this.db
      .prepare('SELECT document FROM revision WHERE piece = ? AND number = ?')
      .get(id, revision) as { document: string } | undefined
    if (row === undefined)
      throw new ServerProblem(404, 'no-such-revision', `no revision ${revision} of piece ${id} here`)
    return row.document
  }

  revisions(id: string): { revision: number; saved: string; device: string | null; says: string }[] {
    this.row(id)
    return this.db
      .prepare(
        'SELECT number AS revision, saved, device, says FROM revision WHERE piece = ? ORDER BY number DESC'
      )
      .all(id) as { revision: number; saved: string; device: string | null; says: string }[]
  }

  asides(id: string): AsideRow[] {
    return this.db
      .prepare(
        'SELECT number, base, saved, device FROM aside WHERE piece = ? AND settled = 0 ORDER BY number'
      )
      .all(id) as AsideRow[]
  }

  aside(id: string, number: number): string {
    const row = this.db
      .prepare('SELECT document FROM aside WHERE piece = ? AND number = ?')
      .get(id, number) as { document: string } | undefined
    if (row === undefined)
      throw new ServerProblem(404, 'no-such-aside', `nothing ${number} kept aside of piece ${id}`)
    return row.document
  }

  settleAside(id: string, number: number): void {
    this.aside(id, number)
    this.db.prepare('UPDATE aside SET settled = 1 WHERE piece = ? AND number = ?').run(id, number)
  }

  /**
   * Saves a document as the next revision when it was made on the newest one; else keeps it aside. The same edit
   * sent again gets the same answer. All in one transaction.
   */
  save(s: Save): Saved {
    return inOne(this.db, () => {
      const again = this.db
        .prepare('SELECT number, saved FROM revision WHERE piece = ? AND edit = ?')
        .get(s.id, s.edit) as { number: number; saved: string } | undefined
      if (again !== undefined)
        return { kind: 'saved', revision: again.number, saved: again.saved, again: true }
      const row = this.db.prepare('SELECT revision FROM piece WHERE id = ?').get(s.id) as
        | { revision: number }
        | undefined
      const newest = row?.revision ?? 0
      if (newest !== s.base) {
        if (row === undefined)
          throw new ServerProblem(
            404,
            'no-such-piece',
            `no piece ${s.id} here to save revision ${s.base + 1} of`
          )
        return {
          kind: 'clash',
          revision: newest,
          text: this.document(s.id, newest),
          aside: this.keepAside(s)
        }
      }
      const revision = newest + 1
      if (row === undefined)
        this.db
          .prepare('INSERT INTO piece (id, name, kind, revision, saved) VALUES (?, ?, ?, ?, ?)')
          .run(s.id, s.name, s.kind, revision, s.saved)
      else
        this.db
          .prepare('UPDATE piece SET name = ?, kind = ?, revision = ?, saved = ?, away = NULL WHERE id = ?')
          .run(s.name, s.kind, revision, s.saved, s.id)
      this.db
        .prepare(
          'INSERT INTO revision (piece, number, edit, document, says, device, saved) VALUES (?, ?, ?, ?, ?, ?, ?)'
        )
        .run(s.id, revision, s.edit, s.text, s.says, s.device, s.saved)
      return { kind: 'saved', revision, saved: s.saved, again: false }
    })
  }

  private keepAside(s: Save): AsideRow {
    const known = this.db
      .prepare('SELECT number, base, saved, device FROM aside WHERE piece = ? AND edit = ?')
      .get(s.id, s.edit) as AsideRow | undefined
    if (known !== undefined) return asideOf(known)
    const { next } = this.db
      .prepare('SELECT COALESCE(MAX(number), 0) + 1 AS next FROM aside WHERE piece = ?')
      .get(s.id) as { next: number }
    this.db
      .prepare(
        'INSERT INTO aside (piece, number, edit, base, document, device, saved) VALUES (?, ?, ?, ?, ?, ?, ?)'
      )
      .run(s.id, next, s.edit, s.base, s.text, s.device, s.saved)
    return { number: next, base: s.base, saved: s.saved, device: s.device }
  }

  putAway(id: string, moment: string): void {
    this.row(id)
    this.db.prepare('UPDATE piece SET away = ? WHERE id = ?').run(moment, id)
  }

  bringBack(id: string): void {
    this.row(id)
    this.db.prepare('UPDATE piece SET away = NULL WHERE id = ?').run(id)
  }

  files(id: string): Record<string, string> {
    const rows = this.db.prepare('SELECT name, text FROM file WHERE piece = ? ORDER BY name').all(id) as {
      name: string
      text: string
    }[]
    return Object.fromEntries(rows.map(r => [r.name, r.text]))
  }

  /** @throws ServerProblem 400 beyond the drawings a piece may have */
  putFile(id: string, name: string, text: string, saved: string): void {
    this.row(id)
    const { n } = this.db
      .prepare('SELECT count(*) AS n FROM file WHERE piece = ? AND name <> ?')
      .get(id, name) as { n: number }
    if (n >= MOST_DRAWINGS) throw refused(`found ${n} drawings beside this piece; allowed: ${MOST_DRAWINGS}`)
    this.db
      .prepare(
        'INSERT INTO file (piece, name, text, saved) VALUES (?, ?, ?, ?) ON CONFLICT (piece, name) DO UPDATE SET text = excluded.text, saved = excluded.saved'
      )
      .run(id, name, text, saved)
  }

  removeFile(id: string, name: string): void {
    this.db.prepare('DELETE FROM file WHERE piece = ? AND name = ?').run(id, name)
  }
}

/** A row without what the database adds to it. */
export function asideOf({ number, base, saved, device }: AsideRow): AsideRow {
  return { number, base, saved, device }
}
