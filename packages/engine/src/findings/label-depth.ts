import { decimals, formatVolume } from '../quantity/format.ts'
import { DEPTH_ROUNDING, poursNeeded } from '../resin/pours.ts'
import type { Check, Found } from './finding.ts'
import { setDepth, splitPour } from './pour-depth.ts'
import type { Work } from './work.ts'

/** A pour deeper than the label of its resin allows in one go. */
export const labelDepth: Check = {
  id: 'label-depth',
  about: 'a pour deeper than the greatest depth on the label of its resin',
  cases: ['C01', 'C13', 'C24'],
  run: work => work.entries.pours.flatMap(({ index }) => one(work, index))
}

function one(work: Work, i: number): Found[] {
  const { id, at, value } = work.entries.pours[i]!
  const { label } = work.materials.resins[i]!
  const limit = label?.greatestDepth
  const pour = work.stack.pours[i]!
  // What stands after cure is compared, as the maker types it: the label knows its depth no better than that.
  if (
    label === null ||
    limit === undefined ||
    value.kind === 'seal' ||
    pour.depth <= limit * (1 + DEPTH_ROUNDING)
  )
    return []
  const pours = poursNeeded(pour.depth, limit)
  const each = (pour.filledMl - pour.stonesMl) / pours
  return [
    {
      severity: 'stop',
      at,
      says: `${id} is ${decimals(pour.depth, 1)} mm deep; the label of ${label.name ?? label.id} allows ${decimals(limit, 1)} mm in one pour. Deeper it may smoke and crack: ${pours} pours of ${decimals(pour.depth / pours, 2)} mm (${volumeWords(each)} each) would do, each as soon as the one below is tacky and no longer hot.`,
      value: pour.depth,
      unit: 'mm',
      limit,
      basis: `greatest depth of one pour: the label of the resin; a depth within ${decimals(DEPTH_ROUNDING * 100, 1)} % of it counts as the same`,
      ...(splitPour(work, i, limit) ?? setDepth(work, i, limit))
    }
  ]
}

// Litres to two places from a quarter of a litre on, as a jug is marked.
function volumeWords(ml: number): string {
  return ml >= 250 && ml < 10_000 ? `${decimals(ml / 1000, 2)} l` : formatVolume(ml)
}
