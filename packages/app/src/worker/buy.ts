import { actualWords } from '../../../engine/src/actual-words.ts'
import { daysOf } from '../../../engine/src/days.ts'
import { localMoment } from '../../../engine/src/days-data.ts'
import { lengthsOf } from '../../../engine/src/piece/lengths.ts'
import type { Planned } from '../../../engine/src/plan.ts'
import { quoteOf } from '../../../engine/src/quote.ts'
import { actualOf, keptQuote, lastQuoted } from '../../../engine/src/quote-actual.ts'
import { privateQuote } from '../../../engine/src/quote-words.ts'
import { buyRows, moneyFigure } from '../../../engine/src/sheets/buy-rows.ts'
import type { PlanInput } from '../../../engine/src/work.ts'
import type { BuyView } from './buy-view.ts'
import { orders } from './day-words.ts'

/** The buy list with its dates, and cost and price beside it. */
export function buyView(planned: Planned, input: PlanInput): BuyView {
  const { plan } = planned
  const { asOf, totals } = plan
  const quote = quoteOf(planned, { asOf })
  const kept = lastQuoted(planned.work.readings)
  const days = daysOf(input, { asOf, effort: 'quick' })
  return {
    groups: buyRows(plan.buy, lengthsOf(planned.work.shop)),
    currency: totals.currency,
    paid: plan.buy.length > totals.unpriced ? moneyFigure(totals.materialCost) : null,
    unpriced: totals.unpriced,
    blanks: plan.quantity.blanks,
    order: orders(days),
    quote: privateQuote(quote),
    keep: keptQuote(quote),
    keptOn: kept === null ? null : localMoment(Date.parse(kept.at), days.timeZone).slice(0, 10),
    actual: kept === null ? [] : actualWords(actualOf(planned.work, kept, asOf))
  }
}
