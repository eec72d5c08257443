import type { Region } from '../../shape/region.ts'

/** What a guard keeps the cutter from. */
export type GuardKind = 'pin' | 'clamp' | 'hardware'

/** Something that is not to be cut: it fills a region of the plan between two heights of the program, mm. */
export interface Guard {
  readonly kind: GuardKind
  /** What a report calls it: "pin 2", "clamp at the left". */
  readonly name: string
  /** On the plan (x right, y up, seen from the front). */
  readonly region: Region
  readonly fromMm: number
  readonly toMm: number
}

/** What is looked for while cutting, beside the guards: heights are those of the columns. */
export type WatchKind = GuardKind | 'stones' | 'closed layer' | 'void' | 'far face' | 'bed'

/** One thing that was met, as often as it was: kept here by the block, read by the judge. */
export interface Watch {
  readonly kind: WatchKind
  readonly name: string
}
