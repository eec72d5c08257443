import { MACHINE_DAYS } from '../cast/windows.ts'
import type { StoneRecord } from '../catalogue/stone.ts'
import { decimals, formatMinutes } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { intervalMin, lengthen, orderIsGiven } from './interval.ts'
import { freeStrain } from './strain.ts'
import type { Work } from './work.ts'

const DAY = 24 * 60

/** Sharp or thin: flat pieces, flakes, broken glass, and plants with thin scales. By form; judgement, no source. */
const SHARP: (record: StoneRecord) => boolean = record =>
  record.kind === 'flat' ||
  record.kind === 'flake' ||
  ['crushed-glass', 'pine-cones', 'seed-pods'].includes(record.id)

/** Thin or sharp inclusions in a casting that leaves its mould early. */
export const sharpInclusion: Check = {
  id: 'sharp-inclusion',
  about: 'thin, sharp inclusions in a casting that is taken out of its mould early',
  cases: ['C10'],
  run
}

function run(work: Work): Found[] {
  const demould = work.steps.findIndex(s => s.kind === 'demould')
  if (!orderIsGiven(work) || demould < 0) return []
  return work.entries.pours.flatMap(({ index, id, at, value }): Found[] => {
    const sharp = work.materials.stones[index]!.findIndex(SHARP)
    const from = work.steps.findIndex(s => s.kind === 'pour' && s.pour!.index === index)
    if (sharp < 0 || value.kind !== 'cast' || from < 0 || from > demould) return []
    // A resin that is not predicted is given a day: by then a casting is cold (practice).
    const window = work.casts[index]?.windows.demould.open
    const limit = Math.min(window ?? DAY, MACHINE_DAYS * DAY)
    const after = intervalMin(work, from, demould)
    if (after >= limit) return []
    const { name } = work.materials.stones[index]![sharp]!
    const strain = freeStrain(work, index)
    return [
      {
        severity: 'caution',
        at: `${at}/stones/${sharp}`,
        says: `${name} in ${id} are thin and sharp, and it leaves the mould after ${formatMinutes(after)}: cracks beside them are more likely${strain === null ? '' : ` (the resin shrinks on them by ${decimals(strain * 100, 1)} %, and a thin edge sees a multiple of that; it breaks at 3 to 6 %)`}. What starts them is not certain, the same has been cast without; leave it in the mould (under pressure, if it was) until cold, ${formatMinutes(limit)} or more.`,
        value: after,
        unit: 'min',
        limit,
        basis:
          window === undefined
            ? 'reports of makers that do not agree on the cause; a day until cold: common practice, no source'
            : 'reports of makers that do not agree on the cause; time until its glass transition passes the room: cure model of a generic class',
        ...lengthen(work, from, demould, limit)
      }
    ]
  })
}
