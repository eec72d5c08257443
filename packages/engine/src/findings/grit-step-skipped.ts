import type { Grade } from '../coat/grain.ts'
import { skippedBetween } from '../coat/grain.ts'
import { gradesBetween, LARGEST_STEP } from '../coat/ladder.ts'
import { showsScratches } from '../finish/gloss.ts'
import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import type { FinishPlace } from './finish-place.ts'
import { onFaces } from './finish-place.ts'
import { setValue } from './fix.ts'
import type { Work } from './work.ts'

/** A ladder of the maker's own with a step so large that the next grade does not take the last one's marks off. */
export const gritStepSkipped: Check = {
  id: 'grit-step-skipped',
  about: 'grits skipped in the maker’s own ladder',
  cases: ['C100'],
  run: work => onFaces(work, (finish, place) => one(work, finish, place))
}

/** Makers who go furthest take twice the number: between 1.7 and this it is a note. */
const FURTHEST_STEP = 2

function one(work: Work, { sanding, gloss }: Work['faces'][number], place: FinishPlace): Found[] {
  if (sanding === null || !sanding.given) return []
  const grades = sanding.ladder.steps.map(s => s.grade)
  // Neighbours of the standard leave nothing to put between.
  const wide = sanding.ladder.steps.flatMap((s, i) =>
    s.ratio !== null && s.ratio > LARGEST_STEP + 1e-9 && skippedBetween(grades[i - 1]!, s.grade).length > 0
      ? [{ from: grades[i - 1]!, to: s.grade, ratio: s.ratio, passes: s.passes }]
      : []
  )
  const worst = wide.reduce<(typeof wide)[number] | null>(
    (a, b) => (a === null || b.ratio > a.ratio ? b : a),
    null
  )
  if (worst === null) return []
  const { from, to, ratio, passes } = worst
  const left = skippedBetween(from, to)
  const shows = showsScratches(gloss) && sanding.shown.includes('resin')
  const full = filled(grades)
  return [
    {
      severity: shows && ratio > FURTHEST_STEP ? 'caution' : 'note',
      at: `${place.at}/grits`,
      says: `${place.where}: ${from.grit} to ${to.grit} skips ${left.length} grade${left.length === 1 ? '' : 's'}, the grain falls ${decimals(ratio, 1)} times at once. ${to.grit} clears the scratches of ${from.grit} only in ${passes} passes; with two they stay${shows ? ' and show in the resin under the gloss' : ''}. Put ${listWords(full.filter(g => !grades.includes(g)))} between.`,
      value: ratio,
      unit: null,
      limit: LARGEST_STEP,
      basis:
        'grains of FEPA and ISO 6344 (read); largest step 1.5 to 1.7 of grain: common practice, no source; some go to 2',
      settledBy: 'raking light over the face, wiped with spirit, before the next grit',
      fix: setValue(
        work.document,
        `${place.at}/grits`,
        full.map(g => g.grit)
      ),
      fixSays: `Sand ${full.map(g => g.grit).join('-')}`
    }
  ]
}

function filled(grades: readonly Grade[]): Grade[] {
  return grades.flatMap((g, i) => (i === 0 ? [g] : [...gradesBetween(grades[i - 1]!, g), g]))
}

function listWords(grades: readonly Grade[]): string {
  return grades.map(g => g.grit).join(', ')
}
