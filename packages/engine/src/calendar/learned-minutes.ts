import type { TaskKind } from './task.ts'

/** One piece of work that was timed: what was reckoned for it, without corrections, and what it took. Minutes. */
export interface TimedWork {
  readonly kind: TaskKind
  readonly reckonedMin: number
  readonly tookMin: number
}

/** How much longer than reckoned a kind of work takes here. */
export interface LearnedFactor {
  readonly factor: number
  readonly records: number
}

/** Records that weigh as much as what was reckoned: with two of them the shop is half believed (practice). */
const PRIOR_RECORDS = 2
/** A clock forgotten overnight teaches nothing: ratios are taken within these (practice). */
const LEAST = 0.2
const MOST = 5

/**
 * Factors on minutes, by kind of work, from recorded times.
 *
 *   r_i    = took / reckoned, kept within 0.2 to 5
 *   factor = exp(median(ln r_i) · n/(n + 2))
 *
 *   n   records of the kind      2   weight of what was reckoned, in records
 *
 * The median: one forgotten clock moves nothing. In logarithms: twice as long and half as long cancel.
 * Source: shrinkage of a mean towards its prior (textbook), taken to the median (derived here); the weight is practice.
 * Check: n equal ratios r give r^(n/(n+2)); none give 1; one of fifty among five at 1 leaves 1.
 * Limits: a kind is one factor, however the pieces differ.
 */
export function learnedFactors(timed: readonly TimedWork[]): Map<TaskKind, LearnedFactor> {
  const logs = new Map<TaskKind, number[]>()
  for (const { kind, reckonedMin, tookMin } of timed) {
    if (!(reckonedMin > 0) || !(tookMin > 0)) continue
    const log = Math.log(Math.min(MOST, Math.max(LEAST, tookMin / reckonedMin)))
    logs.set(kind, [...(logs.get(kind) ?? []), log])
  }
  return new Map(
    [...logs].map(([kind, list]) => {
      const n = list.length
      return [kind, { factor: Math.exp((median(list) * n) / (n + PRIOR_RECORDS)), records: n }]
    })
  )
}

function median(list: readonly number[]): number {
  const sorted = [...list].sort((a, b) => a - b)
  const half = sorted.length >> 1
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2
}
