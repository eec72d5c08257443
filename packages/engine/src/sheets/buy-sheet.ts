import type { Days } from '../days-answer.ts'
import { lengthsOf } from '../piece/lengths.ts'
import type { Planned } from '../plan.ts'
import { dayText, dayWords } from '../quantity/day.ts'
import { zoneClock } from '../quantity/zone-clock.ts'
import type { BuyGroup, BuyRow } from './buy-rows.ts'
import { buyRows, moneyFigure } from './buy-rows.ts'

/** One thing on the list that is taken along: what is bought, and in small what is good to know of it. */
export interface BuyItem {
  readonly says: string
  readonly what: string
  readonly notes: readonly string[]
}

/** The buy list to take along, or to send an order by. */
export interface BuySheet {
  readonly name: string
  readonly asOf: string
  /** What has to be ordered by which day, the earliest first; empty where nothing says how long it takes. */
  readonly order: readonly { readonly by: string; readonly what: string }[]
  readonly groups: readonly { readonly title: string; readonly items: readonly BuyItem[] }[]
  /** Things of which enough is on the shelf. */
  readonly there: readonly string[]
  readonly sum: string
}

/** The buy list as it is printed. `days` gives the days to order by; null: there is no calendar. */
export function buySheet({ plan, work }: Planned, days: Days | null): BuySheet {
  const groups = buyRows(plan.buy, lengthsOf(work.shop))
  const { currency, unpriced, materialCost } = plan.totals
  const priced = plan.buy.length - unpriced
  return {
    name: plan.name,
    asOf: plan.asOf,
    order: days === null ? [] : orderDays(days),
    groups: groups.map(g => bought(g, currency)).filter(g => g.items.length > 0),
    there: groups.flatMap(g => g.rows.filter(r => r.buy === 'nothing').map(r => `${r.name}: ${r.need}`)),
    sum:
      priced === 0
        ? 'No price is known.'
        : `${moneyFigure(materialCost)} ${currency}${unpriced === 0 ? '' : `, and ${several(unpriced, 'thing')} without a price`}.`
  }
}

function orderDays({ orderBy, originMs, timeZone }: Days): BuySheet['order'] {
  const clock = zoneClock(timeZone)
  const by = new Map<string, string[]>()
  for (const o of [...orderBy].sort((a, b) => a.byMin - b.byMin)) {
    const date = dayText(clock.shown(originMs + o.byMin * 60_000))
    by.set(date, [...(by.get(date) ?? []), o.name])
  }
  return [...by].map(([date, names]) => ({ by: dayWords(date), what: names.join('; ') }))
}

function bought({ title, rows }: BuyGroup, currency: string) {
  return { title, items: rows.filter(r => r.buy !== 'nothing').map(r => itemOf(r, currency)) }
}

function itemOf({ name, note, need, stock, buy, cost, days }: BuyRow, currency: string): BuyItem {
  const facts = [
    // What is bought as it is wanted is not said twice.
    need === buy ? '' : `${need} wanted`,
    stock === null ? '' : `${stock} on the shelf`,
    days === null || days === 0 ? '' : `here in ${several(days, 'day')}`
  ].filter(f => f !== '')
  return {
    what: `${name}:`,
    says: `${buy}${cost === null ? '' : `, ${cost} ${currency}`}`,
    notes: [facts.join(', '), note].filter(n => n !== '')
  }
}

function several(n: number, what: string): string {
  return `${n} ${what}${n === 1 ? '' : 's'}`
}
