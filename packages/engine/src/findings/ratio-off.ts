import { decimals, formatC } from '../quantity/format.ts'
import { gelConversion } from '../resin/gel.ts'
import { offRatioLoss } from '../resin/off-ratio.ts'
import type { Check, Found } from './finding.ts'
import { CAUTION_ERROR, massRatioWords, measureByMass, measuredOf, STOP_ERROR } from './ratio.ts'
import type { Work } from './work.ts'

/** A pour measured in another ratio than its label's. */
export const ratioOff: Check = {
  id: 'ratio-off',
  about: 'a pour measured off the ratio of its resin',
  cases: ['C14', 'C19'],
  run: work => work.entries.pours.flatMap(({ index }) => one(work, index))
}

function one(work: Work, i: number): Found[] {
  const measured = measuredOf(work, i)
  if (measured === null || measured.volumesWeighed) return []
  const { error } = measured
  if (Math.abs(error) <= CAUTION_ERROR) return []
  const { id, at } = work.entries.pours[i]!
  const stop = Math.abs(error) > STOP_ERROR
  return [
    {
      severity: stop ? 'stop' : 'caution',
      at: `${at}/measured`,
      says: `${id} is measured with ${decimals(Math.abs(error) * 100, 0)} % too ${error > 0 ? 'much' : 'little'} hardener; its ratio is ${massRatioWords(work, i)}. ${stop ? 'So far off it stays soft throughout' : 'It may come out softer'}${loss(work, i, error)}: more hardener never makes up for cold.`,
      value: error * 100,
      unit: '%',
      limit: Math.sign(error) * (stop ? STOP_ERROR : CAUTION_ERROR) * 100,
      basis:
        'ratio of the label, else of the generic class (derived); off ratio by 5 % harmless, 10 % noticeable, 20 % soft: common practice (memory); loss: limiting group, DiBenedetto and Fox, fully cured',
      settledBy: 'the ratio on the label of the resin at hand',
      ...measureByMass(work, i)
    }
  ]
}

// What the error costs in glass transition, where the resin is predicted and the error not beyond the form.
function loss(work: Work, i: number, error: number): string {
  const { record, mix } = work.materials.resins[i]!
  if (record.model === null) return ''
  if (gelConversion(DIAMINE, DIEPOXIDE, Math.min(100, Math.max(0.01, 1 + error))) === null)
    return '; it does not even gel'
  if (error < -MOST_ERROR || error > 1) return ''
  const { tgC, lossK } = offRatioLoss(record.model.kinetics, error, mix)
  return `; fully cured it softens from about ${formatC(tgC)}, ${decimals(lossK, 0)} K lower than at its ratio`
}

/** Groups of a diamine and of a diglycidyl ether, the usual two. */
const DIAMINE = 4
const DIEPOXIDE = 2
const MOST_ERROR = 0.6
