import type { BuyLine } from '../cost/buy-line.ts'
import { amountWords, roundedUp } from '../cost/need.ts'
import type { Lengths } from '../piece/lengths.ts'
import { dayWords } from '../quantity/day.ts'
import { decimals } from '../quantity/format.ts'
import { capital } from './model.ts'

const GROUPS: readonly (readonly [BuyLine['group'], string])[] = [
  ['resin', 'Resin'],
  ['colour', 'Colour'],
  ['stones', 'Stones'],
  ['timber', 'Timber'],
  ['mould', 'Mould'],
  ['finish', 'Finish'],
  ['hardware', 'Hardware']
]

/** One line of the buy list in words. */
export interface BuyRow {
  readonly name: string
  readonly note: string
  /** Need with its spare. */
  readonly need: string
  /** What is on the shelf; null: nothing. */
  readonly stock: string | null
  /** "nothing", "2 × 1.5 kg", or the amount where no packs are known. */
  readonly buy: string
  /** What that is paid with; null: no price is known. */
  readonly cost: string | null
  /** Days until it is here; null: the shop does not say. */
  readonly days: number | null
}

export interface BuyGroup {
  readonly title: string
  readonly rows: readonly BuyRow[]
}

/**
 * The buy list by group, those without lines left out. What is wanted by the metre or the square metre is said in the
 * shop's units; packs and what is kept have them beside. Grams and millilitres stay: they are weighed and measured out.
 */
export function buyRows(buy: readonly BuyLine[], L: Lengths): BuyGroup[] {
  return GROUPS.flatMap(([group, title]): BuyGroup[] => {
    const lines = buy.filter(l => l.group === group)
    return lines.length === 0 ? [] : [{ title, rows: lines.map(l => rowOf(l, L)) }]
  })
}

function rowOf(l: BuyLine, L: Lengths): BuyRow {
  const packs = l.packs
    .map(p => {
      // Of what is bought singly the number says all.
      const size = l.unit === 'piece' && p.size === 1 ? '' : ` × ${kept(p.size, l.unit, L)}`
      return `${p.count}${size}${p.part === undefined ? '' : ` of ${p.part}`}`
    })
    .join(', ')
  return {
    name: capital(l.name),
    note: [L.beside(l.note), ...shelfWords(l, L)].filter(s => s !== '').join('; '),
    need: wanted(l.withSpare, l.unit, L),
    stock: l.stock > 0 ? kept(l.stock, l.unit, L) : null,
    buy: l.buy <= 0 ? 'nothing' : packs !== '' ? packs : wanted(l.buy, l.unit, L),
    cost: l.cost === null ? null : decimals(l.cost, 2, 2),
    days: l.days
  }
}

/** Lots in the order they are used in, and what is left standing. */
export function shelfWords(l: BuyLine, L: Lengths): string[] {
  const said = (x: BuyLine['lots'][number]) => (x.lot === null ? 'what has no lot' : `lot ${x.lot}`)
  const marked = l.lots.some(x => x.lot !== null || x.until !== null)
  const use = l.lots.map(
    x =>
      `${kept(roundedUp(x.amount, l.unit), l.unit, L)} of ${said(x)}${x.until === null ? '' : ` (by ${dayWords(x.until)})`}`
  )
  return [
    ...(marked ? [`from the shelf ${use.join(', then ')}`] : []),
    ...l.expired.map(
      x => `${x.lot === null ? 'stock' : `lot ${x.lot}`} (until ${dayWords(x.until!)}) has expired: not used`
    )
  ]
}

/** A foot, m: exact (1959). */
const FOOT_M = 0.3048
/** Least step of feet and square feet as they are written: they go up to the next. */
const STEP = 0.1

// Kilograms and feet go up to the next tenth: what is needed must not look less than it is.
function wanted(x: number, unit: BuyLine['unit'], L: Lengths): string {
  const up = (y: number, step: number) => Math.ceil(y / step - 1e-9) * step
  if (L.unit === 'in' && unit === 'm') return L.run(up(x, STEP * FOOT_M))
  if (L.unit === 'in' && unit === 'm²') return L.area(up(x, STEP * FOOT_M ** 2), 1)
  return amountWords(unit === 'g' && x >= 10_000 ? up(x, 100) : x, unit)
}

// What is sold or kept by the metre is called so; a shop in inches reads its feet beside it.
function kept(x: number, unit: BuyLine['unit'], L: Lengths): string {
  const words = amountWords(x, unit)
  if (L.unit === 'mm' || (unit !== 'm' && unit !== 'm²')) return words
  return `${words} (${unit === 'm' ? L.run(x) : L.area(x, 1)})`
}

/** A sum without its currency: whole, or with two decimals. */
export function moneyFigure(x: number): string {
  return decimals(x, x % 1 === 0 ? 0 : 2, x % 1 === 0 ? 0 : 2)
}
