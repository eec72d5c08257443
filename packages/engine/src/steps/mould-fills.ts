import type { Step } from './step.ts'

/** Steps that are gone through again each time the mould is filled, and how often that is. */
export interface MouldFills {
  /** First and last step of a fill, by index. */
  readonly from: number
  readonly to: number
  /** Blanks in the mould at each fill. */
  readonly blanks: readonly number[]
}

/** What lies before a fill even where the order names it after the first thing laid into the mould. */
const BEFORE = new Set<Step['kind']>(['make mould', 'prepare timber'])

/** How a row of blanks goes through the mould: so many side by side, until all are cast; null without a mould to take them out of. */
export function mouldFills(
  steps: readonly Step[],
  quantity: { readonly blanks: number; readonly gang: number }
): MouldFills | null {
  const to = steps.findIndex(s => s.kind === 'demould')
  const from = steps.findIndex(
    (s, i) => i < to && !BEFORE.has(s.kind) && (s.pour?.value.kind !== 'seal' || s.inMould)
  )
  if (to < 0 || from < 0) return null
  const gang = Math.max(1, Math.min(quantity.gang, quantity.blanks))
  const count = Math.ceil(quantity.blanks / gang)
  return {
    from,
    to,
    blanks: Array.from({ length: count }, (_, k) => Math.min(gang, quantity.blanks - k * gang))
  }
}

/** Blanks that a step is done for at once: those of a fill, else all. */
export function blanksAtOnce(fills: MouldFills | null, step: number, blanks: number): number {
  return fills !== null && step >= fills.from && step <= fills.to ? fills.blanks[0]! : blanks
}
