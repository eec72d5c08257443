import { daysOf } from '../../../engine/src/days.ts'
import { localMoment } from '../../../engine/src/days-data.ts'
import type { Planned } from '../../../engine/src/plan.ts'
import { quoteOf } from '../../../engine/src/quote.ts'
import { privateQuote } from '../../../engine/src/quote-words.ts'
import { buyRows, moneyFigure } from '../../../engine/src/sheets/buy-rows.ts'
import type { PlanInput } from '../../../engine/src/work.ts'
import type { BuyView } from './buy-view.ts'

/** The buy list with its dates, and cost and price beside it. */
export function buyView(planned: Planned, input: PlanInput): BuyView {
  const { plan } = planned
  const { asOf, totals } = plan
  const days = daysOf(input, { asOf, effort: 'quick' })
  return {
    groups: buyRows(plan.buy),
    currency: totals.currency,
    paid: plan.buy.length > totals.unpriced ? moneyFigure(totals.materialCost) : null,
    unpriced: totals.unpriced,
    blanks: plan.quantity.blanks,
    order: days.orderBy.map(o => ({
      at: localMoment(days.originMs + o.byMin * 60_000, days.timeZone).slice(0, 10),
      says: o.says
    })),
    quote: privateQuote(quoteOf(planned, { asOf }))
  }
}
