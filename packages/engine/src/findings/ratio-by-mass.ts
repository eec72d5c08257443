import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { CAUTION_ERROR, massRatioWords, measureByMass, measuredOf, STOP_ERROR } from './ratio.ts'
import type { Work } from './work.ts'

/** A label's ratio by volume that is weighed as if it were by mass. */
export const ratioByMass: Check = {
  id: 'ratio-by-mass',
  about: 'a ratio by volume measured on a scale',
  cases: ['C19'],
  run: work => work.entries.pours.flatMap(({ index }) => one(work, index))
}

function one(work: Work, i: number): Found[] {
  const measured = measuredOf(work, i)
  if (!measured?.volumesWeighed || Math.abs(measured.error) <= CAUTION_ERROR) return []
  const { id, at } = work.entries.pours[i]!
  const { label } = work.materials.resins[i]!
  const { a, b } = label!.ratio!
  const { error } = measured
  const stop = Math.abs(error) > STOP_ERROR
  return [
    {
      severity: stop ? 'stop' : 'caution',
      at: `${at}/measured`,
      says: `${decimals(a, 2)} : ${decimals(b, 2)} on the label of ${label!.name ?? label!.id} is by volume, ${massRatioWords(work, i)}. Weighed as it stands, ${id} gets ${decimals(Math.abs(error) * 100, 0)} % too ${error > 0 ? 'much' : 'little'} hardener and stays soft throughout.`,
      value: error * 100,
      unit: '%',
      limit: Math.sign(error) * (stop ? STOP_ERROR : CAUTION_ERROR) * 100,
      basis:
        'ratio of the label through the densities of both parts (of the label, else generic, memory); off ratio by 5 % harmless, 10 % noticeable, 20 % soft: common practice (memory)',
      settledBy: 'the weight of 100 ml of each part',
      ...measureByMass(work, i)
    }
  ]
}
