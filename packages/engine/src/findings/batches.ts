import type { WantedBatches } from '../cast/batches.ts'
import { batchesAs, requestOf } from '../cast/batches.ts'
import type { Work } from './work.ts'

/** Batches a pour is mixed in: the maker's number, else one when the minutes given are of one, else the plan's split. */
export function batchCount(work: Work, index: number): number {
  const batches = work.batches[index]
  if (!batches) return 1
  if (chosenBatches(work, index) !== null) return batches.wanted!.count
  return batches.split.possible ? batches.split.count : 1
}

/** The batches the maker chose; null where number and minutes are left to the plan's split. */
export function chosenBatches(work: Work, index: number): WantedBatches | null {
  const { batches, minutes } = work.piece.pours[index]!
  const wanted = work.batches[index]?.wanted ?? null
  if (wanted === null) return null
  return batches !== undefined || (minutes !== undefined && wanted.fits) ? wanted : null
}

/** How the pour would stand in that many batches; `minutes` of the maker's, reckoned when undefined. */
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
