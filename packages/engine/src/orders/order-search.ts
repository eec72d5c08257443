import type { Operation, Patch } from '../piece/patch.ts'
import { everyOrder, nearOrders, Precedence } from './arrange.ts'
import type { Block, Blocks } from './block.ts'
import { blocksOf } from './block.ts'
import { givenUp } from './law.ts'
import type { OrderPlan } from './order-plan.ts'
import type { Weighed } from './order-rank.ts'
import { compared, distance, isAhead, rankedOrders } from './order-rank.ts'
import { joinedFills, movesSaid } from './order-words.ts'
import type { RefusedOrder } from './refused.ts'
import { refusedMoves } from './refused.ts'
import { written } from './written.ts'

/**
 * Orders planned anew at the most: one of the examples takes 0.2 s (measured, one core of a server of 2023), so that a
 * search ends within some ten seconds; there is no other basis. Orders counted through before only the near ones are
 * looked at: counting so many takes milliseconds, and most pieces have fewer (effort, no fact).
 */
const MOST_PLANNED = 36
const MOST_COUNTED = 2000

/** Looks through the orders of a piece; each step plans one of them anew. */
export class OrderSearch {
  /** Whether every lawful order is looked at. */
  readonly whole: boolean
  readonly #base: OrderPlan
  readonly #plan: (patch: Patch) => OrderPlan | string
  readonly #taken: Blocks
  readonly #laws: Precedence
  readonly #own: readonly number[]
  /** Whether the given order, written out by us, is the same. */
  readonly #same: boolean
  readonly #turns: number
  readonly #refused: RefusedOrder[]
  /** Findings that an order was refused for: each is told once, of the first order it spoils. */
  readonly #told = new Set<string>()
  readonly #seen = new Map<string, Weighed | null>()
  /** What is to be looked at next, and from which order the near ones are taken; null: from none. */
  #queue: (readonly number[])[]
  #from: readonly number[] | null

  constructor(base: OrderPlan, plan: (patch: Patch) => OrderPlan | string) {
    this.#base = base
    this.#plan = plan
    this.#taken = blocksOf(base.work)
    const { blocks } = this.#taken
    this.#laws = new Precedence(blocks)
    this.#own = blocks.map(b => b.index)
    this.#turns = base.work.steps.filter(s => s.kind === 'turn over').length
    this.#refused = refusedMoves(blocks)
    const now = written({ head: base.work.steps, blocks: [], tail: [], up: null }, [])
    this.#same = JSON.stringify(written(this.#taken, blocks).steps) === JSON.stringify(now.steps)
    const every = everyOrder(this.#laws, MOST_COUNTED)
    const all = every === null ? null : this.#sorted(every)
    this.whole = all !== null && all.length <= MOST_PLANNED
    this.#queue =
      all !== null && this.whole ? all : [...(this.#same ? [] : [this.#own]), ...this.#near(this.#own)]
    this.#from = this.whole ? null : this.#own
  }

  get looked(): number {
    return this.#seen.size
  }

  get most(): number {
    return this.whole ? this.looked + this.#queue.length : MOST_PLANNED
  }

  get refused(): readonly RefusedOrder[] {
    return this.#refused
  }

  get weighed(): Weighed[] {
    return [...this.#seen.values()].filter(w => w !== null)
  }

  /** Plans one order more; false: there is none left to look at. */
  step(): boolean {
    const next = this.#queue.shift()
    if (next !== undefined && this.looked < MOST_PLANNED) {
      if (!this.#seen.has(next.join(' '))) this.#seen.set(next.join(' '), this.#weigh(next))
      return true
    }
    if (this.#from === null || this.looked >= MOST_PLANNED) return false
    const [best] = rankedOrders(this.weighed, this.#base)
    const from = best !== undefined && isAhead(best, this.#base) ? best.indexes : this.#own
    const moved = from.join(' ') !== this.#from.join(' ')
    this.#from = moved ? from : null
    if (moved) this.#queue = this.#near(from)
    return moved
  }

  #near(from: readonly number[]): (readonly number[])[] {
    const faces = this.#taken.blocks.map(b => b.face)
    return this.#sorted(nearOrders(this.#laws, from, faces))
  }

  // Those with the fewest turnings and waits first, then the nearest; what turns it over twice more is left out.
  #sorted(orders: readonly (readonly number[])[]): (readonly number[])[] {
    return orders
      .filter(o => !this.#same || o.some((x, i) => x !== this.#own[i]))
      .map(indexes => ({ indexes, of: written(this.#taken, this.#blocks(indexes)) }))
      .filter(({ of }) => of.turns <= this.#turns + 1)
      .map(({ indexes, of }) => ({ indexes, key: [of.turns + of.waits, distance(indexes)] }))
      .sort((a, b) => compared(a.key, b.key))
      .map(({ indexes }) => indexes)
  }

  #blocks(indexes: readonly number[]): Block[] {
    return indexes.map(i => this.#taken.blocks[i]!)
  }

  #weigh(indexes: readonly number[]): Weighed | null {
    const order = this.#blocks(indexes)
    const { steps } = written(this.#taken, order)
    const op = this.#base.work.document.steps === undefined ? 'add' : 'replace'
    const patch: Patch = [{ op, path: '/steps', value: steps } as Operation]
    const plan = this.#plan(patch)
    const inOneGo = (a: Block, b: Block) => b.index === a.index + 1 && a.waits.length === 0
    const does = movesSaid(order, joinedFills(order, inOneGo))
    if (typeof plan === 'string') return null
    const had = (id: string) => this.#base.findings.some(f => f.id === id && f.severity === 'stop')
    const spoils = plan.findings.find(f => f.severity === 'stop' && !had(f.id))
    if (spoils !== undefined && plan.figures.stops > this.#base.figures.stops) {
      const { id, says, basis } = spoils
      if (!this.#told.has(id)) {
        this.#told.add(id)
        this.#refused.push({ does, why: says.replace(/\.$/, ''), basis })
      }
      return null
    }
    const now = givenUp(this.#taken.blocks)
    const up = givenUp(order)
    const gives = up.filter(g => !now.includes(g))
    return { indexes, patch, plan, does, gives, keeps: now.filter(g => !up.includes(g)).length }
  }
}
