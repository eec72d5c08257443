/**
 * What the calendar places: tasks, the gaps between them, and what they ask for while they last. Times are minutes
 * since the origin of the calendar (a moment, kept beside it), so that nothing here knows of clocks or zones.
 */

/**
 * What a task holds while it lasts. 'hands': the maker; 'second pair': whoever helps; 'machine'; 'mould NAME';
 * 'vessels'; 'firm NAME': outside. There is one of each unless the problem says how many.
 */
export type Resource = string

/** What kind of work it is: what its minutes are learned under. */
export type TaskKind =
  | 'mill'
  | 'settle'
  | 'prepare'
  | 'mould'
  | 'dry'
  | 'water test'
  | 'seal'
  | 'set'
  | 'mix'
  | 'pour'
  | 'watch'
  | 'bubbles'
  | 'stones'
  | 'marble'
  | 'wait'
  | 'demould'
  | 'turn'
  | 'flatten'
  | 'pins'
  | 'cutter change'
  | 'test cut'
  | 'air cut'
  | 'cut'
  | 'hand cut'
  | 'mark'
  | 'fill'
  | 'level'
  | 'edge'
  | 'sand'
  | 'coat'
  | 'fit'
  | 'pack'
  | 'rest'
  | 'deliver'
  | 'delivery'
  | 'outside'
  | 'mend'

/** Where the minutes of a task come from. */
export interface TaskBasis {
  readonly from: 'learned' | 'shop' | 'practice' | 'model' | 'source'
  /** "2 min a coat and 12 min/m²: common practice, no source". */
  readonly says: string
}

/** One thing to be done or waited through, in one go unless it may pause. */
export interface Task {
  /** Stays the same when the plan is made anew: the key of its step and what it is, "pour green: bubbles 2". */
  readonly id: string
  /** The piece it belongs to: its key among the pieces of the calendar. */
  readonly piece: string
  /** Key of its step (steps/step-key.ts); null for what stands beside the steps (buying, packing). */
  readonly step: string | null
  /** JSON Pointer into the piece. */
  readonly at: string
  readonly kind: TaskKind
  readonly says: string
  /** The fill of the mould it is of, from 1; left out: there is one or none. */
  readonly fill?: number
  readonly minutes: number
  /** Band of the minutes where they are doubtful. */
  readonly band: readonly [number, number] | null
  readonly basis: TaskBasis
  /** Whether somebody has to be there: then it lies within the hours at the bench. */
  readonly attended: boolean
  /** Whether it may stop when the bench closes and go on when it opens again (sanding may, a pour may not). */
  readonly mayPause: boolean
  readonly needs: readonly Resource[]
  /** Safety lines that hold at it. */
  readonly safety: readonly string[]
  /** Begun, done or given by the document: then it stays where it is. */
  readonly fixed: {
    readonly startMin: number
    /** null: still going on; its minutes say how long. */
    readonly endMin: number | null
    readonly why: 'begun' | 'done' | 'given'
  } | null
  /** Not to begin before: delivery, earliest start. */
  readonly notBeforeMin: number | null
  /** To end by: wanted date. A soft end is missed with words, a hard one is a clash. */
  readonly dueMin: number | null
  /** Whether that end is hard: a fair, a flight. Left out: soft. */
  readonly dueIsHard?: boolean
}

/** A wait between two tasks: from an end of one to an end of another, between a least and a greatest. */
export interface Gap {
  readonly before: string
  readonly after: string
  readonly from: 'start' | 'end'
  readonly to: 'start' | 'end'
  readonly leastMin: number
  /** null: as late as you like. */
  readonly mostMin: number | null
  /** "recoat window of the green: it bonds by itself until then". */
  readonly says: string
  /** What is lost when the greatest is passed: for the ways out. */
  readonly late: string | null
  /** Whether passing the greatest is a matter of cost (a wash and sand, say) and not of the piece: ways out may give it up. */
  readonly soft: boolean
}

/** Hours in which somebody is at the bench, min since the origin, in order, apart. */
export type Opening = readonly [fromMin: number, toMin: number]
