import type { Patch } from '../piece/patch.ts'
import type { Work } from './work.ts'

/** stop: do not go on. caution: your judgement. note: good to know. */
export type Severity = 'stop' | 'caution' | 'note'

/** What a check says. The same object goes out as JSON. */
export interface Finding {
  readonly id: string
  readonly severity: Severity
  /** JSON Pointer to the entry it concerns. */
  readonly at: string
  /** One or two sentences a maker would say: what is the matter, and what it does. */
  readonly says: string
  readonly value: number | null
  readonly unit: string | null
  /** Where the value may lie, unfavourable and favourable end. */
  readonly band: readonly [low: number, high: number] | null
  readonly limit: number | null
  /** Where value and limit come from: published source, common practice, the maker's own test. */
  readonly basis: string
  /** The reading that would settle it. */
  readonly settledBy: string | null
  /** Smallest change of the piece that clears it: RFC 6902 on the document. */
  readonly fix: Patch | null
  /** What the fix does, as a button says it: "Channel 9.2 deep". */
  readonly fixSays: string | null
  /** Makers' cases it answers. */
  readonly cases: readonly string[]
}

/** One check. It reads the work and changes nothing; the same work gives the same findings. */
export interface Check {
  readonly id: string
  /** What it looks for, for the list of checks. */
  readonly about: string
  readonly cases: readonly string[]
  readonly run: (work: Work) => readonly Found[]
}

/** What a check returns: the id and the cases are the check's own. */
export type Found = Omit<
  Finding,
  'id' | 'cases' | 'band' | 'settledBy' | 'fix' | 'fixSays' | 'value' | 'unit' | 'limit'
> &
  Partial<Pick<Finding, 'band' | 'settledBy' | 'fix' | 'fixSays' | 'value' | 'unit' | 'limit'>>

/** A finding from what a check found. Numbers are rounded to what a reader can use; NaN is a bug and throws. */
export function findingOf(check: Check, found: Found): Finding {
  const figure = (x: number | null | undefined): number | null => {
    if (x === null || x === undefined) return null
    if (Number.isNaN(x)) throw new Error(`${check.id} gave NaN`)
    return Number.isFinite(x) ? Number(x.toPrecision(6)) : null
  }
  return {
    id: check.id,
    severity: found.severity,
    at: found.at,
    says: found.says,
    value: figure(found.value),
    unit: found.unit ?? null,
    band: found.band ? [figure(found.band[0]) ?? 0, figure(found.band[1]) ?? 0] : null,
    limit: figure(found.limit),
    basis: found.basis,
    settledBy: found.settledBy ?? null,
    fix: found.fix ?? null,
    fixSays: found.fixSays ?? null,
    cases: check.cases
  }
}
