import type { z } from 'zod'
import { decimals } from '../quantity/format.ts'
import { toFixedUnit } from '../quantity/unit.ts'

/** Fewest readings of a cup test: a level, a slope and one to check them. */
export const LEAST_CUP_READINGS = 3
/** What resin in a cup can show, °C: colder it does not cure, hotter it burns. */
export const COLDEST_C = -10
export const HOTTEST_C = 350
/** A course that moves less than this tells nothing, K: the last digit of a household thermometer twice. */
export const LEAST_COURSE_K = 0.2

interface Held {
  readonly unit: string
  readonly readings: readonly (readonly [number, number])[]
  readonly strings?: number | undefined
  readonly gelled?: number | undefined
}

/** What a schema cannot say of a cup test: times rise, temperatures are such of resin and move, strings before gel. */
export function cupTestHolds(test: Held, ctx: z.core.$RefinementCtx<unknown>): void {
  const { readings, unit, strings, gelled } = test
  const issue = (path: (string | number)[], allowed: string, example: string): void => {
    ctx.addIssue({ code: 'custom', message: 'a cup test', path, params: { meaning: true, allowed, example } })
  }
  let least = Number.POSITIVE_INFINITY
  let most = Number.NEGATIVE_INFINITY
  for (let i = 0; i < readings.length; i++) {
    const [min, typed] = readings[i]!
    const before = readings[i - 1]
    const tempC = toFixedUnit(typed, unit)
    if (before && !(min > before[0])) {
      issue(['readings', i, 0], `minutes that rise: over ${before[0]}`, String(before[0] + 1))
      return
    }
    if (!(tempC >= COLDEST_C && tempC <= HOTTEST_C)) {
      issue(
        ['readings', i, 1],
        `${COLDEST_C} to ${HOTTEST_C} °C; the unit says ${unit}`,
        unit === '°F' ? '72' : unit === 'K' ? '295' : '22'
      )
      return
    }
    least = Math.min(least, tempC)
    most = Math.max(most, tempC)
  }
  if (most - least < LEAST_COURSE_K)
    issue(['readings'], 'temperatures that move: resin that cures warms', '[[0, 22], [30, 26], [60, 48]]')
  if (strings !== undefined && gelled !== undefined && !(gelled > strings))
    issue(
      ['gelled'],
      `later than strings at ${decimals(strings, 1)} min`,
      decimals(Math.ceil(strings) + 1, 0)
    )
}
