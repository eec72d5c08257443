import type { BuyLine } from '../cost/buy-line.ts'
import { amountWords } from '../cost/need.ts'
import { dayWords } from '../quantity/day.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** Stock that has expired by the day it is used: it is left standing, and fresh is bought. */
export const stockExpired: Check = {
  id: 'stock-expired',
  about: 'stock of the shop that has expired by the day it is used',
  cases: [],
  run: work => work.buy.flatMap(line => (line.expired.length === 0 ? [] : [found(work, line)]))
}

function found(work: Work, line: BuyLine): Found {
  const entry = line.group === 'resin' ? work.entries.pours.find(p => p.value.resin === line.item) : undefined
  const lots = line.expired.map(
    l =>
      `${amountWords(l.amount, line.unit)}${l.lot === null ? '' : ` of lot ${l.lot}`} (until ${dayWords(l.until!)})`
  )
  const instead =
    line.buy > 0
      ? `${amountWords(line.buy, line.unit)} are bought instead`
      : 'what is fresher is used instead'
  return {
    severity: 'note',
    at: entry === undefined ? '' : `${entry.at}/resin`,
    says: `${line.name}: ${lots.join(', ')} will have expired on the day it is used, and is left out; ${instead}.`,
    basis:
      'the day on its label, or opened and how long it keeps by its label, as the shop gives them; the day by the waits of the plan',
    settledBy: 'the date on its label, and a small cup of it tried beforehand'
  }
}
