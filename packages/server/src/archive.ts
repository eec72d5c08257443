import { createHash } from 'node:crypto'
import { Unzip, UnzipInflate, zipSync } from 'fflate'
import type { Db } from './database.ts'
import { documentText, editId, pieceId } from './document.ts'
import { pictureOf } from './picture.ts'
import { refused } from './problem.ts'

/**
 * Everything in one archive: a zip of plain JSON, SVG and pictures, with a list of what is in it and the SHA-256 of
 * each. Devices and their secrets are never in it. Names in an archive are looked up in a table of what is expected,
 * so that none of them is ever a path.
 */
const MOST_ENTRIES = 20_000
const MOST_ENTRY_BYTES = 13_000_000
const MOST_BYTES = 400_000_000
/** A text that packs better than this is no text: a bomb. */
const MOST_RATIO = 400
const FORM = 1

interface Listed {
  readonly name: string
  readonly sha256: string
  readonly bytes: number
}

interface PieceEntry {
  readonly id: string
  readonly away: string | null
  readonly revisions: readonly RevisionEntry[]
  readonly asides: readonly (RevisionEntry & { readonly base: number; readonly settled: boolean })[]
  readonly files: Readonly<Record<string, string>>
  readonly readings: readonly unknown[]
  readonly photos: readonly { readonly id: string; readonly laid: unknown; readonly saved: string }[]
}

interface RevisionEntry {
  readonly number: number
  readonly edit: string
  readonly document: unknown
  readonly says: string
  readonly device: string | null
  readonly saved: string
}

const json = (value: unknown): Uint8Array => new TextEncoder().encode(`${JSON.stringify(value, null, 1)}\n`)
const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')

/** The archive of a database, the same for the same content. */
export function archiveOf(db: Db, version: string): Uint8Array {
  const entries: Record<string, Uint8Array> = {}
  const ids = db.prepare('SELECT id, away FROM piece ORDER BY id').all() as {
    id: string
    away: string | null
  }[]
  for (const { id, away } of ids) {
    const read = <T>(sql: string): T[] => db.prepare(sql).all(id) as T[]
    const photos = read<{ id: string; laid: string | null; saved: string; bytes: Uint8Array }>(
      'SELECT id, laid, saved, bytes FROM photo WHERE piece = ? ORDER BY id'
    )
    const piece: PieceEntry = {
      id,
      away,
      revisions: read<{ document: string } & RevisionEntry>(
        'SELECT number, edit, document, says, device, saved FROM revision WHERE piece = ? ORDER BY number'
      ).map(r => ({ ...r, document: JSON.parse(r.document) })),
      asides: read<{ document: string; settled: number; base: number } & RevisionEntry>(
        "SELECT number, edit, base, document, '' AS says, device, saved, settled FROM aside WHERE piece = ? ORDER BY number"
      ).map(r => ({ ...r, settled: r.settled === 1, document: JSON.parse(r.document) })),
      files: Object.fromEntries(
        read<{ name: string; text: string }>('SELECT name, text FROM file WHERE piece = ? ORDER BY name').map(
          f => [f.name, f.text]
        )
      ),
      readings: read<{ record: string }>('SELECT record FROM reading WHERE piece = ? ORDER BY id').map(r =>
        JSON.parse(r.record)
      ),
      photos: photos.map(p => ({
        id: p.id,
        laid: p.laid === null ? null : JSON.parse(p.laid),
        saved: p.saved
      }))
    }
    entries[`pieces/${id}.json`] = json(piece)
    for (const p of photos) entries[`photos/${id}/${p.id}`] = new Uint8Array(p.bytes)
  }
  const shop = db
    .prepare('SELECT number, edit, document, device, saved FROM shop ORDER BY number')
    .all() as ({ document: string } & RevisionEntry)[]
  entries['shop.json'] = json(shop.map(s => ({ ...s, document: JSON.parse(s.document) })))
  const list: Listed[] = Object.entries(entries).map(([name, bytes]) => ({
    name,
    sha256: sha256(bytes),
    bytes: bytes.length
  }))
  entries['castwright.json'] = json({ castwrightArchive: FORM, version, list })
  return zipSync(
    Object.fromEntries(
      Object.entries(entries).map(([name, bytes]) => [
        name,
        [bytes, { level: 6, mtime: new Date('2000-01-01T00:00:00Z') }]
      ])
    )
  )
}

/** What an import added. */
export interface Brought {
  readonly pieces: number
  readonly revisions: number
  readonly photos: number
  readonly readings: number
}

/**
 * Reads an archive and adds what is not there: nothing of what is there is changed, and either all of it comes in or
 * nothing. A piece that was changed here as well keeps what is here; the archive's newest comes in as kept aside.
 * @throws ServerProblem for anything that is not a whole archive of ours
 */
export function bringArchive(db: Db, bytes: Uint8Array, now: () => Date): Brought {
  const entries = unpacked(bytes)
  const manifest = parsed(entries, 'castwright.json') as { castwrightArchive?: unknown; list?: unknown }
  if (manifest.castwrightArchive !== FORM || !Array.isArray(manifest.list))
    throw refused('the archive: found no list of ours; allowed: one that this program wrote')
  const list = manifest.list as Listed[]
  if (list.length + 1 !== entries.size)
    throw refused(`the archive: found ${entries.size} entries, its list names ${list.length + 1}`)
  for (const l of list) {
    const found = typeof l?.name === 'string' ? entries.get(l.name) : undefined
    if (found === undefined) throw refused('the archive: an entry of its list is missing')
    if (found.length !== l.bytes || sha256(found) !== l.sha256)
      throw refused('the archive: an entry is not as it was written; it was damaged or changed')
  }
  const pieces = [...entries.keys()]
    .filter(n => n.startsWith('pieces/'))
    .map(name => checkedPiece(parsed(entries, name) as PieceEntry, name, entries))
  const shop = (parsed(entries, 'shop.json') as RevisionEntry[]).map(s => checkedRevision(s, false))
  db.exec('BEGIN IMMEDIATE')
  try {
    let sum: Brought = { pieces: 0, revisions: 0, photos: 0, readings: 0 }
    for (const p of pieces) sum = added(sum, bringPiece(db, p, entries, now))
    sum = { ...sum, revisions: sum.revisions + bringShop(db, shop) }
    db.exec('COMMIT')
    return sum
  } catch (e) {
    db.exec('ROLLBACK')
    throw e
  }
}

function added(a: Brought, b: Brought): Brought {
  return {
    pieces: a.pieces + b.pieces,
    revisions: a.revisions + b.revisions,
    photos: a.photos + b.photos,
    readings: a.readings + b.readings
  }
}

// Entries by name; sizes are counted as they are unpacked, whatever the archive says of them.
function unpacked(bytes: Uint8Array): Map<string, Uint8Array> {
  const out = new Map<string, Uint8Array>()
  let sum = 0
  let fault: string | null = null
  const unzip = new Unzip(file => {
    if (fault !== null) return
    if (out.size >= MOST_ENTRIES) fault = `more than ${MOST_ENTRIES} entries`
    else if (
      !/^(castwright\.json|shop\.json|pieces\/[a-z0-9]{8,24}\.json|photos\/[a-z0-9]{8,24}\/[0-9a-f]{24})$/.test(
        file.name
      )
    )
      fault = `an entry by the name "${file.name.slice(0, 60)}"`
    else if (out.has(file.name)) fault = `two entries by the name ${file.name}`
    if (fault !== null) return
    const parts: Uint8Array[] = []
    let size = 0
    out.set(file.name, new Uint8Array(0))
    file.ondata = (error, part, final) => {
      if (error) fault ??= 'an entry that cannot be unpacked'
      if (fault !== null) return
      size += part.length
      sum += part.length
      if (size > MOST_ENTRY_BYTES || sum > MOST_BYTES) fault = 'more than an archive may hold'
      else if (sum > 1_000_000 && sum > bytes.length * MOST_RATIO)
        fault = 'far more in it than its size tells'
      if (fault !== null) {
        file.terminate()
        return
      }
      parts.push(part)
      if (final) out.set(file.name, Buffer.concat(parts))
    }
    file.start()
  })
  unzip.register(UnzipInflate)
  try {
    const step = 65_536
    for (let k = 0; k < bytes.length && fault === null; k += step)
      unzip.push(bytes.subarray(k, k + step), k + step >= bytes.length)
  } catch {
    fault ??= 'no zip, or a damaged one'
  }
  if (fault !== null)
    throw refused(`the archive: found ${fault}; allowed: an archive that this program wrote`)
  return out
}

function parsed(entries: ReadonlyMap<string, Uint8Array>, name: string): unknown {
  const bytes = entries.get(name)
  if (bytes === undefined)
    throw refused(`the archive: found no ${name}; allowed: an archive that this program wrote`)
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes))
  } catch {
    throw refused(`the archive: ${name} is no JSON`)
  }
}

function checkedRevision<R extends RevisionEntry>(r: R, needsName: boolean): R & { readonly text: string } {
  if (r === null || typeof r !== 'object' || !Number.isInteger(r.number) || r.number < 1)
    throw refused('the archive: a revision without its number')
  editId(r.edit)
  for (const key of ['saved'] as const)
    if (typeof r[key] !== 'string' || Number.isNaN(Date.parse(r[key])))
      throw refused('the archive: a revision without its moment')
  if (r.device !== null && typeof r.device !== 'string')
    throw refused('the archive: a device that is no name')
  return {
    ...r,
    says: typeof r.says === 'string' ? r.says.slice(0, 400) : '',
    text: documentText(r.document, needsName)
  }
}

type Checked = Omit<PieceEntry, 'revisions' | 'asides'> & {
  readonly revisions: readonly (RevisionEntry & { readonly text: string })[]
  readonly asides: readonly (PieceEntry['asides'][number] & { readonly text: string })[]
}

function checkedPiece(p: PieceEntry, name: string, entries: ReadonlyMap<string, Uint8Array>): Checked {
  if (p === null || typeof p !== 'object' || `pieces/${pieceId(p.id)}.json` !== name)
    throw refused(`the archive: ${name} holds another piece`)
  if (
    !Array.isArray(p.revisions) ||
    p.revisions.length === 0 ||
    !Array.isArray(p.asides) ||
    !Array.isArray(p.readings) ||
    !Array.isArray(p.photos)
  )
    throw refused(`the archive: ${name} is not whole`)
  if (p.files === null || typeof p.files !== 'object') throw refused(`the archive: ${name} is not whole`)
  for (const [file, text] of Object.entries(p.files))
    if (!/^[^/\\\p{Cc}]{1,120}\.svg$/iu.test(file) || typeof text !== 'string' || text.length > 4_000_000)
      throw refused(`the archive: ${name} holds a drawing that is none`)
  for (const photo of p.photos) {
    const bytes = entries.get(`photos/${p.id}/${photo?.id}`)
    if (bytes === undefined) throw refused(`the archive: a photo of ${name} is missing`)
    pictureOf(bytes)
  }
  const revisions = p.revisions.map(r => checkedRevision(r, true)).sort((a, b) => a.number - b.number)
  if (revisions.some((r, i) => r.number !== i + 1)) throw refused(`the archive: ${name} lacks a revision`)
  return { ...p, revisions, asides: p.asides.map(a => checkedRevision(a, true)) }
}

function bringPiece(db: Db, p: Checked, entries: ReadonlyMap<string, Uint8Array>, now: () => Date): Brought {
  const here = db.prepare('SELECT revision FROM piece WHERE id = ?').get(p.id) as
    | { revision: number }
    | undefined
  const newest = p.revisions.at(-1)!
  let revisions = 0
  const insert = db.prepare(
    'INSERT OR IGNORE INTO revision (piece, number, edit, document, says, device, saved) VALUES (?, ?, ?, ?, ?, ?, ?)'
  )
  const known = (edit: string) =>
    db.prepare('SELECT 1 FROM revision WHERE piece = ? AND edit = ?').get(p.id, edit) !== undefined
  const document = newest.document as { name: string; kind?: unknown }
  if (here === undefined)
    db.prepare('INSERT INTO piece (id, name, kind, revision, saved, away) VALUES (?, ?, ?, ?, ?, ?)').run(
      p.id,
      document.name,
      typeof document.kind === 'string' ? document.kind : null,
      newest.number,
      newest.saved,
      typeof p.away === 'string' ? p.away : null
    )
  // What is here goes on where the archive's revisions are those that are here.
  const same = here === undefined || p.revisions.slice(0, here.revision).every(r => known(r.edit))
  if (same)
    for (const r of p.revisions)
      revisions += insert.run(p.id, r.number, r.edit, r.text, r.says, r.device, r.saved).changes
  else if (!known(newest.edit)) {
    const { next } = db
      .prepare('SELECT COALESCE(MAX(number), 0) + 1 AS next FROM aside WHERE piece = ?')
      .get(p.id) as { next: number }
    db.prepare(
      'INSERT OR IGNORE INTO aside (piece, number, edit, base, document, device, saved) VALUES (?, ?, ?, ?, ?, ?, ?)'
    ).run(p.id, next, newest.edit, here!.revision, newest.text, newest.device, now().toISOString())
  }
  if (here !== undefined && same && newest.number > here.revision)
    db.prepare('UPDATE piece SET name = ?, revision = ?, saved = ? WHERE id = ?').run(
      document.name,
      newest.number,
      newest.saved,
      p.id
    )
  for (const a of p.asides)
    db.prepare(
      'INSERT OR IGNORE INTO aside (piece, number, edit, base, document, device, saved, settled) VALUES (?, ?, ?, ?, ?, ?, ?, ?)'
    ).run(p.id, a.number, a.edit, a.base, a.text, a.device, a.saved, a.settled ? 1 : 0)
  for (const [name, text] of Object.entries(p.files))
    db.prepare('INSERT OR IGNORE INTO file (piece, name, text, saved) VALUES (?, ?, ?, ?)').run(
      p.id,
      name,
      text,
      newest.saved
    )
  let [photos, readings] = [0, 0]
  for (const photo of p.photos) {
    const bytes = entries.get(`photos/${p.id}/${photo.id}`)!
    const { type, width, height } = pictureOf(bytes)
    photos += db
      .prepare(
        'INSERT OR IGNORE INTO photo (id, piece, type, width, height, bytes, laid, saved) VALUES (?, ?, ?, ?, ?, ?, ?, ?)'
      )
      .run(
        photo.id,
        p.id,
        type,
        width,
        height,
        Buffer.from(bytes),
        photo.laid === null ? null : JSON.stringify(photo.laid),
        photo.saved
      ).changes
  }
  for (const record of p.readings) {
    const id = (record as { id?: unknown } | null)?.id
    if (typeof id !== 'string') throw refused('the archive: a reading without an id')
    readings += db
      .prepare('INSERT OR IGNORE INTO reading (id, piece, record, saved) VALUES (?, ?, ?, ?)')
      .run(id, p.id, JSON.stringify(record), now().toISOString()).changes
  }
  return { pieces: here === undefined ? 1 : 0, revisions, photos, readings }
}

// A shop that was never said is brought whole; one that is here stays.
function bringShop(db: Db, shop: readonly (RevisionEntry & { readonly text: string })[]): number {
  if (db.prepare('SELECT 1 FROM shop LIMIT 1').get() !== undefined) return 0
  for (const s of shop)
    db.prepare('INSERT INTO shop (number, edit, document, device, saved) VALUES (?, ?, ?, ?, ?)').run(
      s.number,
      s.edit,
      s.text,
      s.device,
      s.saved
    )
  return shop.length
}
