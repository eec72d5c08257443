/**
 * Evidence: what each model must reproduce from outside the project.
 *
 * Every `*.evidence.ts` beside the tests exports a list of rows; `evidence.test.ts` runs each row as a
 * test and holds `docs/evidence.md` against what the rows give, so the page can be neither wrong nor stale.
 */
export interface Evidence {
  /** The model, as its file is named: "timber/moisture". */
  readonly model: string
  /** What is compared, in words a reader can look up. */
  readonly what: string
  /** Document, edition, page or table. */
  readonly source: string
  /** How the value came here: seen in the source or a transcription; recalled; worked out from a named formula; exact by definition. */
  readonly confidence: 'read' | 'memory' | 'derived' | 'computed' | 'exact' | 'practice' | 'fitted'
  readonly unit: string
  readonly published: number
  /** Largest accepted |ours - published|, in the same unit. */
  readonly tolerance: number
  /** Why this tolerance and not a tighter one. */
  readonly why: string
  readonly ours: () => number
  /** How many published cells the row stands for when it is the worst of a table (then `published` is 0 and `ours` the worst deviation). */
  readonly cells?: number
}

/** The row for a whole table: `worst` returns the largest absolute deviation over `cells` published cells. */
export function table(
  row: Omit<Evidence, 'published' | 'ours'> & { readonly cells: number; readonly worst: () => number }
): Evidence {
  const { worst, ...rest } = row
  return { ...rest, published: 0, ours: worst }
}

/** What a row gives, worked out once: its own test, that of its folder and the page look at the same figure. */
export function oursOf(row: Evidence): number {
  const ours = given.get(row) ?? row.ours()
  given.set(row, ours)
  return ours
}
const given = new WeakMap<Evidence, number>()
