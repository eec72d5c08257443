import type { CatalogueRecord, Confidence } from './record.ts'

/** Ways of knowing, best first: an order for finding the weakest, not a measure of error. */
export const STRENGTH: readonly Confidence[] = ['read', 'derived', 'memory', 'practice', 'fitted']

/** The weakest of several tags; a result worked out from several values is known no better than this. */
export function weakest(...tags: readonly Confidence[]): Confidence {
  let rank = 0
  for (const tag of tags) rank = Math.max(rank, STRENGTH.indexOf(tag))
  return STRENGTH[rank]!
}

/** Fields of a row that are known otherwise than the row itself. */
export type Tags<Row> = Readonly<Partial<Record<keyof Row & string, Confidence>>>

/** How one field of a row is known: its own tag, else that of the row. */
export function confidenceOf<Row extends CatalogueRecord & { readonly tags?: Tags<Row> }>(
  row: Row,
  field: keyof Row & string
): Confidence {
  return row.tags?.[field] ?? row.confidence
}
