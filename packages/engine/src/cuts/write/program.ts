import type { CutterShape } from '../../catalogue/cutter-shape.ts'
import type { Toolpath } from '../toolpath.ts'

/** A box along the axes, mm, in the coordinates of the setting. */
export interface Box {
  readonly minX: number
  readonly maxX: number
  readonly minY: number
  readonly maxY: number
  readonly minZ: number
  readonly maxZ: number
}

/** One toolpath and what the maker calls it. */
export interface ProgramPart {
  readonly name: string
  readonly path: Toolpath
  /** Where material begins under it, z: straight down a rapid move goes no lower, but where it has cut before. */
  readonly topMm: number
}

/** What one cutter does, from its change to the next. */
export interface CutterRun {
  /** Its number in the machine, 1..99. */
  readonly number: number
  readonly words: string
  readonly shape: CutterShape
  /** Turns a minute, clockwise. */
  readonly rpm: number
  /** How long it takes by the machine's motion; null where nobody reckoned it. */
  readonly minutes: number | null
  /** Why it is run so. */
  readonly why: readonly string[]
  readonly parts: readonly ProgramPart[]
}

/** A place above the work at which an air cut stops, so that the maker can look. */
export interface Visit {
  readonly x: number
  readonly y: number
  readonly words: string
}

/** All that stands in one program. Lengths mm in the coordinates of the setting, z 0 at the worked face. */
export interface ProgramInput {
  readonly kind: 'cut' | 'test cut' | 'air cut' | 'restart'
  readonly name: string
  readonly piece: string
  /** How the piece lies. */
  readonly setting: readonly string[]
  /** What the zero is and how it is set, in words; the heights' own line is the writer's. */
  readonly zero: readonly string[]
  readonly holding: readonly string[]
  /** Lines of the safety catalogue; the writer's own deference to the machine's manual stands besides. */
  readonly safety: readonly string[]
  /** What is to be known before it runs: what was left out, what was done before. */
  readonly notes: readonly string[]
  /** The machine, in words. */
  readonly machine: string
  /** Top of the bed or spoilboard, z, and how far a cut may go into it. */
  readonly bedMm: number
  readonly intoBedMm: number
  /** What lies on the bed; its `maxZ` is the highest point the cutter crosses. */
  readonly stock: Box
  /** Height at which rapid moves cross, z; above the stock. */
  readonly clearMm: number
  /** Where the height is looked at before the cut: a place over the face, and how high the face stands there now. */
  readonly checkAt: { readonly x: number; readonly y: number; readonly topMm: number }
  /** How far what is written may stray from an arc of the path. */
  readonly tolMm: number
  /** false: the spindle stays off. */
  readonly spindle: boolean
  /** Stops on the way over the work before the path begins; of an air cut. */
  readonly visits: readonly Visit[]
  readonly runs: readonly CutterRun[]
}

/** Where a pass begins in the text. */
export interface WrittenPass {
  readonly run: number
  readonly part: number
  readonly pass: number
  readonly name: string
  /** Line of the text, from 1. */
  readonly line: number
}

/** A program as it stands in its file. */
export interface WrittenProgram {
  readonly text: string
  readonly lines: number
  readonly passes: readonly WrittenPass[]
}
