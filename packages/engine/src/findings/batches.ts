import type { WantedBatches } from '../cast/batches.ts'
import { batchesAs, requestOf } from '../cast/batches.ts'
import type { Work } from './work.ts'

/** Batches a pour is mixed in, of one blank; 1 where it cannot be split. */
export function batchCount(work: Work, index: number): number {
  return work.batches[index]?.mixed?.count ?? 1
}

/** Batches of a pour in all, of every blank. */
export function batchesInAll({ rounds, quantity }: Work, index: number): number {
  const { batches, blanks } = rounds[index]!
  return (batches?.mixed?.count ?? 1) * Math.ceil(quantity.blanks / blanks)
}

/** How the pour would stand in that many batches, of one blank; `minutes` of the maker's, reckoned when undefined. */
export function inBatches(
  work: Work,
  index: number,
  count: number,
  minutes: number | undefined
): WantedBatches {
  const { stack, materials, speeds, shop } = work
  const choice = materials.resins[index]!
  const request = requestOf(
    work.piece.pours[index]!,
    stack.pours[index]!,
    choice,
    materials.tints[index]!,
    speeds[index]!,
    shop
  )
  return batchesAs(request, choice, count, minutes)
}

/** Whether batches fit their vessel and are out of it before the early end of the class's band. */
export function standsWell(work: Work, index: number, b: WantedBatches): boolean {
  const { time } = work.materials.resins[index]!.record.band
  return b.fits && (b.allowedMin === null || b.standingMin <= b.allowedMin * (1 - time))
}
