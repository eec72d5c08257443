import type { z } from 'zod'
import { JsonProblem, readJson } from './json.ts'
import { MIGRATIONS, migrate } from './migrate.ts'
import type { Piece, PieceDocument } from './piece-schema.ts'
import { pieceSchema, VERSION } from './piece-schema.ts'
import { InputProblem, problemsOf } from './problem.ts'
import type { Reading } from './reading-schema.ts'
import { readingSchema } from './reading-schema.ts'
import type { Shop, ShopDocument } from './shop-schema.ts'
import { shopSchema } from './shop-schema.ts'

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
    const last = i === lines.length - 1
    try {
      const value = parse(line, `${source} line ${i + 1}`)
      const result = readingSchema.safeParse(value)
      if (!result.success)
        throw new InputProblem(
          `${source} line ${i + 1}`,
          problemsOf(result.error.issues, readingSchema, value)
        )
      if (!seen.has(result.data.id)) readings.push(result.data)
      seen.add(result.data.id)
    } catch (e) {
      if (!(last && e instanceof InputProblem)) throw e
      unread.push({ line: i + 1, why: 'cut off: left out' })
    }
  })
  return { readings, unread }
}

function parse(text: string, source: string): unknown {
  try {
    return readJson(text)
  } catch (e) {
    if (!(e instanceof JsonProblem)) throw e
    const found = text.includes('\u0000') ? 'a binary file' : e.found
    throw new InputProblem(`${source} line ${e.line}, column ${e.column}`, [
      { path: '', found, allowed: e.allowed, example: '' }
    ])
  }
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
