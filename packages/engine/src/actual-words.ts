import { moneyWords } from './cost/money.ts'
import type { BuyUnit } from './cost/need.ts'
import { amountWords } from './cost/need.ts'
import type { Planned } from './plan-answer.ts'
import { decimals, formatMinutes } from './quantity/format.ts'
import { quoteOf } from './quote.ts'
import type { Actual, ActualLine } from './quote-actual.ts'
import { actualOf, lastQuoted } from './quote-actual.ts'
import type { QuotePart } from './quote-words.ts'
import { privateQuote } from './quote-words.ts'

/** Amounts of a quote are whole units, rounded up: this near is no difference. */
const ROUNDED = 1
const WHOLE: readonly string[] = ['g', 'ml', 'min']
/** Factors nearer to one than this are no news. */
const NEWS = 0.03

/** What was quoted against what was read, in words: difference, minutes, material, what the next piece goes by. */
export function actualWords(a: Actual): QuotePart[] {
  const money = (coins: number) => moneyWords(coins, a.currency)
  const read = (lines: readonly ActualLine[]) => lines.filter(l => l.actual !== null)
  const [steps, material] = [read(a.steps), read(a.material)]
  const left = a.steps.length + a.material.length - steps.length - material.length
  // A sum of nothing would read as a gift.
  const price = a.net === 0 ? 'no price known' : `price before tax ${money(a.net)}`
  const head = `Quoted on ${a.at.slice(0, 10)}: ${price} for ${a.count} ${a.count === 1 ? 'piece' : 'pieces'}`
  if (steps.length + material.length === 0)
    return [{ head, rows: ['Nothing was read yet of what was mixed, used or how long it took.'] }]
  const priced = [...steps, ...material].some(l => l.actualCoins !== null)
  return [
    {
      head,
      rows: [
        ...(priced
          ? [
              `Cost of what was read: ${money(a.actualCoins)}; quoted at a cost of ${money(a.quotedCoins)}: ${differs(a.actualCoins - a.quotedCoins, money)}`
            ]
          : ['The quote had no price or rate for what was read: amounts alone are held against it.']),
        ...(left === 0
          ? []
          : [`${left} ${left === 1 ? 'line stands' : 'lines stand'} as quoted: nothing was read of them`])
      ]
    },
    ...(steps.length === 0
      ? []
      : [{ head: `Minutes: ${total(steps)}`, rows: steps.map(l => row(l, formatMinutes, money)) }]),
    ...(material.length === 0
      ? []
      : [
          {
            head: 'Material used so far',
            rows: material.map(l => row(l, x => inUnit(x, l.unit), money))
          }
        ]),
    ...next(a)
  ]
}

/** The quote as the shop keeps it, and below it the last one kept against what came of it. */
export function privateQuoteSoFar({ work }: Pick<Planned, 'work'>, asOf: string): QuotePart[] {
  const kept = lastQuoted(work.readings)
  return [
    ...privateQuote(quoteOf({ work }, { asOf })),
    ...(kept === null ? [] : actualWords(actualOf(work, kept, asOf)))
  ]
}

function row(l: ActualLine, words: (x: number) => string, money: (coins: number) => string): string {
  const near = WHOLE.includes(l.unit) && Math.abs(l.actual! - l.quoted) <= ROUNDED
  const by = near ? ' (as quoted)' : l.quoted > 0 ? ` (${percent(l.actual! / l.quoted - 1)})` : ''
  const cost =
    l.actualCoins === null || l.quotedCoins === null
      ? ''
      : `, cost ${money(l.actualCoins)}, quoted at ${money(l.quotedCoins)}`
  return `${l.name}: quoted ${words(l.quoted)}, was ${words(l.actual!)}${by}${cost}`
}

function total(lines: readonly ActualLine[]): string {
  const sum = (of: (l: ActualLine) => number) => lines.reduce((t, l) => t + of(l), 0)
  return `quoted ${formatMinutes(sum(l => l.quoted))}, took ${formatMinutes(sum(l => l.actual!))}`
}

function next(a: Actual): QuotePart[] {
  const rows = [
    ...[...a.learned]
      .filter(([, l]) => Math.abs(l.factor - 1) > NEWS)
      .map(
        ([work, l]) =>
          `${work}: ${decimals(l.factor, 2)} times what was reckoned, from ${l.records} ${l.records === 1 ? 'record' : 'records'}; "minutes" of the shop makes it so for every piece`
      ),
    ...(a.leftoverPct === null
      ? []
      : [`${decimals(a.leftoverPct, 1)} % stayed in the vessels: "leftover" of the shop`])
  ]
  return rows.length === 0 ? [] : [{ head: 'For the next quote', rows }]
}

function inUnit(x: number, unit: string): string {
  return unit === 'g' || unit === 'ml' || unit === 'm' || unit === 'm²'
    ? amountWords(x, unit as BuyUnit)
    : `${decimals(x, 2)} ${unit}`
}

function percent(share: number): string {
  const pct = Math.round(share * 100)
  return pct === 0 ? 'as quoted' : `${Math.abs(pct)} % ${pct > 0 ? 'more' : 'less'}`
}

function differs(coins: number, money: (coins: number) => string): string {
  return coins === 0 ? 'the same' : `${money(Math.abs(coins))} ${coins > 0 ? 'more' : 'less'}`
}
