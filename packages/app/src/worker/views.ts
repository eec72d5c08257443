import type { PeakMap } from '../../../engine/src/cast/whole/whole-cast.ts'
import type { Severity } from '../../../engine/src/findings/finding.ts'
import type { Patch } from '../../../engine/src/piece/patch.ts'
import type { Totals, Verdict } from '../../../engine/src/plan.ts'
import type { CoreModel } from '../../../engine/src/sheets/core-model.ts'
import type { PageView } from '../../../engine/src/sheets/page-data.ts'
import type { RoundHole, SectionPart } from '../../../engine/src/sheets/section.ts'
import type { SectionPath } from '../../../engine/src/sheets/section-cut.ts'
import type { Json } from './document.ts'

export interface WhatIfView {
  /** What it goes by: the column; an estimate from how the column moves; a cast of the whole mould. */
  readonly by: 'column' | 'estimate' | 'whole'
  readonly peak: LayerView['peak']
  /** When it comes, in words. */
  readonly peakAfter: string
  /** Windows that are others than in the plan. */
  readonly moved: readonly {
    readonly label: string
    readonly was: string
    readonly says: string
    readonly band: string
  }[]
  /** Markup of the engine: the curve, that of the plan dashed beside it. */
  readonly curve: string
}

export interface CupAnswer {
  /** As the shop would keep it: raw readings, figures as typed. */
  readonly document: Json
  /** How the readings were taken, where they could be taken otherwise. */
  readonly notes: readonly string[]
  /** Whether it can be kept: what cannot be believed is said in `says` and not stored. */
  readonly believed: boolean
  readonly says: readonly string[]
  /** What the label says that goes against itself or the cup. */
  readonly label: readonly string[]
  readonly drawn: Drawn
  readonly words: string
  /** Time, read, fitted, off. */
  readonly rows: readonly (readonly [string, string, string, string])[]
  /** What, value, nine of ten within, the class's. */
  readonly learned: readonly (readonly [string, string, string, string])[]
}

/** A hiding card, read. */
export interface CardAnswer {
  /** As the shop would keep it. */
  readonly document: Json
  readonly pigment: string
  /** Whether later plans go by it. */
  readonly counts: boolean
  readonly says: readonly string[]
}

/** A drawing as the body of an SVG element; made by the engine, every word of it escaped. mm. */
export interface Drawn {
  readonly widthMm: number
  readonly heightMm: number
  readonly body: string
}

/** The face shown, at the width there is room for, and how the piece lies on it. */
export interface Plane {
  readonly drawn: Drawn
  readonly view: PageView
  readonly bar: Drawn
}

/** A finding with its place in the walk through all of them. */
export interface FindingView {
  readonly number: number
  readonly id: string
  readonly severity: Severity
  readonly at: string
  /** What the entry is called. */
  readonly where: string
  readonly says: string
  /** Value, limit, between: each a word and a figure with its unit. */
  readonly figures: readonly (readonly [word: string, figure: string, unit: string])[]
  readonly basis: string
  readonly settledBy: string | null
  readonly fix: Patch | null
  readonly fixSays: string | null
}

/** How near a pour is to its limit. Depths as cast, mm. */
export interface EdgeView {
  readonly limitC: number
  /** Whether the top of the band is past the limit as planned. */
  readonly over: boolean
  /** Greatest depth at which the top of the band stays within the limit; 0: none does; null: none is beyond it. */
  readonly depthMm: number | null
  /** How much warmer the room may be, K; negative: cooler; null: not within what was looked at. */
  readonly roomK: number | null
  readonly perMm: number
  readonly perK: number
}

export interface LayerView {
  /** Index among the pours of the document. */
  readonly index: number
  readonly name: string
  readonly kind: string
  readonly resin: string
  readonly castMm: number
  /** Height as cast of its upper face; null for what is not cast in the mould. */
  readonly levelMm: number | null
  readonly finishedMm: number | null
  readonly liquidMl: number
  readonly mixedG: number | null
  readonly peak:
    | { readonly kind: 'none' }
    | { readonly kind: 'runaway' }
    | { readonly kind: 'at'; readonly c: number; readonly lowC: number; readonly highC: number | null }
  /** Markup of the engine: batch table, curve, spans of time. */
  readonly batches: string
  readonly curve: string
  readonly windows: string
  /** null: until the whole mould was cast. */
  readonly edge: EdgeView | null
  /** Mean of the room over a day, °C. */
  readonly roomC: number
  /** Colour it is drawn in, as a wash or "#rrggbb". */
  readonly paint: string
}

export interface StepView {
  readonly number: number
  readonly kind: string
  readonly says: string
  readonly facts: readonly string[]
  /** JSON Pointer of the entry it does; "" for none. */
  readonly at: string
  readonly day: string
  readonly safety: readonly { readonly line: string; readonly defersTo: readonly string[] }[]
}

export interface EntryName {
  readonly at: string
  readonly name: string
  readonly words: string
}

/** The highest temperatures of the whole mould. */
export interface HeatView {
  readonly map: PeakMap
  /** The hottest place of each pour: on the plan and as cast, mm. */
  readonly hottest: readonly {
    readonly name: string
    readonly at: readonly [x: number, y: number, z: number]
    readonly c: number
  }[]
}

/** A planned view on its way between threads: the model as JSON, without what it can work out again. */
export type SentView = Omit<PlannedView, 'model'> & { readonly model: string }

/** All that the screens show of a plan. */
export interface PlannedView {
  readonly effort: 'preview' | 'full'
  /** What heat and cure go by: the column alone, or a cast of the whole mould on its coarse or its full grid. */
  readonly cast: 'column' | 'preview' | 'full'
  readonly name: string
  readonly verdict: Verdict
  readonly says: string
  readonly totals: Totals
  readonly readyDay: number
  readonly priced: boolean
  readonly findings: readonly FindingView[]
  readonly layers: readonly LayerView[]
  readonly art: Drawn
  readonly steps: readonly StepView[]
  readonly entries: readonly EntryName[]
  readonly model: CoreModel
  readonly pointer: readonly [number, number]
  readonly plane: Plane
  readonly key: string
  readonly section: {
    readonly path: SectionPath
    readonly parts: readonly SectionPart[]
    readonly rounds: readonly RoundHole[]
  }
  /** null until the whole mould was cast. */
  readonly heat: HeatView | null
  /** Where cuts lie on the plan, but the one that makes the outline. */
  readonly cuts: readonly CutPlan[]
  /** Where hardware sits on the plan, mm; turn in degrees. */
  readonly parts: readonly {
    readonly at: string
    readonly x: number
    readonly y: number
    readonly widthMm: number
    readonly lengthMm: number
    readonly round: boolean
    readonly turnDeg: number
  }[]
}

/** A cut on the plan: its entry, and its outlines (x0, y0, x1, y1, ...), mm. */
export interface CutPlan {
  readonly at: string
  readonly rings: readonly Float64Array[]
}

export interface Thumb {
  readonly drawn: Drawn
  readonly verdict: Verdict
  readonly says: string
  readonly sizeMm: readonly [number, number, number]
}

export interface DrawingPart {
  readonly id: string
  /** Where it stands on the drawing, mm from its upper left corner. */
  readonly fromLeftMm: number
  readonly fromTopMm: number
  readonly widthMm: number
  readonly heightMm: number
  readonly path: string
}
