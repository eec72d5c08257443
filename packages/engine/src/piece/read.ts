import type { z } from 'zod'
import { JsonProblem, readJson } from './json.ts'
import { MIGRATIONS, migrate } from './migrate.ts'
import type { Piece, PieceDocument } from './piece-schema.ts'
import { pieceSchema, VERSION } from './piece-schema.ts'
import { InputProblem, problemsOf } from './problem.ts'
import type { Reading } from './reading-schema.ts'
import { readingSchema } from './reading-schema.ts'
import type { CupTestDocument, Shop, ShopCupTest, ShopDocument } from './shop-schema.ts'
import { cupTestSchema, shopSchema } from './shop-schema.ts'

/** A document as it stands in its file, and as it reads. */
export interface Read<D, T> {
  readonly document: D
  readonly value: T
}

/**
 * A piece from the text of its file. `source` names it in messages.
 * @throws InputProblem naming every place, what was found there and what is allowed
 */
export function readPiece(text: string, source: string): Read<PieceDocument, Piece> {
  return checkPiece(parse(text, source), source)
}

/** A piece from its document (already parsed). Strings stay in `document` as typed. @throws InputProblem */
export function checkPiece(document: unknown, source: string): Read<PieceDocument, Piece> {
  return checked(document, source, pieceSchema, MIGRATIONS.piece) as Read<PieceDocument, Piece>
}

/** A shop from the text of its file. @throws InputProblem */
export function readShop(text: string, source: string): Read<ShopDocument, Shop> {
  return checkShop(parse(text, source), source)
}

/** A shop from its document. @throws InputProblem */
export function checkShop(document: unknown, source: string): Read<ShopDocument, Shop> {
  return checked(document, source, shopSchema, MIGRATIONS.shop) as Read<ShopDocument, Shop>
}

/** A cup test from its document, as a shop's resin holds it. @throws InputProblem */
export function checkCupTest(document: unknown, source: string): Read<CupTestDocument, ShopCupTest> {
  const result = cupTestSchema.safeParse(document)
  if (!result.success)
    throw new InputProblem(source, problemsOf(result.error.issues, cupTestSchema, document))
  return { document: document as CupTestDocument, value: result.data }
}

/** The shop of someone who has told us nothing: usual vessels, a usual room. */
export function usualShop(): Shop {
  return shopSchema.parse({ castwright: VERSION })
}

/** What a readings file held: whole records in order, and what was cut off or could not be read. */
export interface Readings {
  readonly readings: readonly Reading[]
  readonly unread: readonly { readonly line: number; readonly why: string }[]
}

/** Most lines of a readings file: ten years at thirty a day. */
const MOST_LINES = 110_000

/**
 * Readings from the text of a `.readings.jsonl` file: one record a line. A record sent twice (same id)
 * counts once. A last line without its end was cut off by a power cut or a kill: it is left out and said so.
 * @throws InputProblem for a whole line that is not a reading
 */
export function readReadings(text: string, source: string): Readings {
  const lines = text.split('\n')
  if (lines.length > MOST_LINES) {
    throw new InputProblem(source, [
      { path: '', found: `${lines.length} lines`, allowed: `at most ${MOST_LINES}`, example: '' }
    ])
  }
  const readings: Reading[] = []
  const unread: { line: number; why: string }[] = []
  const seen = new Set<string>()
  lines.forEach((line, i) => {
    if (line.trim() === '') return
    const at = `${source} line ${i + 1}`
    const value = i === lines.length - 1 ? unlessCut(line) : parse(line, source, i)
    if (value === undefined) {
      unread.push({ line: i + 1, why: 'cut off: left out' })
      return
    }
    const result = readingSchema.safeParse(value)
    if (!result.success) throw new InputProblem(at, problemsOf(result.error.issues, readingSchema, value))
    if (!seen.has(result.data.id)) readings.push(result.data)
    seen.add(result.data.id)
  })
  return { readings, unread }
}

// The beginning of a record is never JSON by itself, so a last line that is JSON was not cut off.
function unlessCut(line: string): unknown {
  try {
    return readJson(line)
  } catch (e) {
    if (e instanceof JsonProblem) return undefined
    throw e
  }
}

// `above` is how many lines of the file stand before the text.
function parse(text: string, source: string, above = 0): unknown {
  try {
    return readJson(text)
  } catch (e) {
    if (!(e instanceof JsonProblem)) throw e
    if (binary(text))
      throw new InputProblem(source, [
        {
          path: '',
          found: 'a binary file',
          allowed: 'a text file in UTF-8 with a JSON object',
          example: EMPTY
        }
      ])
    const example = text.trim() === '' ? EMPTY : ''
    throw new InputProblem(`${source} line ${above + e.line}, column ${e.column}`, [
      { path: '', found: e.found, allowed: e.allowed, example }
    ])
  }
}

const EMPTY = `{ "castwright": ${VERSION}, ... }`

// A NUL stands in no text. Other control characters, or what a decoder puts where the bytes were no UTF-8, are
// a slip of the keys in a text that begins as JSON, and a binary file in one that does not.
function binary(text: string): boolean {
  const head = text.slice(0, 4000)
  if (head.includes('\u0000')) return true
  if (/^\ufeff?\s*[[{"]/.test(head)) return false
  return head.includes('\ufffd') || [...head].some(c => c < ' ' && !'\t\n\r\f'.includes(c))
}

function checked(
  document: unknown,
  source: string,
  schema: z.ZodType,
  migrations: (typeof MIGRATIONS)['piece']
): Read<unknown, unknown> {
  const moved = migrate(document, VERSION, migrations)
  if ('problem' in moved) throw new InputProblem(source, [moved.problem])
  const result = schema.safeParse(moved.document)
  if (!result.success) throw new InputProblem(source, problemsOf(result.error.issues, schema, moved.document))
  return { document: moved.document, value: result.data }
}
