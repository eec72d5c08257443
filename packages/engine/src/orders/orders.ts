import type { Finding } from '../findings/finding.ts'
import type { Patch } from '../piece/patch.ts'
import type { PlanInput } from '../work.ts'
import type { OrderFigures, OrderPlan } from './order-plan.ts'
import { planOrder } from './order-plan.ts'
import type { Weighed } from './order-rank.ts'
import { distinctOrders, isBetter, rankedOrders } from './order-rank.ts'
import { OrderSearch } from './order-search.ts'
import { comparedSaid } from './order-words.ts'
import type { RefusedOrder } from './refused.ts'

/** Another order of the steps, planned anew and held against the given one. */
export interface OrderWay {
  /** What is done otherwise. */
  readonly does: string
  /** What that gains or costs. */
  readonly gains: string
  /** Better than the given order by `ORDER_RULE`. */
  readonly better: boolean
  readonly figures: OrderFigures
  /** What it gives up that the given order keeps. */
  readonly gives: readonly string[]
  /** Stops and cautions that the given order does not have, and those it is rid of. */
  readonly worse: readonly OrderFinding[]
  readonly rid: readonly OrderFinding[]
  readonly patch: Patch
}

type OrderFinding = Pick<Finding, 'id' | 'severity' | 'says'>

/** The given order, and what else is possible. */
export interface Orders {
  readonly asOf: string
  readonly currency: string
  readonly given: OrderFigures
  /** From the best to the last; those that are better than the given order come first. */
  readonly ways: readonly OrderWay[]
  readonly refused: readonly RefusedOrder[]
  /** Orders planned anew; whether those were all there are. */
  readonly looked: number
  readonly whole: boolean
}

/** How orders are asked for. */
export interface OrderOptions {
  /** The only source of "now": ISO 8601 with offset. */
  readonly asOf: string
  /** full: the orders that are told are planned with the full calendar. */
  readonly effort?: 'quick' | 'full'
}

/** Ways whose figures are told: the best ones. */
const MOST_TOLD = 5

/**
 * Looks for an order of the steps that costs less or risks less than the given one. What may stand elsewhere is put in
 * every lawful order, or, where those are too many, in the orders one move away, and from the best of them again; each
 * is the piece with its order written out, planned anew by the same machinery. What is impossible or spoils the piece is
 * refused, with the reason.
 *
 * The same input gives the same answer: what is looked at is counted, never timed.
 *
 * Check: every permutation of small pieces by a slow twin (test); figures of the patched piece's own plan (test).
 * Limits: steps of the mould keep their order, and so does what is begun or has a moment of its own; orders are compared
 * by the quick calendar, those told at the effort that is asked for; orders that turn the piece over twice more than the
 * given one are left out.
 *
 * @throws InputProblem when the piece cannot be used
 */
export function ordersOf(input: PlanInput, options: OrderOptions): Orders {
  const search = orderSteps(input, options)
  for (;;) {
    const { done, value } = search.next()
    if (done) return value
  }
}

/** The same, one plan at a time; each step gives the share that is done. */
export function* orderSteps(input: PlanInput, options: OrderOptions): Generator<number, Orders> {
  const { asOf, effort = 'quick' } = options
  const plan = (patch: Patch, how: 'quick' | 'full') => planOrder(input, patch, { asOf, effort: how })
  const base = plan([], 'quick') as OrderPlan
  const search = new OrderSearch(base, patch => plan(patch, 'quick'))
  const full = effort === 'full'
  while (search.step()) yield (full ? 0.7 : 1) * Math.min(1, search.looked / Math.max(1, search.most))
  let told = distinctOrders(search.weighed, base).slice(0, MOST_TOLD)
  let given = base
  if (full) {
    given = plan([], 'full') as OrderPlan
    const again: Weighed[] = []
    for (const [i, w] of told.entries()) {
      yield 0.7 + (0.3 * i) / told.length
      const anew = plan(w.patch, 'full')
      if (typeof anew !== 'string') again.push({ ...w, plan: anew })
    }
    told = rankedOrders(again, given)
  }
  const { currency } = input.shop
  const better = told.filter(w => isBetter(w, given))
  return {
    asOf,
    currency,
    given: given.figures,
    ways: [...better, ...told.filter(w => !better.includes(w))].map(w => toldOf(w, given, currency)),
    refused: search.refused,
    looked: search.looked,
    whole: search.whole
  }
}

function toldOf(w: Weighed, given: OrderPlan, currency: string): OrderWay {
  const { figures, findings } = w.plan
  const other = (list: readonly Finding[], not: readonly Finding[]): OrderFinding[] =>
    list
      .filter(f => f.severity !== 'note' && !not.some(g => g.id === f.id && g.severity === f.severity))
      .map(({ id, severity, says }) => ({ id, severity, says }))
  return {
    does: w.does,
    gains: comparedSaid(figures, given.figures, currency),
    better: isBetter(w, given),
    figures,
    gives: w.gives,
    worse: other(findings, given.findings),
    rid: other(given.findings, findings),
    patch: w.patch
  }
}
