import type { OnStep } from './task-list.ts'
import type { TaskWork } from './task-work.ts'

/** The steps in the order of doing, by index, those of a fill of the mould as often as it is filled. */
export function inTurn({ steps, fills }: TaskWork): { readonly index: number; readonly fill: number }[] {
  const once = (from: number, to: number, fill = 0) =>
    Array.from({ length: Math.max(0, to - from) }, (_, k) => ({ index: from + k, fill }))
  if (fills === null) return once(0, steps.length)
  const { from, to, blanks } = fills
  return [
    ...once(0, from),
    ...blanks.flatMap((_, fill) => once(from, to + 1, fill)),
    ...once(to + 1, steps.length)
  ]
}

/** For how many blanks a step is done at a fill, and what part of the row that is. */
export function rowOf(
  { fills, quantity }: TaskWork,
  index: number,
  fill: number
): Pick<OnStep, 'blanks' | 'part' | 'fill'> {
  if (fills === null || index < fills.from || index > fills.to)
    return { blanks: quantity.blanks, part: '', fill: null }
  const count = fills.blanks.length
  const blanks = fills.blanks[fill]!
  return count === 1
    ? { blanks, part: '', fill: null }
    : { blanks, part: `fill ${fill + 1} of ${count}`, fill: fill + 1 }
}
