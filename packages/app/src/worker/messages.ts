import type { Problem } from '../../../engine/src/piece/problem.ts'
import type { ShownUnits } from '../../../engine/src/quantity/shown-units.ts'
import type { Rescue, RescueAsk } from '../../../engine/src/rescue/rescues.ts'
import type { RoundModel } from '../../../engine/src/round/round-model.ts'
import type { PageView } from '../../../engine/src/sheets/page-data.ts'
import type { PlacedPicture } from '../../../engine/src/sheets/picture-mark.ts'
import type { BenchView } from './bench-view.ts'
import type { BuyView } from './buy-view.ts'
import type { ToolAnswer, ToolChange } from './changes.ts'
import type { CutsView } from './cuts-view.ts'
import type { DayMove, DaysView } from './days-view.ts'
import type { Json } from './document.ts'
import type { FieldTable } from './field-table.ts'
import type { OrdersView } from './orders-view.ts'
import type { CardAnswer, CupAnswer, DrawingPart, SentView, Thumb, WhatIfView } from './views.ts'

/** What asks about a piece as it stands: all that bears on it. */
type PieceAsk = Pick<PlanAsk, 'document' | 'shop' | 'files' | 'readings' | 'asOf'>

/** What the worker is asked. Every ask carries a number; the answer carries it back. */
export type Ask =
  | ({ readonly kind: 'plan'; readonly seq: number } & PlanAsk)
  | ({ readonly kind: 'thumb'; readonly seq: number } & Pick<PlanAsk, 'document' | 'shop' | 'files' | 'asOf'>)
  | ({ readonly kind: 'round'; readonly seq: number } & PieceAsk)
  /** Colours where heights vary over the plan: a picture to lay on the drawing of a face. */
  | ({ readonly kind: 'picture'; readonly seq: number } & Pick<
      PlanAsk,
      'document' | 'shop' | 'files' | 'face' | 'readings'
    >)
  | ({ readonly kind: 'what-if'; readonly seq: number } & WhatIfAsk)
  /** The programs of the piece, made and proved; the way by hand beside them. */
  | ({ readonly kind: 'cuts'; readonly seq: number } & Pick<
      PlanAsk,
      'document' | 'shop' | 'files' | 'readings' | 'width'
    > & { readonly stops: readonly string[] })
  /** The steps as the bench shows them. */
  | ({ readonly kind: 'bench'; readonly seq: number } & PieceAsk)
  /** Ways on after something went differently. */
  | ({ readonly kind: 'rescue'; readonly seq: number; readonly ask: Omit<RescueAsk, 'asOf'> } & PieceAsk)
  /** The days, with tasks put where the maker wants them, in the order they were put. */
  | ({ readonly kind: 'days'; readonly seq: number } & PieceAsk & { readonly moves: readonly DayMove[] })
  /** Other orders of the steps. */
  | ({ readonly kind: 'orders'; readonly seq: number } & PieceAsk)
  /** What is bought, and what it costs. */
  | ({ readonly kind: 'buy'; readonly seq: number } & PieceAsk)
  | ({ readonly kind: 'cup'; readonly seq: number } & CupAsk)
  | ({ readonly kind: 'card'; readonly seq: number } & CardAsk)
  | { readonly kind: 'fields'; readonly seq: number }
  /** Nothing is waited for any more: a cast on its way is given up. */
  | { readonly kind: 'stop'; readonly seq: number }
  | {
      readonly kind: 'tool'
      readonly seq: number
      readonly document: Json
      readonly files: Readonly<Record<string, string>>
      readonly change: ToolChange
    }
  | { readonly kind: 'drawing'; readonly seq: number; readonly name: string; readonly text: string }

/** Asks of which a newer one takes the place of an older: nobody waits for that one any more. */
const OVERTAKEN = [
  'plan',
  'what-if',
  'cup',
  'card',
  'picture',
  'cuts',
  'bench',
  'rescue',
  'days',
  'orders',
  'buy'
] as const
export type Overtaken = (typeof OVERTAKEN)[number]

export function isOvertaken(kind: Ask['kind']): kind is Overtaken {
  return OVERTAKEN.some(k => k === kind)
}

export interface PlanAsk {
  readonly document: Json
  /** What was measured, one record each; left out: nothing. */
  readonly readings?: readonly Json[]
  readonly shop: Json | null
  readonly files: Readonly<Record<string, string>>
  readonly asOf: string
  readonly effort: 'preview' | 'full'
  /** The drawing the screen has room for, and the face it shows. */
  readonly width: PageView['id']
  readonly face: PageView['face']
  /** What drawings and figures without a unit of their own are written in. */
  readonly shown: ShownUnits
}

/** What a pour would do otherwise: the piece stays as it is. */
export interface WhatIfAsk extends Pick<PlanAsk, 'document' | 'shop' | 'files' | 'shown' | 'readings'> {
  /** Index of the pour. */
  readonly pour: number
  /** As cast; null: as it stands. */
  readonly depthMm: number | null
  /** How much warmer the room is. */
  readonly roomK: number
}

/** A cup of resin that was watched: as it was typed, or one that the shop keeps. */
export interface CupAsk {
  readonly shop: Json | null
  /** `like`: the class of a resin that is not in the shop yet. */
  readonly resin: { readonly id: string; readonly like: string | null }
  readonly text: string
  readonly given: {
    readonly unit?: '°C' | '°F' | undefined
    readonly mixed?: string | undefined
    readonly day?: string | undefined
    readonly mass?: number | string | undefined
    readonly diameter?: number | string | undefined
    readonly room?: number | string | undefined
    readonly start?: number | string | undefined
    readonly strings?: number | string | undefined
    readonly gelled?: number | string | undefined
  }
  /** A test as the shop has it, in the place of text and figures. */
  readonly kept: Json | null
  readonly widthMm: number
  readonly shown: ShownUnits
}

/** A hiding card of one pigment: as it was typed, or one that the shop keeps, by its index. */
export interface CardAsk {
  readonly shop: Json | null
  readonly kept: number | null
  readonly typed: {
    readonly pigment: string
    readonly percent?: number | undefined
    readonly resin: string
    /** Depths of the steps that still shows and that hides; where colours were read, null and the steps as typed. */
    readonly shows?: number | string | undefined
    readonly hides?: number | string | undefined
    readonly steps: string | null
  } | null
}

export type Answer =
  /** What was tried. Below a share of 1 a better answer follows. */
  | { readonly kind: 'what-if'; readonly seq: number; readonly view: WhatIfView; readonly share: number }
  /** A plan. `share`: how much of the cast of the whole mould lies behind; below 1 more answers follow. */
  | { readonly kind: 'planned'; readonly seq: number; readonly view: SentView; readonly share: number }
  /** How far the cast is that a full plan goes on with. At 1 nothing follows. */
  | { readonly kind: 'casting'; readonly seq: number; readonly share: number }
  /** Cuts, once they are proved; until then how far they are. */
  | { readonly kind: 'cuts'; readonly seq: number; readonly view: CutsView | null; readonly share: number }
  | { readonly kind: 'refused'; readonly seq: number; readonly problems: readonly Problem[] }
  | { readonly kind: 'failed'; readonly seq: number; readonly says: string }
  | { readonly kind: 'cup'; readonly seq: number; readonly cup: CupAnswer }
  | { readonly kind: 'card'; readonly seq: number; readonly card: CardAnswer }
  | { readonly kind: 'bench'; readonly seq: number; readonly view: BenchView }
  | { readonly kind: 'buy'; readonly seq: number; readonly view: BuyView }
  | { readonly kind: 'rescue'; readonly seq: number; readonly rescues: readonly Rescue[] }
  | { readonly kind: 'days'; readonly seq: number; readonly view: DaysView }
  /** Orders, once they are found; until then how far the search is. */
  | {
      readonly kind: 'orders'
      readonly seq: number
      readonly view: OrdersView | null
      readonly share: number
    }
  | { readonly kind: 'thumb'; readonly seq: number; readonly thumb: Thumb }
  | { readonly kind: 'picture'; readonly seq: number; readonly picture: PlacedPicture | null }
  | { readonly kind: 'round'; readonly seq: number; readonly model: RoundModel }
  | { readonly kind: 'fields'; readonly seq: number; readonly fields: FieldTable }
  | { readonly kind: 'tool'; readonly seq: number; readonly done: ToolAnswer }
  | { readonly kind: 'drawing'; readonly seq: number; readonly parts: readonly DrawingPart[] }
