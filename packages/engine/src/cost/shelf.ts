import { dayAfter } from '../quantity/day.ts'

/** So much of one lot on the shelf. Amounts in any one unit. */
export interface Lot {
  /** Its mark; null: it has none. */
  readonly lot: string | null
  readonly amount: number
  /** The last day it may be used, YYYY-MM-DD; null: it keeps. */
  readonly until: string | null
}

/** So much is needed on a day; null: the day is not known, and nothing has expired by it. */
export interface Use {
  readonly amount: number
  readonly day: string | null
  /** The vessel it goes into, where it is told of each: which pour, or which of the filled markings. */
  readonly into?: MixedFor
}

/** What is mixed for: a pour by its index, or a filled marking by its place among those that are filled. */
export type MixedFor = { readonly pour: number } | { readonly fill: number }

/** What the shelf gives. */
export interface Taken {
  /** What is taken of each lot, what expires first before the others. */
  readonly taken: readonly Lot[]
  /** What each use takes of them, in the order in which the uses were given. */
  readonly by: readonly (readonly Lot[])[]
  /** What the uses ask for beyond it. */
  readonly short: number
  /** What is left of lots that have expired by the day of a use, and so is left standing. */
  readonly expired: readonly Lot[]
}

/** Lots as the shop's document has them. */
interface Dated {
  readonly lot?: string | undefined
  readonly opened?: string | undefined
  readonly expires?: string | undefined
}

/** The last day a lot may be used: the day on its label, or so many days after it was opened, whichever is sooner. */
export function lastDay(lot: Dated, keeps: number | undefined): string | null {
  const days = [
    ...(lot.expires === undefined ? [] : [lot.expires]),
    ...(lot.opened === undefined || keeps === undefined
      ? []
      : [dayAfter(`${lot.opened}T00:00:00Z`, Math.floor(keeps))])
  ]
  return days.sort()[0] ?? null
}

/**
 * Takes from the shelf for uses in the order of their days: of each lot that still keeps on the day, the one that expires
 * first. No other way meets more of the uses, as what keeps for a later day keeps for an earlier one.
 *
 * Check: the most that can be met by any way, by a general linear solver (tests).
 * Limits: whole days; a lot may be used up to the end of its last one.
 */
export function takenFrom(lots: readonly Lot[], uses: readonly Use[]): Taken {
  const order = [...lots].sort((a, b) => byDay(a.until, b.until))
  const left = order.map(l => l.amount)
  const took = order.map(() => 0)
  const by = uses.map((): Lot[] => [])
  let short = 0
  let last: string | null = null
  const inTime = uses.map((use, at) => ({ use, at })).sort((a, b) => byDay(a.use.day, b.use.day))
  for (const { use, at } of inTime) {
    let open = use.amount
    if (use.day !== null && (last === null || use.day > last)) last = use.day
    order.forEach((lot, k) => {
      if (open <= 0 || (use.day !== null && lot.until !== null && lot.until < use.day)) return
      const part = Math.min(open, left[k]!)
      left[k]! -= part
      took[k]! += part
      open -= part
      if (part > 0) by[at]!.push({ ...lot, amount: part })
    })
    short += open
  }
  return {
    taken: order.flatMap((l, k) => (took[k]! > 0 ? [{ ...l, amount: took[k]! }] : [])),
    by,
    short,
    expired: order.flatMap((l, k) =>
      left[k]! > 0 && l.until !== null && last !== null && l.until < last ? [{ ...l, amount: left[k]! }] : []
    )
  }
}

/** What of the shelf is still good on the day of the first use. */
export function stillGood(lots: readonly Lot[], uses: readonly Use[]): number {
  const first = uses.flatMap(u => (u.day === null ? [] : [u.day])).sort()[0]
  const good = (l: Lot) => first === undefined || l.until === null || l.until >= first
  return lots.reduce((sum, l) => sum + (good(l) ? l.amount : 0), 0)
}

/** What several lots are called together: "R-12 (A), H-17 (B)". */
export function lotWords(lots: readonly string[]): string {
  return [...new Set(lots)].join(', ')
}

// Days in order; what has none comes last.
function byDay(a: string | null, b: string | null): number {
  if (a === b) return 0
  if (a === null) return 1
  if (b === null) return -1
  return a < b ? -1 : 1
}
