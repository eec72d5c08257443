import { GRADES, nearestGrade } from '../coat/grain.ts'
import type { Check, Found } from './finding.ts'
import type { FinishPlace } from './finish-place.ts'
import { onFaces } from './finish-place.ts'
import { setValue, typedAt } from './fix.ts'
import type { Work } from './work.ts'

/** A grit that no paper has: it is reckoned as the grade next to it. */
export const gritNoGrade: Check = {
  id: 'grit-no-grade',
  about: 'a grit that is no grade of paper',
  cases: [],
  run: work => onFaces(work, (_, place) => one(work, place))
}

const isGrade = (grit: number) => GRADES.some(g => g.grit === grit)

function one(work: Work, { at, where }: FinishPlace): Found[] {
  const list = typedAt(work.document, `${at}/grits`)
  const grits = Array.isArray(list) ? (list as number[]) : [typedAt(work.document, `${at}/grit`)]
  const wrong = grits.find((g): g is number => typeof g === 'number' && !isGrade(g))
  if (wrong === undefined) return []
  const near = nearestGrade(wrong)
  const path = Array.isArray(list) ? `${at}/grits` : `${at}/grit`
  const mended = [...new Set((grits as number[]).map(g => nearestGrade(g).grit))]
  return [
    {
      severity: 'note',
      at: path,
      says: `${where}: there is no paper P${wrong}. It is reckoned as P${near.grit}, grain ${near.grainUm} µm. Numbers without a P are another scale: finer than P of the same number above 220.`,
      value: wrong,
      unit: null,
      basis: 'grades of FEPA and ISO 6344 (read); nothing is interpolated between them',
      settledBy: 'the letter and number on the back of the paper',
      fix: setValue(work.document, path, Array.isArray(list) ? mended : near.grit),
      fixSays: `P${near.grit} for ${wrong}`
    }
  ]
}
