import type { AbrasiveRecord } from '../catalogue/abrasive.ts'
import { ABRASIVES } from '../catalogue/abrasive.ts'

/**
 * Grain of the FEPA P grades: which there are, how large, which one a number without a letter is like.
 *
 *   grain   average diameter   µm      (the standard's median by sieve, from P240 on by sedimentation)
 *   step    grain of one grade over that of the next finer   1
 *
 * Source: FEPA, ISO 6344-2 and -3 through the catalogue (read).
 * Check: all 28 rows; P80 over P120 is 1.61; an unlettered 320 (36 µm) is like P400.
 *
 * Limits: there is nothing between two grades: a number that is no grade is refused, not interpolated.
 */

/** A grade of paper: an abrasive with a number. */
export type Grade = AbrasiveRecord & { readonly grit: number }

const isPaper = (row: AbrasiveRecord): row is Grade => row.grit !== null

/** The grades, coarse to fine. */
export const GRADES: readonly Grade[] = ABRASIVES.filter(isPaper).sort((a, b) => a.grit - b.grit)

/** Pastes, coarse to fine. */
export const PASTES: readonly AbrasiveRecord[] = ABRASIVES.filter(a => a.kind === 'paste').sort(
  (a, b) => b.grainUm - a.grainUm
)

/**
 * The grade of a P number.
 * @throws RangeError when there is none, with the two that stand on either side
 */
export function gradeOf(grit: number): Grade {
  const found = GRADES.find(g => g.grit === grit)
  if (found !== undefined) return found
  const below = GRADES.findLast(g => g.grit < grit)
  const above = GRADES.find(g => g.grit > grit)
  const near = [below, above].flatMap(g => (g === undefined ? [] : [`P${g.grit}`])).join(' and ')
  throw new RangeError(`P${grit} is no grade of FEPA; next to it are ${near}`)
}

/** The grade nearest to a number, by ratio: what a maker who wrote it most likely holds in hand. */
export function nearestGrade(grit: number): Grade {
  const off = (g: Grade) => Math.abs(Math.log(g.grit / grit))
  return GRADES.reduce((best, g) => (off(g) < off(best) ? g : best))
}

/** How many times larger the grain of one grade is than that of another. */
export function stepRatio(coarse: Grade, fine: Grade): number {
  return coarse.grainUm / fine.grainUm
}

/** Grades that lie between two: those a step leaves out. */
export function skippedBetween(coarse: Grade, fine: Grade): readonly Grade[] {
  return GRADES.filter(g => g.grit > coarse.grit && g.grit < fine.grit)
}

/** The P grade that an American number without a letter is like, by its grain; null where there is no such number. */
export function likeUnlettered(number: number): Grade | null {
  const um = GRADES.find(g => g.grit === number)?.unletteredUm ?? null
  if (um === null) return null
  const off = (g: Grade) => Math.abs(Math.log(g.grainUm / um))
  return GRADES.reduce((best, g) => (off(g) < off(best) ? g : best))
}
