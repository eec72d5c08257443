import type { ResinChoice } from '../piece/resin-choice.ts'
import type { Shop, ShopResin } from '../piece/shop-schema.ts'
import { formatMass } from '../quantity/format.ts'
import type { BuyLine } from './buy-line.ts'
import { HAIR_G } from './common-mass.ts'
import type { ResinPack } from './kits.ts'
import { cheapestKits } from './kits.ts'
import type { Need } from './need.ts'
import { amountOf, roundedUp, withSpare } from './need.ts'
import type { Packs } from './paid.ts'
import { costOfPacks, rateOfPacks } from './paid.ts'
import type { PriceRow } from './price-row.ts'
import { pricedIn, unitPrice } from './price-row.ts'
import type { Lot, Taken, Use } from './shelf.ts'
import { lastDay, stillGood, takenFrom } from './shelf.ts'

// The packs of its label, and those of a price that the shop gives by its name: of both parts.
function soldIn(label: ShopResin | null, row: PriceRow | null): ResinPack[] {
  return [
    ...(label?.packs ?? []).map(p => ({ size: p.mass, part: p.part, price: p.price ?? null })),
    ...(row?.packs ?? []).map(p => ({ ...p, part: 'both' as const }))
  ]
}

/** What a gram of the mix costs: of the packs bought where they hold both parts, else of kits or bottles, the lesser. */
function rateOf(bought: readonly Packs[], sold: readonly ResinPack[], shareA: number): number | null {
  if (bought.length > 0 && bought.every(p => p.part === undefined)) return rateOfPacks(bought)
  const best = (part: ResinPack['part']) => unitPrice(sold.filter(p => p.part === part))
  const [kit, a, b] = [best('both'), best('A'), best('B')]
  const apart = a === null || b === null ? null : a * shareA + b * (1 - shareA)
  return kit === null ? apart : apart === null ? kit : Math.min(kit, apart)
}

/** What stands on the shelf of one part of a resin, both parts of a kit told apart. g. */
function lotsOf(label: ShopResin | null, part: 'A' | 'B', share: number): Lot[] {
  if (label === null) return []
  return [
    ...label.lots.flatMap(l =>
      l.part === part || l.part === 'both'
        ? [
            {
              lot: markOf(l.lot, l.part, part),
              amount: l.part === 'both' ? l.mass * share : l.mass,
              until: lastDay(l, label.keeps)
            }
          ]
        : []
    ),
    ...(label.stock > 0 ? [{ lot: null, amount: label.stock * share, until: null }] : [])
  ]
}

function markOf(lot: string | undefined, holds: 'both' | 'A' | 'B', part: 'A' | 'B'): string | null {
  return lot === undefined ? null : holds === 'both' ? lot : `${lot} (${part})`
}

/** One part of a resin on the shelf: its lots, its share of the mix 0..1, and what is taken of them, g. */
interface PartShelf {
  readonly lots: readonly Lot[]
  readonly share: number
  readonly own: readonly Use[]
  readonly taken: Taken
}

/** Both parts of a resin on the shelf, and what the uses with their spare take of each. */
export function resinShelf(need: Need, choice: ResinChoice, shop: Shop): { a: PartShelf; b: PartShelf } {
  const { massA, massB } = choice.mix
  const shareA = massA / (massA + massB)
  const { row } = pricedIn(shop, choice.id, 'g')
  const uses = withSpare(need)
  const of = (part: 'A' | 'B'): PartShelf => {
    const share = part === 'A' ? shareA : 1 - shareA
    const whole = (row?.lots ?? []).map(l => ({ ...l, amount: l.amount * share }))
    const lots = [...lotsOf(choice.label, part, share), ...whole]
    const own: Use[] = uses.map(u => ({ ...u, amount: u.amount * share }))
    return { lots, share, own, taken: takenFrom(lots, own) }
  }
  return { a: of('A'), b: of('B') }
}

/**
 * Resin: both parts together. Each part is taken from the shelf by its own lots and days, and what is missing of each is
 * bought in kits and bottles that hold both, so that nothing is left without its other half.
 */
export function resinLine(need: Need, choice: ResinChoice, shop: Shop): BuyLine {
  const { a, b } = resinShelf(need, choice, shop)
  const shareA = a.share
  const { label } = choice
  const { row, leftAside } = pricedIn(shop, choice.id, 'g')
  const sold = soldIn(label, row)
  const [shortA, shortB] = [a.taken.short, b.taken.short].map(x => (x > HAIR_G ? x : 0)) as [number, number]
  const { packs, lackA, lackB } = cheapestKits(shortA, shortB, shareA, sold)
  const total = amountOf(need)
  const known = packs.length > 0
  const bought = packs.reduce((sum, p) => sum + p.size * p.count, 0)
  const short = shortA + shortB
  return {
    group: 'resin',
    item: choice.id,
    name: choice.name,
    unit: 'g',
    need: roundedUp(total, 'g'),
    withSpare: roundedUp(amountOf({ uses: withSpare(need) }), 'g'),
    stock: Math.min(stillGood(a.lots, a.own) / a.share, stillGood(b.lots, b.own) / b.share),
    lots: together(a.taken.taken, b.taken.taken),
    expired: together(a.taken.expired, b.taken.expired),
    buy: known ? bought : roundedUp(short, 'g'),
    packs,
    cost: short === 0 ? 0 : known && lackA + lackB === 0 ? costOfPacks(packs) : null,
    rate: rateOf(packs, sold, shareA),
    // Whichever says in what it is sold says how long that takes.
    days: (label === null || (label.packs.length === 0 && row !== null) ? row?.days : label.days) ?? null,
    from: label?.from ?? row?.from ?? null,
    note: [
      `A ${Math.ceil(total * shareA)} g and B ${Math.ceil(total - total * shareA)} g are mixed${shop.spare > 0 ? ', the rest is spare' : ''}`,
      ...(!known && shortA > 0 !== shortB > 0
        ? [`only ${shortA > 0 ? 'A' : 'B'} is missing: ${formatMass(Math.ceil(short))}`]
        : []),
      ...(leftAside === '' ? [] : [leftAside])
    ].join('; '),
    lack: lackOf(a.taken, b.taken, total * shareA, total * (1 - shareA), shop.spare, [lackA, lackB])
  }
}

// One part runs out while the other is there or can be had: what is missing of the spare alone is no lack.
function lackOf(
  a: Taken,
  b: Taken,
  needA: number,
  needB: number,
  sparePct: number,
  [lackA, lackB]: readonly [number, number]
): BuyLine['lack'] {
  const spare = 1 + sparePct / 100
  const held = (t: Taken, need: number) => need * spare - t.short
  const missing = (lack: number, t: Taken, need: number) => lack > HAIR_G && held(t, need) < need * (1 - 1e-9)
  const [outA, outB] = [missing(lackA, a, needA), missing(lackB, b, needB)]
  if (outA === outB) return null
  return outA
    ? { part: 'A', have: held(a, needA), need: needA }
    : { part: 'B', have: held(b, needB), need: needB }
}

// Halves of one kit lot are one lot again.
function together(a: readonly Lot[], b: readonly Lot[]): Lot[] {
  const out: Lot[] = []
  for (const lot of [...a, ...b]) {
    const at = out.findIndex(l => l.lot === lot.lot && l.until === lot.until)
    if (at < 0) out.push(lot)
    else out[at] = { ...out[at]!, amount: out[at]!.amount + lot.amount }
  }
  return out
}
