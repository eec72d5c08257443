import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** Stones that do not go under the pour they lie in, whichever way they lie. */
export const stonesLarge: Check = {
  id: 'stones-large',
  about: 'stones thicker than the pour they go into is deep',
  cases: [],
  run: work =>
    work.entries.pours.flatMap(p =>
      p.value.stones.flatMap((_, entry) => (tooLarge(work, p.index, entry) ? one(work, p.index, entry) : []))
    )
}

/**
 * Whether even the small ones of a zone's kind are thicker than the pour is deep. Flat kinds lie down: a third of their
 * size is taken as their thickness (judgement). Placed stones have their own sizes, and heights that are checked.
 */
export function tooLarge(work: Work, pour: number, entry: number): boolean {
  const { value } = work.entries.pours[pour]!
  if (value.kind !== 'cast' || value.stones[entry]!.placed !== undefined) return false
  return thicknessMm(work, pour, entry) > work.stack.pours[pour]!.depth
}

const FLAT_SHARE = 1 / 3

function thicknessMm(work: Work, pour: number, entry: number): number {
  const { kind, sizeMm } = work.materials.stones[pour]![entry]!
  return sizeMm[0] * (kind === 'flat' || kind === 'flake' ? FLAT_SHARE : 1)
}

function one(work: Work, pour: number, entry: number): Found[] {
  const { id, at } = work.entries.pours[pour]!
  const { name, sizeMm } = work.materials.stones[pour]![entry]!
  const { depth } = work.stack.pours[pour]!
  return [
    {
      severity: 'caution',
      at: `${at}/stones/${entry}/kind`,
      says: `${name} (${decimals(sizeMm[0], 1)} to ${decimals(sizeMm[1], 1)} mm) do not go under ${id}, ${decimals(depth, 1)} mm deep: they stand out of it. Take a smaller kind or a deeper pour; picked ones are given by their own size ("placed").`,
      value: thicknessMm(work, pour, entry),
      unit: 'mm',
      limit: depth,
      basis: 'usual size of the kind: catalogue; flat kinds lie down at a third of their size: judgement',
      settledBy: 'a gauge over the largest of those at hand'
    }
  ]
}
