/**
 * A span of time in which a step works, min since the pour. Plain data.
 *
 * `band` is for those who want one span that misses nothing: earliest opening to latest closing. For the span
 * that is sure, take the latest of `openBand` to the earliest of `closeBand`.
 */
export interface Window {
  readonly open: number
  /** null: it does not close within the time that is followed. */
  readonly close: number | null
  /** Earliest opening and latest closing within the band. */
  readonly band: readonly [number, number | null]
  /** Earliest and latest opening; null: within the band it may not open in the time that is followed. */
  readonly openBand: readonly [number, number | null]
  /** Earliest and latest closing; null: it does not close. */
  readonly closeBand: readonly [number | null, number | null]
  /** false: it does not open within the time that is followed, and `open` is the end of that time. */
  readonly reached: boolean
  /** The reading that would sharpen it, as something done at the bench. */
  readonly settledBy: string
  /** What its ends follow from, and how sure that is. */
  readonly basis: string
}

/** The ends of a window before they have a band. */
export type Ends = Pick<Window, 'open' | 'close' | 'reached'>

/** A window without doubt: its band is itself. `open` null: it is not reached by `endMin`. */
export function windowAt(
  open: number | null,
  close: number | null,
  endMin: number,
  words: Pick<Window, 'settledBy' | 'basis'>
): Window {
  const from = open ?? endMin
  // Open only after it would close: the one good moment is the opening.
  const to = close === null ? null : Math.max(from, close)
  return {
    open: from,
    close: to,
    band: [from, to],
    openBand: [from, open],
    closeBand: [to, to],
    reached: open !== null,
    ...words
  }
}

/**
 * A window with the band that other runs of the same pour give its ends: the hull of the central run and of
 * them. Runs that do not have the window at all (null) leave its ends open to the late side.
 */
export function bandedWindow<W extends Window>(central: W, others: readonly (Ends | null)[]): W {
  const all: readonly (Ends | null)[] = [central, ...others]
  const known = all.filter(e => e !== null)
  const opens = known.filter(e => e.reached).map(e => e.open)
  const closes = known.flatMap(e => (e.close === null ? [] : [e.close]))
  const earliest = Math.min(central.open, ...opens)
  const everyOpens = opens.length === all.length
  const everyCloses = closes.length === all.length
  const latest = everyCloses ? Math.max(...closes) : null
  return {
    ...central,
    openBand: [earliest, everyOpens ? Math.max(...opens) : null],
    closeBand: [closes.length === 0 ? null : Math.min(...closes), latest],
    band: [earliest, latest]
  }
}

/**
 * Ends found on one bed carried over to another: each in proportion to how that end moved against the central
 * run of its own bed. Used where the band is run in an even room and the plan in one with a night.
 */
export function carriedOver(own: Ends, evenCentral: Ends | null, even: Ends | null): Ends | null {
  if (even === null) return null
  const ratio = (end: number, centre: number | null, corner: number): number =>
    centre !== null && centre > 0 && corner > 0 ? (end * corner) / centre : corner
  return {
    reached: even.reached,
    open: own.reached ? ratio(own.open, evenCentral?.open ?? null, even.open) : even.open,
    close:
      even.close === null
        ? null
        : own.close === null
          ? even.close
          : ratio(own.close, evenCentral?.close ?? null, even.close)
  }
}
