import type Database from 'libsql'
import type { FileItem, PhotoItem, ReadingItem, RevisionItem } from './archive-form.ts'
import type { Db } from './database.ts'
import { kindOf } from './document.ts'
import { PhotoStore } from './photo-store.ts'
import { pictureOf } from './picture.ts'

/** What an import added. */
export interface Brought {
  readonly pieces: number
  readonly revisions: number
  readonly photos: number
  readonly readings: number
}

type Checked = RevisionItem & { readonly text: string }
type Items = () => Iterable<Checked>

/**
 * Adds what an archive holds to what is here, in the transaction of the caller. Where the history of a document goes
 * on from the one that is here, it goes on; where both went their own way, what is here stays the document and the
 * other is kept aside, its newest revision to be settled, the ones before it to be looked up.
 */
export class ArchiveMerge {
  readonly brought: { -readonly [K in keyof Brought]: Brought[K] } = {
    pieces: 0,
    revisions: 0,
    photos: 0,
    readings: 0
  }
  private readonly db: Db
  private readonly photos: PhotoStore

  constructor(db: Db) {
    this.db = db
    this.photos = new PhotoStore(db)
  }

  piece(id: string, away: string | null, revisions: Items, asides: Items): void {
    const here = this.db.prepare('SELECT revision FROM piece WHERE id = ?').get(id) as
      | { revision: number }
      | undefined
    if (here === undefined) {
      this.db
        .prepare("INSERT INTO piece (id, name, kind, revision, saved, away) VALUES (?, '', NULL, 0, '', ?)")
        .run(id, away)
      this.brought.pieces++
    }
    const rows = new Rows(this.db, id)
    const newest = this.history(rows, here?.revision ?? 0, revisions, asides)
    if (newest === null) return
    const document = newest.document as { name: string; kind?: unknown }
    this.db
      .prepare('UPDATE piece SET name = ?, kind = ?, revision = ?, saved = ? WHERE id = ?')
      .run(document.name, kindOf(document), newest.number, newest.saved, id)
  }

  shop(revisions: Items, asides: Items): void {
    const { newest } = this.db.prepare('SELECT coalesce(max(number), 0) AS newest FROM shop').get() as {
      newest: number
    }
    this.history(new Rows(this.db, null), newest, revisions, asides)
  }

  /** The newest revision that came in as the document; null when none did. */
  private history(rows: Rows, here: number, revisions: Items, asides: Items): Checked | null {
    let same = true
    for (const r of revisions()) same &&= r.number > here || rows.editOf(r.number) === r.edit
    for (const a of asides()) rows.aside(a, a.number, a.base ?? 0, a.settled ?? false)
    let newest: Checked | null = null
    let last: Checked | null = null
    for (const r of revisions()) {
      if (same && r.number > here) {
        rows.revision(r)
        newest = r
        this.brought.revisions++
      } else if (!same && !rows.knows(r.edit)) {
        if (last !== null && rows.aside(last, null, last.number - 1, true)) this.brought.revisions++
        last = r
      }
    }
    if (last !== null && rows.aside(last, null, last.number - 1, false)) this.brought.revisions++
    return newest
  }

  /** A drawing; one of the same name that is another comes in under a name of its own. */
  file(piece: string, f: FileItem): void {
    const find = this.db.prepare('SELECT text FROM file WHERE piece = ? AND name = ?')
    let name = f.name
    for (let n = 1; ; n++) {
      const here = find.get(piece, name) as { text: string } | undefined
      if (here?.text === f.text) return
      if (here === undefined) break
      name = `${f.name.slice(0, -4).slice(0, 90)} (archive${n === 1 ? '' : ` ${n}`}).svg`
    }
    this.db
      .prepare('INSERT INTO file (piece, name, text, saved) VALUES (?, ?, ?, ?)')
      .run(piece, name, f.text, f.saved)
  }

  reading(piece: string, r: ReadingItem): void {
    this.brought.readings += this.db
      .prepare('INSERT OR IGNORE INTO reading (id, piece, record, saved) VALUES (?, ?, ?, ?)')
      .run(r.record.id, piece, JSON.stringify(r.record), r.saved).changes
  }

  photo(piece: string, p: PhotoItem, bytes: Buffer): void {
    const laid = p.laid === null ? null : JSON.stringify(p.laid)
    const { id, saved } = p
    if (this.photos.keep({ id, piece, picture: pictureOf(bytes), bytes, laid, saved })) this.brought.photos++
  }
}

/** The rows of one history: of a piece, or of the shop (null). */
class Rows {
  private readonly db: Db
  private readonly piece: string | null
  private readonly tables: readonly [revision: string, aside: string]
  // One each: a statement holds a copy of what it was last given, and here nothing collects it.
  private readonly statements = new Map<string, Database.Statement>()

  constructor(db: Db, piece: string | null) {
    this.db = db
    this.piece = piece
    this.tables = piece === null ? ['shop', 'shop_aside'] : ['revision', 'aside']
  }

  editOf(number: number): string | null {
    return (
      (this.one(`SELECT edit FROM ${this.tables[0]} WHERE number = ?`, number)?.['edit'] as string) ?? null
    )
  }

  knows(edit: string): boolean {
    return this.tables.some(t => this.one(`SELECT 1 AS found FROM ${t} WHERE edit = ?`, edit) !== undefined)
  }

  revision(r: Checked): void {
    if (this.piece === null)
      this.sql('INSERT INTO shop (number, edit, document, device, saved) VALUES (?, ?, ?, ?, ?)').run(
        r.number,
        r.edit,
        r.text,
        r.device,
        r.saved
      )
    else
      this.sql(
        'INSERT INTO revision (piece, number, edit, document, says, device, saved) VALUES (?, ?, ?, ?, ?, ?, ?)'
      ).run(this.piece, r.number, r.edit, r.text, r.says, r.device, r.saved)
  }

  /** Keeps a document aside, under its number when that is free. @returns whether it was not here */
  aside(r: Checked, number: number | null, base: number, settled: boolean): boolean {
    const table = this.tables[1]
    if (this.one(`SELECT 1 AS found FROM ${table} WHERE edit = ?`, r.edit) !== undefined) return false
    const taken =
      number === null || this.one(`SELECT 1 AS found FROM ${table} WHERE number = ?`, number) !== undefined
    const next = () => this.one(`SELECT max(number) AS most FROM ${table} WHERE 1 = ?`, 1)?.['most']
    const free = taken ? Number(next() ?? 0) + 1 : number
    this.sql(
      `INSERT INTO ${table} (${this.piece === null ? '' : 'piece, '}number, edit, base, document, device, saved, settled) VALUES (${this.piece === null ? '' : '?, '}?, ?, ?, ?, ?, ?, ?)`
    ).run(
      ...(this.piece === null ? [] : [this.piece]),
      free,
      r.edit,
      base,
      r.text,
      r.device,
      r.saved,
      settled ? 1 : 0
    )
    return true
  }

  private sql(text: string): Database.Statement {
    const known = this.statements.get(text) ?? this.db.prepare(text)
    this.statements.set(text, known)
    return known
  }

  private one(sql: string, value: string | number): Record<string, unknown> | undefined {
    return (
      this.piece === null ? this.sql(sql).get(value) : this.sql(`${sql} AND piece = ?`).get(value, this.piece)
    ) as Record<string, unknown> | undefined
  }
}
