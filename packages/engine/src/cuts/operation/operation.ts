import type { Setting } from '../../steps/setting.ts'
import type { CutJob, Feeds, NoPath } from '../cut-job.ts'
import type { Frame } from '../pins/frame.ts'
import type { MeasuredFrame } from '../pins/measured-frame.ts'
import type { CutterNeed } from '../run/choose.ts'
import type { Cutter } from '../run/cutters.ts'
import type { CutOperation, CutRun } from '../run/feeds.ts'
import type { Met } from '../run/met.ts'
import type { Toolpath } from '../toolpath.ts'
import type { Box } from '../write/program.ts'
import type { Position } from './position.ts'

/** What is done, in the trade's words. */
export type OperationKind =
  | 'pin holes'
  | 'index holes'
  | 'flatten'
  | 'pocket'
  | 'corners'
  | 'bore'
  | 'groove'
  | 'keyhole'
  | 'edges'
  | 'outline'
  | 'marking'
  | 'figures'

/** A setting with all that its programs share. Lengths mm in its coordinates. */
export interface MachineSetting {
  /** 0, 1, 2 ... in the order they are run. */
  readonly index: number
  readonly setting: Setting
  readonly frame: Frame
  /** Where a piece longer than the bed lies on it; null: it lies there whole. */
  readonly position: Position | null
  /** The box the casting keeps within in the setting: as it lies when that begins, and what is poured on it in it. */
  readonly stock: Box
  /** Height at which rapid moves cross. */
  readonly clearMm: number
  /** How the piece was found to lie, and how thick; null: as planned. Paths are made as planned, then placed. */
  readonly place: MeasuredFrame['place']
  readonly names: MeasuredFrame['names']
  readonly thickness: MeasuredFrame['thickness']
  /** How much higher the face that is down lies than planned: less than 0 where the piece is thicker, mm. */
  readonly underMovedMm: number
}

/** One cutter doing one thing in one setting: it becomes one program. */
export interface Operation {
  /** 1, 2, 3 ... through all settings, in the order they are run. */
  readonly number: number
  /** Index of the machine setting, and of the step it is part of. */
  readonly setting: number
  readonly step: number
  /** How many events of the stack have happened before it. */
  readonly before: number
  /** JSON Pointer to what it comes from. */
  readonly at: string
  readonly kind: OperationKind
  /** "cable channel", "pin holes, 2 × Ø 8". */
  readonly name: string
  readonly cutter: Cutter
  readonly cutterWhy: string
  readonly limits: readonly string[]
  readonly feeds: CutRun
  readonly met: readonly Met[]
  readonly job: CutJob
  /** Makes the path: work of milliseconds to seconds, done when asked for. */
  readonly path: () => Toolpath | NoPath
}

/** What no program can be made of, and why. */
export interface NotMade {
  readonly setting: number
  readonly step: number
  readonly at: string
  readonly name: string
  readonly says: string
  /** Largest cutter that would do, mm; null: size does not help. */
  readonly largestMm: number | null
  readonly reason: 'kind' | 'size' | 'reach' | 'path' | 'unknown'
}

/** An operation before its cutter is chosen. Places are in the coordinates of the setting, heights z. */
export interface Wanted {
  readonly kind: OperationKind
  /** JSON Pointer to what it comes from; left out: the entry of its step. */
  readonly at?: string
  readonly name: string
  readonly need: CutterNeed
  /** Cutter of the shop that the document names. */
  readonly cutterId?: string | undefined
  readonly operation: CutOperation
  readonly topMm: number
  readonly floorMm: number
  readonly met: readonly Met[]
  readonly feeds?: Partial<Pick<Feeds, 'allowanceMm' | 'climb'>>
  /** A wall thinner than 1.5 mm is left. */
  readonly thin?: boolean
  readonly path: (job: CutJob, cutter: Cutter) => Toolpath | NoPath
  /** What follows once the cutter is known: corners that it leaves. */
  readonly after?: (cutter: Cutter) => readonly Wanted[]
}
