import { leastWeighedG } from '../cast/batches.ts'
import { decimals, formatMass } from '../quantity/format.ts'
import { MOST_RATIO_ERROR } from '../resin/batch.ts'
import { ratioErrorFromScale } from '../resin/stoichiometry.ts'
import { inBatches, standsWell } from './batches.ts'
import type { Check, Found } from './finding.ts'
import { rounded, setQuantity, setValue } from './fix.ts'
import type { Work } from './work.ts'

/** Off ratio by more than this is a stop: beyond "noticeable" in the bands of practice. */
const STOP_ERROR = 0.1

/** A batch so small that the scale cannot weigh its ratio. */
export const leastBatch: Check = {
  id: 'least-batch',
  about: 'a batch too small for the steps of the scale',
  cases: ['O17'],
  run: work => work.entries.pours.flatMap(({ index }) => one(work, index))
}

function one(work: Work, i: number): Found[] {
  // What is mixed for several blanks together is weighed together.
  const { batches, blanks } = work.rounds[i]!
  const { id, at } = work.entries.pours[i]!
  const { record, mix } = work.materials.resins[i]!
  // A catalyst is counted in drops, not weighed as a part; other families are not judged.
  if (!batches || (record.family !== 'epoxy' && record.family !== 'polyurethane')) return []
  const count = batches.mixed?.count ?? 1
  const batchG = batches.mixedG / count
  const tinted = work.materials.tints[i]!.reduce((sum, t) => sum + t.share, 0)
  const parts = batchG * (1 - tinted)
  const smaller = (parts * Math.min(mix.massA, mix.massB)) / (mix.massA + mix.massB)
  const resolution = work.shop.scale.resolution
  const error = ratioErrorFromScale(smaller, resolution)
  // A hair of slack: the least batch itself is at the limit.
  if (error <= MOST_RATIO_ERROR * (1 + 1e-6)) return []
  const stop = error > STOP_ERROR && record.family === 'epoxy'
  return [
    {
      severity: stop ? 'stop' : 'caution',
      at,
      says: `a batch of ${id} is ${formatMass(batchG)}: its smaller part, ${formatMass(smaller)}, is weighed to ± ${decimals(resolution / 2, 3)} g on a scale of ${decimals(resolution, 3)} g steps. That is ${decimals(error * 100, 0)} % off ratio at worst, and it would stay ${error > 0.2 ? 'tacky' : 'softer'}.`,
      value: error * 100,
      unit: '%',
      limit: (stop ? STOP_ERROR : MOST_RATIO_ERROR) * 100,
      basis:
        'half a step of the scale over the smaller part; off ratio by 5 % harmless, 10 % noticeable, 20 % soft: common practice (memory)',
      settledBy: 'a finer scale',
      ...(blanks === 1 ? more(work, i, count) : {})
    }
  ]
}

// Fewer batches where that makes each large enough and they still stand; else more mix.
function more(work: Work, i: number, count: number): Pick<Found, 'fix' | 'fixSays'> {
  const { at, value } = work.entries.pours[i]!
  const choice = work.materials.resins[i]!
  const tints = work.materials.tints[i]!
  const least = leastWeighedG(choice, tints, work.shop)
  const mixedG = work.batches[i]!.mixedG
  const fewer = Math.floor(mixedG / least + 1e-9)
  if (
    value.batches !== undefined &&
    fewer >= 1 &&
    standsWell(work, i, inBatches(work, i, fewer, value.minutes))
  )
    return {
      fix: setValue(work.document, `${at}/batches`, fewer),
      fixSays: `${fewer} ${fewer === 1 ? 'batch' : 'batches'} of ${formatMass(mixedG / fewer)}`
    }
  const mixed = rounded(least * count, 'up', 0.1)
  return {
    fix: setQuantity(work.document, `${at}/mixed`, 'mass', least * count, 'up'),
    fixSays: `Mix ${formatMass(mixed)}`
  }
}
