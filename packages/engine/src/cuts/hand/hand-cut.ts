import type { Face, Piece } from '../../piece/piece-schema.ts'
import type { SharpCorner } from '../../shape/narrow.ts'
import type { Region } from '../../shape/region.ts'
import type { Passes } from './pass-depth.ts'
import type { Round } from './plan-form.ts'
import type { SledPlan } from './sled.ts'

/** How a cut may be made. */
export type Way = Piece['cuts'][number]['way']

/** What is cut, as numbers: a region or lines of one face, so deep. */
export interface HandJob {
  readonly region: Region | null
  readonly lines: readonly Float64Array[] | null
  /** Width of a groove at the face; of a region 0. */
  readonly widthMm: number
  readonly profile: 'flat' | 'v' | 'round'
  readonly angleDeg: number
  /** Thickness of the piece right through. */
  readonly depthMm: number
  readonly through: boolean
  readonly kind: Piece['cuts'][number]['kind'] | 'marking'
  readonly outline: Region
  /** Whether timber that tears easily is cut. */
  readonly tears: boolean
  /** Numerals stand beside the lines. */
  readonly figures: number
  readonly tolMm: number
}

/** How a way makes a cut. */
export interface Doing {
  readonly tool: string
  /** Template and bush: half of bush less bit; 0 with a bearing; null without a template. */
  readonly offsetMm: number | null
  readonly bushMm: number | null
  readonly bitMm: number | null
  /** Least inside radius the bit leaves, and the corner of the opening that the bush fills. */
  readonly leastRadiusMm: number | null
  readonly openingCornerMm: number | null
  /** Corners of the drawing that stay uncut. */
  readonly corners: readonly SharpCorner[]
  /** How far the tip must come below the foot of the router, and how far it does. */
  readonly reach: { readonly needMm: number; readonly hasMm: number } | null
  readonly passes: Passes | null
  readonly holes: readonly Round[]
  /** How far the point of the drill goes deeper than its full size, mm. */
  readonly tipMm: number
  readonly sled: SledPlan | null
  readonly minutes: number
  /** What to do, in order, as a maker says it. */
  readonly does: readonly string[]
}

/** One way of making a cut: how, or why not. */
export interface WayChoice {
  readonly way: Way
  readonly possible: boolean
  /** Tool when possible, else the reason: "no: closed pocket". */
  readonly why: string
  /** Attended minutes at the bench; null where no bench of ours does it. */
  readonly minutes: number | null
}

/** A cut made by hand, or sent out, at one step. */
export interface HandCut {
  /** Index of the step. */
  readonly step: number
  readonly of: 'cut' | 'marking' | 'flatten' | 'trim' | 'edge'
  /** Index of the cut or marking; else 0. */
  readonly index: number
  readonly id: string
  readonly at: string
  readonly face: Face
  readonly way: Way
  readonly depthMm: number
  /** null where the way cannot make it, and of what is sent out. */
  readonly doing: Doing | null
  /** Why the way that is written cannot make it; null when it can. */
  readonly cannot: string | null
  readonly ways: readonly WayChoice[]
  /** Minutes of making the template, once. */
  readonly makingMinutes: number
}
