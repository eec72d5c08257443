import type { WatchKind } from '../sweep/guard.ts'
import type { Tally } from '../sweep/tally.ts'

/** What a program can do wrong over a piece. */
export type ReportKind =
  | WatchKind
  | 'rapid through material'
  | 'plunge'
  | 'deeper than its edges'
  | 'shank rubs'
  | 'holder rubs'
  | 'outside the machine'
  | 'too much at once'
  | 'spindle off'
  | 'feed missing'
  | 'cutter not measured'
  | 'cutter unknown'
  | 'part free'
  | 'left standing'
  | 'cut away'

/**
 * One thing a program does that it should not, as often as it does. Places in program coordinates, mm.
 *
 * `value` at its worst, against `limit`, by kind:
 *
 *   rapid through material, plunge                 depth of material passed, mm; what is let pass
 *   deeper than its edges, shank rubs, holder rubs height of material above the tip; height of edges or reach, mm
 *   stones, pin, clamp, hardware, closed layer,
 *   void, far face                                 how far below its top the cutter comes, mm; 0
 *   bed                                            how deep into it, mm; what is allowed
 *   outside the machine                            how far beyond, mm; 0
 *   too much at once                               mm³ a minute; the limit
 *   spindle off, feed missing                      depth cut, mm; 0    (feed: 0; 0)
 *   cutter not measured, cutter unknown            its number; 0
 *   part free                                      area that comes free, mm²; 0
 *   left standing, cut away                        height too much or too little, mm; what is told apart
 */
export interface Report {
  readonly kind: ReportKind
  /** What was met, when it has a name: "pin 2", "pour 1". */
  readonly name: string
  /** The line where it is worst; 0 where no line is to blame. */
  readonly line: number
  /** Lines it happens in, the first ranges of them. */
  readonly lines: readonly (readonly [from: number, to: number])[]
  /** Moves in which it happens, all of them. */
  readonly count: number
  readonly value: number
  readonly limit: number
  readonly x: number
  readonly y: number
  readonly z: number
}

export function reportOf(kind: ReportKind, name: string, t: Tally, limit: number): Report {
  return {
    kind,
    name,
    line: t.worstLine,
    lines: t.ranges,
    count: t.count,
    value: t.worst,
    limit,
    x: t.x,
    y: t.y,
    z: t.z
  }
}
