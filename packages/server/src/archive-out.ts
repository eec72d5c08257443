import Database from 'libsql'
import type { Listed, Part } from './archive-form.ts'
import { CHUNK, FORM, LIST, MOST_ARCHIVE, sha256 } from './archive-form.ts'
import type { Db } from './database.ts'
import { letGo } from './memory.ts'
import { PhotoStore } from './photo-store.ts'
import { ServerProblem } from './problem.ts'
import { ZipWriter } from './zip-writer.ts'

type Row = Readonly<Record<string, string | number | null>>

const REVISION = 'number, edit, says, device, saved, document AS json'
const ASIDE = "number, edit, base, settled, '' AS says, device, saved, document AS json"

/** Rows of each list of a piece, in their order. `json` is JSON already, `key` its name in the item. */
const LISTS: readonly { readonly part: Part; readonly sql: string; readonly key?: string }[] = [
  {
    part: 'revisions',
    sql: `SELECT ${REVISION} FROM revision WHERE piece = ? ORDER BY number`,
    key: 'document'
  },
  { part: 'asides', sql: `SELECT ${ASIDE} FROM aside WHERE piece = ? ORDER BY number`, key: 'document' },
  { part: 'files', sql: 'SELECT name, text, saved FROM file WHERE piece = ? ORDER BY name' },
  {
    part: 'readings',
    sql: 'SELECT saved, record AS json FROM reading WHERE piece = ? ORDER BY rowid',
    key: 'record'
  },
  {
    part: 'photos',
    sql: "SELECT id, saved, coalesce(laid, 'null') AS json FROM photo WHERE piece = ? ORDER BY id",
    key: 'laid'
  }
]

/**
 * The archive of a database, part by part, as it was at the moment it was asked for; the same for the same content.
 * Needs no more memory than its largest list.
 * @throws ServerProblem 413 when there is more than a file of this form holds
 */
export async function* archiveOf(path: string, version: string): AsyncGenerator<Uint8Array, void> {
  // A reader of its own: what is written meanwhile does not show in it.
  const db = new Database(path)
  try {
    db.exec('PRAGMA query_only = ON; BEGIN')
    sized(db)
    const store = new PhotoStore(db)
    const zip = new ZipWriter()
    const list: Listed[] = []
    const entry = (name: string, bytes: Uint8Array, packed = true): Uint8Array => {
      list.push({ name, sha256: sha256(bytes), bytes: bytes.length })
      return zip.add(name, bytes, packed)
    }
    const ids = db.prepare('SELECT id, away FROM piece ORDER BY id').all() as {
      id: string
      away: string | null
    }[]
    for (const { id, away } of ids) {
      yield entry(`pieces/${id}/piece.json`, json({ id, away }))
      for (const l of LISTS)
        for (const [name, bytes] of chunks(`pieces/${id}/${l.part}`, db.prepare(l.sql).iterate(id), l.key))
          yield entry(name, bytes)
      const photos = db.prepare('SELECT id FROM photo WHERE piece = ? ORDER BY id').all(id) as {
        id: string
      }[]
      for (const photo of photos) {
        const { bytes } = store.photo(id, photo.id)!
        yield entry(`photos/${id}/${photo.id}`, bytes, false)
        letGo(2 * bytes.length)
      }
    }
    const shop = [
      ['revisions', `SELECT ${REVISION.replace('says', "'' AS says")} FROM shop ORDER BY number`],
      ['asides', `SELECT ${ASIDE} FROM shop_aside ORDER BY number`]
    ] as const
    for (const [part, sql] of shop)
      for (const [name, bytes] of chunks(`shop/${part}`, db.prepare(sql).iterate(), 'document'))
        yield entry(name, bytes)
    yield zip.add(LIST, json({ castwrightArchive: FORM, version, list }), true)
    yield zip.end()
  } finally {
    // Closing alone waits for what has been asked to be forgotten, and until then holds the log.
    if (db.inTransaction) db.exec('ROLLBACK')
    db.close()
  }
}

// Asked before anything is sent: an answer that has begun can no longer say why it ends.
function sized(db: Db): void {
  const { bytes } = db
    .prepare(
      `SELECT (SELECT coalesce(sum(length(bytes)), 0) FROM photo) + (SELECT coalesce(sum(length(document)), 0) FROM revision) / 2 AS bytes`
    )
    .get() as { bytes: number }
  if (bytes > MOST_ARCHIVE)
    throw new ServerProblem(
      413,
      'too-much',
      `the archive: found ${bytes} bytes of photos and pieces; allowed: ${MOST_ARCHIVE} in one file; copy the data folder instead`
    )
}

/** Items as lists of some megabytes each, numbered from 1. */
function* chunks(
  name: string,
  rows: Iterable<unknown>,
  key?: string
): Generator<readonly [name: string, bytes: Uint8Array]> {
  let items: string[] = []
  let length = 0
  let number = 0
  const full = (): readonly [string, Uint8Array] => {
    const bytes = Buffer.from(`[\n${items.join(',\n')}\n]\n`)
    items = []
    length = 0
    return [`${name}-${String(++number).padStart(4, '0')}.json`, bytes]
  }
  for (const row of rows) {
    const item = itemOf(row as Row, key)
    if (length > 0 && length + item.length > CHUNK) yield full()
    items.push(item)
    length += item.length
  }
  if (items.length > 0) yield full()
}

function itemOf(row: Row, key?: string): string {
  const { json: text, _metadata, settled, ...rest } = row as Row & { _metadata?: unknown }
  const head = JSON.stringify(settled === undefined ? rest : { ...rest, settled: settled === 1 })
  return key === undefined ? head : `${head.slice(0, -1)},${JSON.stringify(key)}:${String(text)}}`
}

const json = (value: unknown): Uint8Array => Buffer.from(`${JSON.stringify(value)}\n`)
