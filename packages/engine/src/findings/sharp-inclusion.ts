import { MACHINE_DAYS } from '../cast/windows.ts'
import type { StoneRecord } from '../catalogue/stone.ts'
import { decimals, formatC, formatMinutes } from '../quantity/format.ts'
import { BREAK_STRAIN, cornerFactor } from '../resin/crack.ts'
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

/** Thin or sharp inclusions in a casting that leaves its mould early, or that shrinks on them from a hot core. */
export const sharpInclusion: Check = {
  id: 'sharp-inclusion',
  about: 'thin, sharp inclusions in a casting that leaves its mould early or cools from a hot core',
  cases: ['C06', 'C10'],
  run: work => [...early(work), ...hot(work)]
}

/** Radius of an edge that is called sharp, mm (judgement, as for corners). */
const EDGE_MM = 1

/**
 * Strain at the edge of an inclusion past all of the band at which cast resin breaks: an inclusion of half its
 * size as the notch of Inglis, no more than half the depth of the pour.
 */
function hot(work: Work): Found[] {
  return work.entries.pours.flatMap(({ index, id, at, value }): Found[] => {
    const free = freeStrain(work, index)
    const cast = work.casts[index]
    if (free === null || !cast || value.kind !== 'cast') return []
    return value.stones.flatMap((stones, j): Found[] => {
      const record = work.materials.stones[index]![j]!
      if (!SHARP(record)) return []
      const size =
        stones.placed === undefined
          ? Math.sqrt(record.sizeMm[0] * record.sizeMm[1])
          : Math.max(...stones.placed.map(p => Math.max(...p.size)))
      const notch = Math.min(size, work.stack.pours[index]!.liquidDepth) / 2
      const strain = free * cornerFactor(notch, EDGE_MM)
      const [low, high] = BREAK_STRAIN
      if (strain <= high) return []
      return [
        {
          severity: 'caution',
          at: `${at}/stones/${j}`,
          says: `cracks round the ${record.name} in ${id} are likely: it comes to ${cast.runaway ? 'a runaway' : formatC(cast.peakC)} and cools from a hot core; the reckoned strain at a thin edge is up to ${decimals(strain * 100, 0)} %, cast resin breaks at ${decimals(low * 100, 0)} to ${decimals(high * 100, 0)}. Pour thinner and cooler. It says nothing of strength.`,
          value: strain * 100,
          unit: '%',
          limit: high * 100,
          basis:
            'shrinkage after gel and core over face on cooling, times Inglis for an edge of 1 mm, elastic: warm resin creeps, so it is the most; break 3-6 % (memory)',
          settledBy: 'one of them in a small casting as deep as the pour'
        }
      ]
    })
  })
}

function early(work: Work): Found[] {
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
