import type { Finding } from '../findings/finding.ts'
import type { Operation, Patch } from '../piece/patch.ts'
import type { PlanInput } from '../work.ts'
import { everyOrder, nearOrders, Precedence } from './arrange.ts'
import type { Block } from './block.ts'
import { blocksOf } from './block.ts'
import { givenUp } from './law.ts'
import type { OrderFigures, OrderPlan } from './order-plan.ts'
import { planOrder } from './order-plan.ts'
import { comparedSaid, joinedFills, movesSaid } from './order-words.ts'
import type { RefusedOrder } from './refused.ts'
import { refusedMoves } from './refused.ts'
import { written } from './written.ts'

/** Another order of the steps, planned anew and held against the given one. */
export interface OrderWay {
  /** What is done otherwise. */
  readonly does: string
  /** What that gains or costs. */
  readonly gains: string
  /** Better than the given order by {@link ORDER_RULE}. */
  readonly better: boolean
  readonly figures: OrderFigures
  /** What it gives up that the given order keeps. */
  readonly gives: readonly string[]
  /** Stops and cautions that the given order does not have, and those it is rid of. */
  readonly worse: readonly Pick<Finding, 'id' | 'severity' | 'says'>[]
  readonly rid: readonly Pick<Finding, 'id' | 'severity' | 'says'>[]
  readonly patch: Patch
}

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

/** How orders are ranked, in words. */
export const ORDER_RULE =
  'the fewest stops, the fewest cautions, the least given up, the fewest days (to half a day), the least money, the least work; what gains under ten minutes and under 1 % of the cost is not worth a change'

/** Orders planned anew at the most, and orders counted through before only the near ones are looked at. */
const MOST_PLANNED = 36
const MOST_COUNTED = 2000
/** Ways whose figures are told: the best ones. */
const MOST_TOLD = 5
const HALF_DAY_MS = 43_200_000
const WORTH_MIN = 10
const WORTH_SHARE = 0.01

/**
 * Looks for an order of the steps that costs less or risks less than the given one. What may stand elsewhere is put in
 * every lawful order, or, where those are too many, in the orders one move away, and from the best of them again; each
 * is the piece with its order written out, planned anew by the same machinery. What is impossible or spoils the piece is
 * refused, with the reason.
 *
 * The same input gives the same answer: what is looked at is counted, never timed.
 *
 * Check: every permutation of small pieces by a slow twin (test); figures of the patched piece's own plan (test).
 * Limits: steps of the mould keep their order; orders are compared by the quick calendar, those told at the effort that
 * is asked for; orders that turn the piece over twice more than the given one are left out.
 *
 * @throws InputProblem when the piece cannot be used
 */
export function ordersOf(
  input: PlanInput,
  options: { readonly asOf: string; readonly effort?: 'quick' | 'full' }
): Orders {
  const { asOf } = options
  const quick = { asOf, effort: 'quick' as const }
  const base = planOrder(input, [], quick) as OrderPlan
  const taken = blocksOf(base.work)
  const { blocks } = taken
  const laws = new Precedence(blocks)
  const orderOf = (indexes: readonly number[]) => indexes.map(i => blocks[i]!)
  const own = blocks.map(b => b.index)
  const turnsNow = base.work.steps.filter(s => s.kind === 'turn over').length
  const inOneGo = (a: Block, b: Block) => b.index === a.index + 1 && a.waits.length === 0
  const upNow = givenUp(blocks)
  const seen = new Map<string, Weighed | null>()
  const refused: RefusedOrder[] = refusedMoves(blocks)
  const same = JSON.stringify(written(taken, blocks).steps) === JSON.stringify(stepsNow(base))

  const weigh = (indexes: readonly number[]): Weighed | null => {
    const order = orderOf(indexes)
    const { steps } = written(taken, order)
    const patch = [
      {
        op: input.piece.document.steps === undefined ? 'add' : 'replace',
        path: '/steps',
        value: steps
      } as Operation
    ]
    const plan = planOrder(input, patch, quick)
    if (typeof plan === 'string') return null
    const joined = joinedFills(order, inOneGo)
    const more = plan.findings.find(
      f => f.severity === 'stop' && !base.findings.some(b => b.id === f.id && b.severity === 'stop')
    )
    if (more !== undefined && plan.figures.stops > base.figures.stops) {
      if (!refused.some(r => r.basis === more.basis))
        refused.push({ does: movesSaid(order, joined), why: more.says, basis: more.basis })
      return null
    }
    return {
      indexes,
      patch,
      plan,
      does: movesSaid(order, joined),
      gives: givenUp(order).filter(g => !upNow.includes(g)),
      fewer: upNow.filter(g => !givenUp(order).includes(g)).length
    }
  }
  const look = (candidates: readonly (readonly number[])[]) => {
    const ranked = candidates
      .map(indexes => ({ indexes, of: written(taken, orderOf(indexes)) }))
      .filter(c => !seen.has(c.indexes.join(' ')))
      .map(c => ({ ...c, key: [c.of.turns + c.of.waits, distance(c.indexes)] }))
      .sort((a, b) => compared(a.key, b.key))
    for (const { indexes } of ranked) {
      if (seen.size >= MOST_PLANNED) return false
      seen.set(indexes.join(' '), weigh(indexes))
    }
    return true
  }
  const weighed = () => [...seen.values()].filter(w => w !== null)
  const rank = (list: readonly Weighed[]) =>
    [...list].sort((a, b) => compared(keyOf(a, base), keyOf(b, base)))

  const differs = (indexes: readonly number[]) => !same || indexes.some((x, i) => x !== own[i])
  const fewTurns = (indexes: readonly number[]) => written(taken, orderOf(indexes)).turns <= turnsNow + 1
  const every = everyOrder(laws, MOST_COUNTED)?.filter(o => differs(o) && fewTurns(o)) ?? null
  const whole = every !== null && every.length <= MOST_PLANNED
  if (whole) look(every)
  else {
    const faces = blocks.map(b => b.face)
    if (!same) look([own])
    let from: readonly number[] = own
    for (let more = true; more; ) {
      more = look(nearOrders(laws, from, faces).filter(o => differs(o) && fewTurns(o)))
      const best = rank(weighed())[0]
      const next = best !== undefined && isBetter(best, base) ? best.indexes : own
      if (next.join(' ') === from.join(' ')) more = false
      from = next
    }
  }
  const told = rank(weighed()).slice(0, MOST_TOLD)
  const full = options.effort === 'full'
  const again = full ? (planOrder(input, [], { asOf, effort: 'full' }) as OrderPlan) : base
  const ways = rank(
    full
      ? told.flatMap((w): Weighed[] => {
          const plan = planOrder(input, w.patch, { asOf, effort: 'full' })
          return typeof plan === 'string' ? [] : [{ ...w, plan }]
        })
      : told
  )
  const { currency } = input.shop
  return {
    asOf,
    currency,
    given: again.figures,
    ways: ways.map(w => toldOf(w, again, currency)),
    refused,
    looked: seen.size,
    whole
  }
}

interface Weighed {
  readonly indexes: readonly number[]
  readonly patch: Patch
  readonly plan: OrderPlan
  readonly does: string
  readonly gives: readonly string[]
  /** Things the given order gives up and this one keeps. */
  readonly fewer: number
}

function toldOf(w: Weighed, given: OrderPlan, currency: string): OrderWay {
  const { figures, findings } = w.plan
  const short = ({ id, severity, says }: Finding) => ({ id, severity, says })
  const other = (list: readonly Finding[], not: readonly Finding[]) =>
    list
      .filter(f => f.severity !== 'note' && !not.some(g => g.id === f.id && g.severity === f.severity))
      .map(short)
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

/** What the plan's own steps are, as the document writes them. */
function stepsNow(base: OrderPlan) {
  return written({ head: base.work.steps, blocks: [], tail: [], up: null }, []).steps
}

function keyOf(w: Weighed, base: OrderPlan): number[] {
  const { figures: f } = w.plan
  return [
    f.stops,
    f.cautions,
    w.gives.length - w.fewer,
    f.readyMs === null ? Number.MAX_SAFE_INTEGER : halfDays(f.readyMs, base),
    f.coins,
    f.handsMin,
    distance(w.indexes)
  ]
}

function halfDays(readyMs: number, base: OrderPlan): number {
  return Math.round((readyMs - (base.figures.readyMs ?? 0)) / HALF_DAY_MS)
}

/** Better than the given order: by more than a trifle. */
function isBetter(w: Weighed, given: OrderPlan): boolean {
  const a = w.plan.figures
  const b = given.figures
  if (a.readyMs !== null && b.readyMs === null) return a.stops <= b.stops
  const ahead = compared(keyOf(w, given).slice(0, 4), [
    b.stops,
    b.cautions,
    0,
    b.readyMs === null ? Number.MAX_SAFE_INTEGER : 0
  ])
  if (ahead !== 0) return ahead < 0
  if (a.coins > b.coins) return false
  return b.handsMin - a.handsMin >= WORTH_MIN || b.coins - a.coins > WORTH_SHARE * b.coins
}

function compared(a: readonly number[], b: readonly number[]): number {
  const k = a.findIndex((x, i) => Math.abs(x - b[i]!) > 1e-9)
  return k < 0 ? 0 : a[k]! - b[k]!
}

/** How far an order is from the given one: pairs that stand the other way round. */
function distance(order: readonly number[]): number {
  let out = 0
  for (let i = 0; i < order.length; i++)
    for (let k = i + 1; k < order.length; k++) if (order[i]! > order[k]!) out++
  return out
}
