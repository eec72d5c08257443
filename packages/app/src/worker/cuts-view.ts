import type { ZeroPoint } from '../../../engine/src/cuts/pins/pin-plate.ts'
import type { Severity } from '../../../engine/src/findings/finding.ts'
import type { Drawn } from './views.ts'

/** A program as a row of the table. mm, minutes. */
export interface ProgramRow {
  readonly file: string
  readonly name: string
  readonly number: number
  readonly cutter: string
  /** Depth as cut, from the face of the day. */
  readonly depthMm: number
  readonly minutes: number
  readonly testMinutes: number | null
  readonly airMinutes: number | null
  /** The gravest that proving found, in few words; null: nothing met. */
  readonly meets: { readonly severity: Severity; readonly says: string; readonly more: number } | null
  /** What its cutters do not come to, and what to do about it by hand. */
  readonly unreached: { readonly mostMm: number; readonly says: string } | null
  readonly runs: readonly {
    readonly cutter: string
    readonly rpm: number
    readonly feedMmMin: number
    readonly plungeMmMin: number
    readonly depthMm: number
    readonly stepMm: number
    readonly why: readonly string[]
  }[]
  /** Passes it can be begun anew at. */
  readonly passes: readonly string[]
  /** Its way alone. */
  readonly drawn: Drawn
  readonly cover: CoverView | null
}

/** What is left over the next layer or hollow, as a map to lie on the drawing without materials. */
export interface CoverView {
  readonly body: string
  /** Bands that are met: which, from, and up to; null: no end. mm. */
  readonly bands: readonly { readonly n: number; readonly fromMm: number; readonly toMm: number | null }[]
  /** The least over each, the least of all first; x and y as the machine has them. */
  readonly least: readonly {
    readonly over: string
    readonly mm: number
    readonly x: number
    readonly y: number
  }[]
}

/** The piece as it lies on the machine between two turnings. */
export interface SettingView {
  readonly up: 'front' | 'back'
  readonly lies: readonly string[]
  readonly zero: readonly string[]
  readonly bedMm: number
  /** The materials, under every drawing of it: markup. */
  readonly ground: string
  readonly drawn: Drawn
  /** Places to touch before the first cut, and the farthest corner of the work from the zero. */
  readonly touch: { readonly points: readonly ZeroPoint[]; readonly reachMm: number }
  readonly programs: readonly ProgramRow[]
  /** What is left over layers and hollows under all its cuts but flattening; null: none lies under them. */
  readonly cover: CoverView | null
  /** Where its programs leave or take too much; null: nowhere. */
  readonly off: { readonly body: string; readonly leftMm: number; readonly cutAwayMm: number } | null
  /** Findings with a place in this setting. */
  readonly marks: readonly FoundMark[]
}

/** A finding as it is marked on the drawing of its setting. */
export interface FoundMark {
  /** Which of {@link CutsView.findings}. */
  readonly finding: number
  /** The first of its programs; lines are of that one. */
  readonly file: string
  /** Where it is worst; null: no line is to blame. */
  readonly line: number | null
  readonly lines: readonly (readonly [from: number, to: number])[]
  /** On the drawing, mm from its upper left; null: it happens nowhere in particular. */
  readonly at: readonly [x: number, y: number] | null
}

/** A cut by hand as a row of the table. */
export interface HandRow {
  readonly at: string
  readonly id: string
  readonly face: 'front' | 'back'
  readonly way: string
  readonly tool: string | null
  /** Why the way that is written cannot make it. */
  readonly cannot: string | null
  readonly depthMm: number
  readonly offsetMm: number | null
  readonly leastRadiusMm: number | null
  readonly passes: { readonly count: number; readonly eachMm: number } | null
  readonly minutes: number | null
  readonly makingMinutes: number
  readonly does: readonly string[]
  readonly ways: readonly {
    readonly way: string
    readonly possible: boolean
    readonly why: string
    readonly minutes: number | null
  }[]
}

/** All that the Cuts screen shows. */
export interface CutsView {
  /** Whether the shop has a machine. */
  readonly machine: boolean
  readonly settings: readonly SettingView[]
  /** Places from the zero of the programs, front up. */
  readonly pins: readonly {
    readonly number: number
    readonly diameterMm: number
    readonly x: number
    readonly y: number
    readonly holeMm: number
    readonly slotMm: number
    readonly depthMm: number | null
    readonly bedMm: number
    readonly pin: string | null
  }[]
  /** How near the machine repeats, and how far the faces may be off each other, mm. */
  readonly errorMm: number
  readonly toleranceMm: number
  /** Minutes; null where nothing runs. */
  readonly totals: {
    readonly cutting: number
    readonly test: number
    readonly air: number
    readonly changes: number
    readonly changing: number
  } | null
  readonly findings: readonly {
    readonly id: string
    readonly severity: Severity
    readonly at: string
    readonly says: string
    readonly basis: string
  }[]
  /** Ids of the stops that keep programs from being written. */
  readonly stops: readonly string[]
  /** Name and text of every program; empty while a stop stands. */
  readonly files: readonly (readonly [name: string, text: string])[]
  readonly hand: readonly HandRow[]
}
