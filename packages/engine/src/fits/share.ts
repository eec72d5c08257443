/** Low, central and high end of a figure, mm. */
export type Band = readonly [low: number, central: number, high: number]

/** What moves a wall or a size after it was drawn. */
export type Cause =
  | 'cut'
  | 'class'
  | 'coat'
  | 'cure'
  | 'former'
  | 'season'
  | 'warmth'
  | 'part size'
  | 'part coat'

/**
 * One cause of a fit, on each side, mm; positive: more room.
 *
 * `sure`: the piece will see the whole of its band (a year has a dry and a damp end; a wall is coated or it is not);
 * else it is chance, and chances of several causes seldom fall together.
 */
export interface Share {
  readonly cause: Cause
  readonly sideMm: Band
  readonly sure: boolean
}

/**
 * All shares together: sums of the centres and of what is sure, and the root of the sum of the squares of what is
 * chance, downward and upward apart.
 *
 *   low = Σ sure low + Σ chance centre − √Σ (centre − low)²         high likewise
 *
 * Source: root sum of squares of independent deviations (statistical tolerancing, textbook; memory).
 * Check: ± 0.3 and ± 0.4 by chance give ± 0.5; a sure −0.1 to 0 beside them −0.6 to +0.5.
 *
 * Limits: deviations taken as independent and about even in their band.
 */
export function together(shares: readonly Share[]): Band {
  let [low, central, high] = [0, 0, 0]
  let [down, up] = [0, 0]
  for (const { sideMm, sure } of shares) {
    central += sideMm[1]
    low += sure ? sideMm[0] : sideMm[1]
    high += sure ? sideMm[2] : sideMm[1]
    if (sure) continue
    down += (sideMm[1] - sideMm[0]) ** 2
    up += (sideMm[2] - sideMm[1]) ** 2
  }
  return [low - Math.sqrt(down), central, high + Math.sqrt(up)]
}

/** A band of one value. */
export function exactly(mm: number): Band {
  return [mm, mm, mm]
}
