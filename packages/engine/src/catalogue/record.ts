/**
 * How every catalogue row says where it comes from.
 *
 * - `read`      seen in the source or in a transcription of it
 * - `memory`    recalled from the named source, not re-read
 * - `derived`   worked out from a named formula or row
 * - `practice`  common workshop practice, no source
 * - `fitted`    tuned to common practice for a generic class; no product
 */
export type Confidence = 'read' | 'memory' | 'derived' | 'practice' | 'fitted'

export interface CatalogueRecord {
  /** Stable key, lower case with hyphens: what documents write. */
  readonly id: string
  /** The name a maker reads. */
  readonly name: string
  /** Document, edition, table or page; for `practice` and `fitted` what it was aimed at. */
  readonly source: string
  readonly confidence: Confidence
  /** What a user of the row should know: "measure yours", limits, doubts. */
  readonly note?: string
}
