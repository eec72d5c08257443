import type { Patch } from '../../../engine/src/piece/patch.ts'

/** Figures of one order, in words. */
export interface OrderFiguresView {
  readonly ready: string
  readonly handsOn: string
  readonly visits: number
  readonly stops: number
  readonly cautions: number
}

/** Other orders of the steps, held against the one that stands. */
export interface OrdersView {
  readonly given: OrderFiguresView
  readonly ways: readonly (OrderFiguresView & {
    readonly does: string
    readonly gains: string
    readonly better: boolean
    readonly gives: readonly string[]
    readonly worse: readonly string[]
    readonly rid: readonly string[]
    readonly patch: Patch
  })[]
  readonly refused: readonly { readonly does: string; readonly why: string; readonly basis: string }[]
  readonly looked: number
  readonly whole: boolean
  readonly rule: string
}
