import { createHash } from 'node:crypto'
import { DRAWING_NAME, documentText, editId, MOST_DRAWING, MOST_LAID, PHOTO_ID, pieceId } from './document.ts'
import type { ReadingEngine } from './parts.ts'
import { refused } from './problem.ts'
import type { ZipLimits } from './zip-reader.ts'

/**
 * The form of the archive that holds everything: a zip of plain JSON and pictures.
 *
 *     castwright.json                       what is in it: each entry with its bytes and SHA-256
 *     pieces/ID/piece.json                  the piece's id and whether it is put away
 *     pieces/ID/revisions-0001.json ...     lists of a few megabytes each; also asides, files, readings, photos
 *     photos/ID/PHOTO                       the bytes of a photo
 *     shop/revisions-0001.json ...          the same of the shop; also asides
 *
 * Devices and their secrets are never in it. A name in an archive is looked up in a table and is never a path.
 */
export const FORM = 1
export const LIST = 'castwright.json'

/** An archive may be so large as a file, bytes; the format holds little more. */
export const MOST_ARCHIVE = 4_000_000_000
export const LIMITS: ZipLimits = {
  entries: 65_000,
  // The largest single thing is a drawing of 4 MB of which each character is escaped.
  entryBytes: 26_000_000,
  bytes: 16_000_000_000,
  names:
    /^(castwright\.json|shop\/(revisions|asides)-\d{4}\.json|pieces\/[a-z0-9]{8,24}\/(piece|(revisions|asides|files|readings|photos)-\d{4})\.json|photos\/[a-z0-9]{8,24}\/[0-9a-f]{24})$/
}
/** A list is begun anew when it is this long, characters. */
export const CHUNK = 4_000_000

export type Part = 'revisions' | 'asides' | 'files' | 'readings' | 'photos'

export interface Listed {
  readonly name: string
  readonly sha256: string
  readonly bytes: number
}

/** A revision, or what lies aside: of a piece or of the shop. */
export interface RevisionItem {
  readonly number: number
  readonly edit: string
  readonly document: unknown
  readonly says: string
  readonly device: string | null
  readonly saved: string
  /** Of what lies aside. */
  readonly base?: number
  readonly settled?: boolean
}
export interface FileItem {
  readonly name: string
  readonly text: string
  readonly saved: string
}
export interface ReadingItem {
  readonly record: { readonly id: string }
  readonly saved: string
}
export interface PhotoItem {
  readonly id: string
  readonly laid: unknown
  readonly saved: string
}
export interface PieceItem {
  readonly id: string
  readonly away: string | null
}

export const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')

/** Checks of what an archive holds, one a kind of item. Each throws ServerProblem 400 for what cannot be taken. */
export function checksOf(engine: Awaited<ReturnType<ReadingEngine>>) {
  return {
    piece(value: unknown, id: string): PieceItem {
      const p = object(value, 'a piece')
      if (pieceId(p['id']) !== id) throw refused('the archive: found a piece under the name of another')
      return { id, away: p['away'] === null ? null : moment(p['away']) }
    },
    revision(
      value: unknown,
      kind: 'revision' | 'aside',
      needsName: boolean
    ): RevisionItem & { text: string } {
      const r = object(value, `a ${kind}`)
      const whole = (n: unknown, least: number) => Number.isInteger(n) && (n as number) >= least
      if (!whole(r['number'], 1)) throw refused(`the archive: found a ${kind} without its number`)
      if (kind === 'aside' && (!whole(r['base'], 0) || typeof r['settled'] !== 'boolean'))
        throw refused('the archive: found something kept aside without what it was made on')
      if (r['device'] !== null && typeof r['device'] !== 'string')
        throw refused('the archive: found a device that is no name')
      editId(r['edit'])
      moment(r['saved'])
      const text = documentText(r['document'], needsName)
      return {
        ...(r as unknown as RevisionItem),
        says: typeof r['says'] === 'string' ? r['says'].slice(0, 400) : '',
        device: r['device'] === null ? null : (r['device'] as string).slice(0, 60),
        text
      }
    },
    file(value: unknown): FileItem {
      const { name, text, saved } = object(value, 'a drawing')
      if (typeof name !== 'string' || !DRAWING_NAME.test(name) || typeof text !== 'string')
        throw refused('the archive: found a drawing that is none')
      if (Buffer.byteLength(text) > MOST_DRAWING)
        throw refused('the archive: found a drawing that is too large')
      return { name, text, saved: moment(saved) }
    },
    reading(value: unknown): ReadingItem {
      const r = object(value, 'a reading')
      try {
        const { readings } = engine.readReadings(
          `${JSON.stringify(r['record'])}\n`,
          'a reading of the archive'
        )
        if (readings[0] === undefined) throw refused('the archive: found a reading that is none')
      } catch (e) {
        if (e instanceof engine.InputProblem) throw refused(e.message)
        throw e
      }
      return { record: r['record'] as { id: string }, saved: moment(r['saved']) }
    },
    photo(value: unknown): PhotoItem {
      const { id, laid, saved } = object(value, 'a photo')
      if (typeof id !== 'string' || !PHOTO_ID.test(id))
        throw refused('the archive: found a photo without its id')
      if (laid !== null && (typeof laid !== 'object' || JSON.stringify(laid).length > MOST_LAID))
        throw refused('the archive: found a photo laid in a way that is none')
      return { id, laid, saved: moment(saved) }
    }
  }
}

function object(value: unknown, what: string): Record<string, unknown> {
  if (value === null || typeof value !== 'object' || Array.isArray(value))
    throw refused(`the archive: found ${what} that is none`)
  return value as Record<string, unknown>
}

function moment(value: unknown): string {
  if (typeof value !== 'string' || value.length > 40 || Number.isNaN(Date.parse(value)))
    throw refused('the archive: found something without its moment')
  return value
}
