import type { RoomRange } from './cast/room-range.ts'
import type { Edge } from './cast/whole/whole-cast.ts'
import type { PlanMachineCut } from './cuts/run/plan-cut.ts'
import type { Finding } from './findings/finding.ts'
import type { Work } from './findings/work.ts'
import type { PlanFace } from './finish/face-plan.ts'
import type { CutSize } from './fits/cut-size.ts'
import type { Volumes } from './stack/volume.ts'

/** A finding that the maker goes on in spite of, with the reason. */
export interface Despite {
  readonly id: string
  readonly because: string
}

export interface PlanOptions {
  /** The only source of "now": ISO 8601 with offset. */
  readonly asOf: string
  readonly effort?: 'preview' | 'full'
  readonly despite?: readonly Despite[]
  /** When it is ready by the calendar, ISO 8601 with offset; left out or null: no days were made. */
  readonly ready?: string | null
}

/** stop: do not go on; caution: your judgement; ready. */
export type Verdict = 'stop' | 'caution' | 'ready'

/** Sums of a piece. mm, g, ml. */
export interface Totals {
  readonly sizeMm: readonly [x: number, y: number, thickness: number]
  readonly castHeightMm: number
  readonly massG: number
  readonly resinMixedG: number
  readonly resinPouredMl: number
  readonly pours: number
  readonly batches: number
  readonly timbers: number
  readonly pieces: number
  readonly blanks: number
  readonly stops: number
  readonly cautions: number
  readonly notes: number
  /** Material with a known price, all blanks; and how many lines of the buy list have none. */
  readonly materialCost: number
  readonly unpriced: number
  readonly currency: string
  /** Days from the first pour to the last step, waits only. */
  readonly waitDays: number
  /** When it is ready by the calendar, ISO 8601 with offset; null: no days were made, or none are possible. */
  readonly ready: string | null
}

/** The whole answer, as plain data. The same input gives the same bytes. */
export interface Plan {
  readonly castwright: 1
  readonly name: string
  readonly asOf: string
  readonly effort: 'preview' | 'full'
  readonly verdict: Verdict
  /** Where the piece stands, in one sentence. */
  readonly says: string
  readonly despite: readonly Despite[]
  readonly totals: Totals
  /** What the cast of the whole mould was made with; null where the column stands. */
  readonly whole: PlanWhole | null
  readonly findings: readonly Finding[]
  readonly steps: readonly PlanStep[]
  readonly pours: readonly PlanPour[]
  readonly cuts: readonly PlanCut[]
  readonly timbers: readonly PlanTimber[]
  readonly mould: Work['mould']
  readonly hardware: readonly PlanHardware[]
  /** How far it bows after each step and in use; null where no bow can be told. */
  readonly bow: PlanBow | null
  /** On its legs or rails; null where the piece names none. */
  readonly inUse: Work['inUse']
  /** What is lifted or turned, by the number of the step. */
  readonly moves: Work['moves']
  /** Pins that tie both faces; null where nothing asks for them. */
  readonly pins: Work['pins'] | null
  /** What no machine cuts, by the number of its step. */
  readonly hand: Work['hand']
  /** What the machine cuts, with which cutter and how; empty without a machine. */
  readonly machine: readonly PlanMachineCut[]
  readonly faces: readonly PlanFace[]
  readonly quantity: Work['quantity']
  readonly buy: Work['buy']
}

export interface PlanWhole {
  readonly effort: 'preview' | 'full'
  /** Cells along x, y and z, and their width, mm. */
  readonly cells: readonly [x: number, y: number, z: number]
  readonly widthMm: number
  readonly steps: number
  /** (heat released − lost − stored)/the largest of them. */
  readonly energyClosure: number
  /** Whether the moments of the pours and the windows they wait for agree. */
  readonly settled: boolean
  /** Rooms in which the pours stay within their limits and harden. */
  readonly room: RoomRange
}

export interface PlanStep {
  readonly number: number
  readonly kind: Work['steps'][number]['kind']
  readonly says: string
  readonly at: string
  readonly faceUp: 'front' | 'back' | null
  readonly inMould: boolean
  readonly startMin: number
  readonly waitMin: number
  /** Heights of both faces as cast after the step. */
  readonly lowZ: number
  readonly highZ: number
  readonly safety: readonly { readonly line: string; readonly defersTo: readonly string[] }[]
}

export interface PlanPour {
  readonly id: string
  readonly kind: string
  readonly resin: string
  readonly stack: Work['stack']['pours'][number]
  readonly finishedMm: number | null
  readonly batches: Work['batches'][number]
  readonly cast: Work['casts'][number]
  /** How near it is to its limits; null until the whole mould was cast. */
  readonly edge: Edge | null
  readonly hiding: Work['hiding'][number]
  readonly seen: Work['appearance']['pours'][number]
}

export interface PlanCut {
  readonly id: string
  readonly face: 'front' | 'back'
  readonly kind: string
  readonly way: string
  /** Depth on the day it is made and on the finished piece, mm; null right through. */
  readonly dayMm: number | null
  readonly finishedMm: number | null
  readonly leftMm: number | null
  /** How wide it is through the build; null where a width says nothing: outlines, V lines, what is filled. */
  readonly size: CutSize | null
  /** Whether it shows from the front through what it leaves; null: of no cut from behind under resin. */
  readonly seen: Work['appearance']['cuts'][number]['seen'] | null
}

export interface PlanTimber {
  readonly id: string
  readonly species: string
  readonly massG: number
  readonly liftG: number
  readonly holdG: number
  readonly season: Work['seasons'][number]
  /** Where it will stand, how it cups, the board to start from, its seal coat and what holds it down. */
  readonly facts: Work['timberFacts'][number]
}

export interface PlanHardware {
  readonly id: string
  readonly name: string
  readonly count: number
  readonly gapMm: number | null
  /** Gap on each side in the piece in use, low, central, high; and the one wanted. null without a hole. */
  readonly clearanceMm: readonly [number, number, number] | null
  readonly wantedGapMm: number
  /** Size across to cut on the day so that the wanted gap is left in the end, mm. */
  readonly cutMm: number | null
  readonly shaft: Work['fits'][number]['shaft']
  /** Cast in: how much it shows from the front. */
  readonly seen: Work['partsSeen'][number]['seen'] | null
}

/** As {@link Work.bow}, with steps by their number. mm. */
export interface PlanBow {
  readonly flatnessMm: number
  readonly rows: NonNullable<Work['bow']>['rows']
  readonly order: NonNullable<Work['bow']>['order']
}

/** A plan with the work it was made from, for sheets that draw. */
export interface Planned {
  readonly plan: Plan
  readonly work: Work
  readonly volumes: Volumes
}
