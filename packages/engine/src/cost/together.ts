import type { Shop } from '../piece/shop-schema.ts'
import type { BuyLine } from './buy-line.ts'
import type { Charged } from './cost-line.ts'
import { lineOf } from './line-of.ts'
import type { Need } from './need.ts'
import { amountOf, amountWords, roundedUp } from './need.ts'
import { deliveryCost } from './orders.ts'

/** What one of several pieces needs. */
export interface PieceNeeds {
  /** Its name, told apart from the others. */
  readonly name: string
  readonly needs: readonly Need[]
  /** Its buy list by itself. */
  readonly buy: readonly BuyLine[]
}

/** What several pieces buy together. */
export interface Together {
  readonly buy: readonly BuyLine[]
  /** Of each piece: its lines at what the packs bought together cost, and its share of each delivery. */
  readonly shares: readonly { readonly buy: readonly BuyLine[]; readonly delivery: readonly Charged[] }[]
}

/** What is cut to size for a piece is no other's. */
const OWN: ReadonlySet<Need['group']> = new Set(['timber', 'hardware'])

const keyOf = (n: Pick<Need, 'group' | 'item' | 'unit'>) => `${n.group}\n${n.item}\n${n.unit}`

/**
 * One buy list of several pieces: what they need of the same thing is taken from the shelf and bought in packs
 * together. What a pack costs falls on each by what it uses; a delivery by what each uses of what that supplier brings.
 *
 *   line of a piece = its use × what one unit costs where all is bought      Σ shares of a delivery = 1
 *
 * Check: one piece by itself gives its own list; packs for the sum are never dearer than the packs of each (tests).
 * Limits: prices and shelf are those of one shop.
 */
export function together(pieces: readonly PieceNeeds[], shop: Shop): Together {
  const { merged, users } = allNeeds(pieces)
  const buy = [...merged].map(([key, need]) => {
    const line = lineOf(need, shop)
    const by = users.get(key)!
    return by.length < 2
      ? line
      : { ...line, note: [by.join(', '), line.note].filter(s => s !== '').join('; ') }
  })
  // What is cut to size keeps the rate it has by itself.
  const rates = new Map(buy.map(l => [keyOf(l), l.rate]))
  const own = pieces.map(p =>
    p.buy.map(l => (OWN.has(l.group) ? l : { ...l, rate: rates.get(keyOf(l)) ?? null }))
  )
  const orders = deliveryCost(buy, shop)
  return {
    buy,
    shares: own.map(lines => ({
      buy: lines,
      delivery: orders.map((order): Charged => {
        const used = (of: readonly BuyLine[]) =>
          of.reduce((sum, l) => sum + (l.from === order.from ? l.need * (l.rate ?? 0) : 0), 0)
        const all = own.reduce((sum, of) => sum + used(of), 0)
        return {
          ...order,
          amount: all > 0 ? used(lines) / all : 1 / pieces.length,
          basis: `${order.basis}; by what each piece uses of it`
        }
      })
    }))
  }
}

/** Names of pieces, those that are alike numbered by their place. */
export function toldApart(names: readonly string[]): string[] {
  return names.map((n, i) => (names.indexOf(n) === names.lastIndexOf(n) ? n : `${n} ${i + 1}`))
}

/**
 * What each of several pieces is bought when those before it take from the shelf first: of the same thing more is to be
 * bought as soon as the shelf does not hold it for all up to this one. Lines of a piece are those of the pieces up to it.
 */
export function boughtInTurn(pieces: readonly PieceNeeds[], shop: Shop): (readonly BuyLine[])[] {
  return pieces.map((p, k) => {
    const { merged } = allNeeds(pieces.slice(0, k + 1), pieces.length > 1)
    return p.needs.map(n => lineOf(merged.get(keyIn(k, n))!, shop))
  })
}

// Needs of the same thing as one, by their keys; and who uses them, in words.
function allNeeds(pieces: readonly PieceNeeds[], several = pieces.length > 1) {
  const merged = new Map<string, Need>()
  const users = new Map<string, string[]>()
  pieces.forEach(({ name, needs }, k) => {
    for (const n of needs) {
      const key = keyIn(k, n)
      const had = merged.get(key)
      const own = several && OWN.has(n.group) ? { ...n, name: `${n.name} (${name})` } : n
      merged.set(key, had === undefined ? own : { ...had, uses: [...had.uses, ...n.uses], note: '' })
      users.set(key, [
        ...(users.get(key) ?? []),
        `${name} ${amountWords(roundedUp(amountOf(n), n.unit), n.unit)}`
      ])
    }
  })
  return { merged, users }
}

const keyIn = (piece: number, n: Need) => (OWN.has(n.group) ? `${piece}\n${keyOf(n)}` : keyOf(n))
