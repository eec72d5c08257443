import type { Quote } from '@castwright/engine'
import { moneyWords } from '@castwright/engine'

const GROUPS = {
  material: 'Material used',
  consumables: 'Consumables used',
  labour: 'Hands',
  machine: 'Machine'
} as const

/** The quote as the shop keeps it: every line, the rules side by side, what a spoiled blank costs. */
export function privateQuote(q: Quote): string {
  const money = (coins: number) => moneyWords(coins, q.cost.currency)
  const least = q.whole ? '' : 'at least '
  const rows: string[] = [`${q.name}: what it costs and what it is quoted at (private)`, '']
  for (const [group, title] of Object.entries(GROUPS)) {
    const lines = q.cost.lines.filter(l => l.group === group)
    if (lines.length === 0) continue
    const known = lines.every(l => l.coins !== null)
    rows.push(`${title}: ${known ? '' : 'at least '}${money(q.cost.sums[group as keyof typeof GROUPS])}`)
    for (const l of lines)
      rows.push(
        `  ${l.name}, ${Number(l.amount.toFixed(2))} ${l.unit}: ${l.coins === null ? 'no price known' : `costs ${money(l.coins)}`} (${l.basis})`
      )
  }
  rows.push(
    '',
    `Cost to the shop: ${least}${money(q.cost.total)}`,
    `Paid for whole packs: ${least}${money(q.cost.bought)}`,
    `One spoiled blank costs ${least}${money(q.spoiled)}`,
    `Hands ${hours(q.cost.handsMin)}, machine ${hours(q.cost.machineMin)}`,
    '',
    `Price to the client, before tax, of ${q.count} ${q.count === 1 ? 'piece' : 'pieces'}, by rule (common practice, no source):`
  )
  for (const p of q.prices)
    rows.push(
      `  ${p.rule}: price ${least}${money(p.coins)}${p.anHour === null ? '' : `; leaves ${money(p.anHour)} an hour`} (${p.says})`
    )
  if (q.asked !== null)
    rows.push(
      `At a price of ${money(q.asked.coins)} before tax${q.asked.anHour === null ? '' : `, ${least === '' ? '' : 'at most '}${money(q.asked.anHour)} is left for an hour`}.`
    )
  rows.push('', 'Price of one, before tax, when made alike:')
  for (const u of q.units) rows.push(`  of ${u.count}: price ${least}${money(u.coins)}`)
  rows.push('', ...priceRows(q))
  if (!q.whole) rows.push('', `Without a price or a rate: ${q.cost.unpriced.join(', ')}.`)
  return `${rows.join('\n')}\n`
}

/** The quote as the client sees it: the piece, the price, what is paid when. */
export function clientQuote(q: Quote, madeOf: readonly string[], size: string): string {
  const rows = [q.name, '', `Finished size: ${size}`, ...madeOf, '']
  rows.push(...priceRows(q), '', `This price holds for ${q.validDays} days from ${q.asOf.slice(0, 10)}.`)
  rows.push('A care sheet comes with the piece.')
  return `${rows.join('\n')}\n`
}

function priceRows(q: Quote): string[] {
  const money = (coins: number) => `${q.whole ? '' : 'at least '}${moneyWords(coins, q.cost.currency)}`
  return [
    `Price to the client before tax: ${money(q.net)}`,
    `Tax, ${q.taxPct} %: ${money(q.tax)}`,
    `Price to the client with tax: ${money(q.gross)}`,
    `Deposit, ${q.depositPct} %: ${money(q.deposit)}`
  ]
}

function hours(min: number): string {
  return `${Math.floor(min / 60)} h ${String(Math.round(min % 60)).padStart(2, '0')}`
}
