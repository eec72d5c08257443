import { nearestGrade } from '../coat/grain.ts'
import { gradesBetween } from '../coat/ladder.ts'
import type { Patch } from '../piece/patch.ts'
import type { Found } from './finding.ts'
import { setValue, typedAt } from './fix.ts'
import type { Work } from './work.ts'

type Finish = Work['faces'][number]

/** Where the finish of a face stands in the document, and what a maker calls it. */
export interface FinishPlace {
  /** "/finish/both". */
  readonly at: string
  /** "the front", "both faces". */
  readonly where: string
}

/** Asks of each face; what stands under both faces is said once, of the front. */
export function onFaces(work: Work, ask: (finish: Finish, place: FinishPlace) => readonly Found[]): Found[] {
  const [front, back] = work.faces
  const { finish } = work.piece
  const shared = finish.front === undefined && finish.back === undefined
  const place = (face: 'front' | 'back', alone: boolean): FinishPlace => ({
    at: `/finish/${finish[face] === undefined ? 'both' : face}`,
    where: shared && !alone ? 'both faces' : `the ${face}`
  })
  const there = (f: Finish) => finish[f.face] !== undefined || finish.both !== undefined
  const first = there(front) ? ask(front, place('front', false)) : []
  if (!there(back) || (shared && first.length > 0)) return [...first]
  return [...first, ...ask(back, place('back', true))]
}

/** The patch that ends the sanding of a face at a grade: the last grit, or the list of grits cut short or carried on. */
export function endAtGrit(work: Work, { at }: FinishPlace, grit: number): Patch {
  const typed = typedAt(work.document, `${at}/grits`)
  if (!Array.isArray(typed)) return setValue(work.document, `${at}/grit`, grit)
  const kept = (typed as number[]).filter(g => g < grit)
  const last = kept[kept.length - 1]
  const between = last === undefined ? [] : gradesBetween(nearestGrade(last), nearestGrade(grit))
  return setValue(work.document, `${at}/grits`, [...kept, ...between.map(g => g.grit), grit])
}
