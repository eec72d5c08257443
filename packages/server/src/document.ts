import { refused } from './problem.ts'

/** Longest document taken, characters of its JSON; deepest nesting. */
const MOST_CHARACTERS = 2_000_000
const MOST_DEPTH = 64

/**
 * A document as it is stored: any JSON object with a version and, for a piece, a name. Whether it can be planned
 * is not asked here: what was typed is never lost.
 * @throws ServerProblem for anything else
 */
export function documentText(document: unknown, needsName: boolean): string {
  if (document === null || typeof document !== 'object' || Array.isArray(document))
    throw refused(
      `the document: found ${document === null ? 'null' : typeof document}; allowed: a JSON object`
    )
  const d = document as Record<string, unknown>
  if (typeof d['castwright'] !== 'number')
    throw refused('the document: found no "castwright"; allowed: the number of its version')
  if (needsName && (typeof d['name'] !== 'string' || d['name'].length > 400))
    throw refused('the document: found no "name"; allowed: a name of at most 400 characters')
  if (deeper(document, MOST_DEPTH))
    throw refused(`the document: found deeper nesting; allowed: ${MOST_DEPTH} levels`)
  const text = JSON.stringify(document)
  if (text.length > MOST_CHARACTERS)
    throw refused(`the document: found ${text.length} characters; allowed: ${MOST_CHARACTERS}`)
  return text
}

/** The kind a piece says it is, as lists of pieces show it; null for none. */
export function kindOf(document: { readonly kind?: unknown }): string | null {
  return typeof document.kind === 'string' ? document.kind.slice(0, 40) : null
}

/** Drawings beside a piece, of which one may be very large. */
export const MOST_DRAWINGS = 60
/** Longest drawing beside a piece, bytes. */
export const MOST_DRAWING = 4_000_000
/** What a drawing may be called. */
export const DRAWING_NAME = /^[^/\\\p{Cc}]{1,120}\.svg$/iu
/** The id of a photo: the head of the SHA-256 of its bytes. */
export const PHOTO_ID = /^[0-9a-f]{24}$/
/** Longest JSON of a reading, or of how a photo is laid, bytes. */
export const MOST_LAID = 64_000

function deeper(value: unknown, levels: number): boolean {
  if (value === null || typeof value !== 'object') return false
  if (levels === 0) return true
  return Object.values(value).some(v => deeper(v, levels - 1))
}

const PIECE_ID = /^[a-z0-9]{8,24}$/
const EDIT_ID = /^[A-Za-z0-9_-]{8,40}$/

export function pieceId(id: unknown): string {
  if (typeof id !== 'string' || !PIECE_ID.test(id))
    throw refused('the id of a piece: allowed: 8 to 24 small letters and digits')
  return id
}

export function editId(id: unknown): string {
  if (typeof id !== 'string' || !EDIT_ID.test(id))
    throw refused('"edit": allowed: 8 to 40 letters, digits, - and _')
  return id
}

export function baseNumber(base: unknown): number {
  if (!Number.isInteger(base) || (base as number) < 0)
    throw refused('"base": allowed: the number of the revision it was made on, 0 for none')
  return base as number
}

/** The number of a revision, or of what is kept aside. */
export function wholeNumber(n: string): number {
  if (!/^[0-9]{1,9}$/.test(n)) throw refused(`the number "${n.slice(0, 20)}"; allowed: a whole number`)
  return Number(n)
}
