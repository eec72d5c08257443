import type { BuyLine } from '../cost/buy.ts'
import { decimals, formatMass } from '../quantity/format.ts'
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

/** The buy list by group, those without lines left out. */
export function buyRows(buy: readonly BuyLine[]): BuyGroup[] {
  return GROUPS.flatMap(([group, title]): BuyGroup[] => {
    const lines = buy.filter(l => l.group === group)
    return lines.length === 0 ? [] : [{ title, rows: lines.map(rowOf) }]
  })
}

function rowOf(l: BuyLine): BuyRow {
  const packs = l.packs.map(p => `${p.count} × ${quantity(p.size, l.unit)}`).join(', ')
  return {
    name: capital(l.name),
    note: l.note,
    need: wanted(l.withSpare, l.unit),
    stock: l.stock > 0 ? quantity(l.stock, l.unit) : null,
    buy: l.buy <= 0 ? 'nothing' : packs !== '' ? packs : wanted(l.buy, l.unit),
    cost: l.cost === null ? null : moneyFigure(l.cost),
    days: l.days
  }
}

// Kilograms go up to the next tenth: what is needed must not look less than it is.
function wanted(x: number, unit: BuyLine['unit']): string {
  return quantity(unit === 'g' && x >= 10_000 ? Math.ceil(x / 100 - 1e-9) * 100 : x, unit)
}

function quantity(x: number, unit: BuyLine['unit']): string {
  if (unit === 'g') return formatMass(x)
  if (unit === 'piece') return decimals(x, 0)
  return `${decimals(x, unit === 'ml' ? 0 : 2)} ${unit}`
}

/** A sum without its currency: whole, or with two decimals. */
export function moneyFigure(x: number): string {
  return decimals(x, x % 1 === 0 ? 0 : 2, x % 1 === 0 ? 0 : 2)
}
