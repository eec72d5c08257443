import type { BuyLine } from '../cost/buy-line.ts'
import { lengthsIn } from '../piece/lengths.ts'
import type { Plan } from '../plan.ts'
import { METRIC } from '../quantity/shown-units.ts'
import { shelfWords } from './buy-rows.ts'

/** The columns of the buy list, in order. */
export const BUY_COLUMNS = [
  'what',
  'id',
  'for what',
  'need',
  'with spare',
  'in stock',
  'buy',
  'unit',
  'packs',
  'pack size',
  'pack unit',
  'price per pack',
  'cost',
  'currency',
  'days to arrive',
  'note'
] as const

type Cell = string | number | null

/**
 * The buy list as comma-separated values after RFC 4180: lines end in CR LF, cells with a comma, a quote, a
 * line end or a space at an end are quoted, quotes are doubled. Text is UTF-8 without a byte order mark.
 *
 * One row a line of the list, by its name and by the id that the shop's prices go by; a line bought in packs of several sizes goes on in rows of its own, with need,
 * spare, stock and buy in the first alone, so that the columns `need`, `buy` and `cost` can be summed. Amounts
 * to a thousandth, a point as the decimal sign. Findings gone on despite stand in the last rows with their
 * reason.
 *
 * A spreadsheet takes a cell that begins with = + - or @ for a formula: words that do, spaces before it or
 * not, get an apostrophe in front, which the spreadsheet hides. Words that begin with an apostrophe get one
 * too, so that one apostrophe taken off gives back every word.
 */
export function buyCsv(plan: Plan): string {
  const rows: Cell[][] = [[...BUY_COLUMNS]]
  for (const line of plan.buy) rows.push(...lineRows(line, plan.totals.currency))
  for (const d of plan.despite) {
    const row: Cell[] = BUY_COLUMNS.map(() => null)
    row[0] = `gone on despite ${d.id}`
    row[row.length - 1] = `because: ${d.because}`
    rows.push(row)
  }
  return rows.map(row => `${row.map(cell).join(',')}\r\n`).join('')
}

function lineRows(l: BuyLine, currency: string): Cell[][] {
  const amounts = [l.need, l.withSpare, l.stock, l.buy]
  const first = l.packs[0]
  const note = [
    l.note,
    ...shelfWords(l, lengthsIn(METRIC)),
    ...(first?.part === undefined ? [] : [`packs of ${first.part} alone`])
  ]
    .filter(s => s !== '')
    .join('; ')
  const tail = (cost: number | null): Cell[] => [cost, currency, l.days, note]
  const others = l.packs.slice(1)
  if (first === undefined)
    return [
      [l.name, l.item, l.group, ...amounts, l.unit, l.buy <= 0 ? 0 : null, null, null, null, ...tail(l.cost)]
    ]
  const pack = (p: BuyLine['packs'][number]): Cell[] => [p.count, p.size, l.unit, p.price]
  const cost = (p: BuyLine['packs'][number]) => (p.price === null ? null : p.count * p.price)
  return [
    [l.name, l.item, l.group, ...amounts, l.unit, ...pack(first), ...tail(cost(first))],
    ...others.map((p): Cell[] => [
      l.name,
      l.item,
      l.group,
      null,
      null,
      null,
      null,
      l.unit,
      ...pack(p),
      cost(p),
      currency,
      l.days,
      p.part === undefined ? 'the same, another pack' : `the same, ${p.part} alone`
    ])
  ]
}

function cell(value: Cell): string {
  if (value === null) return ''
  if (typeof value === 'number') return String(Number(value.toFixed(3)))
  const words = /^\s*['=+\-@\uFF1D\uFF0B\uFF0D\uFF20]/.test(value) ? `'${value}` : value
  return /[",\r\n]|^\s|\s$/.test(words) ? `"${words.replaceAll('"', '""')}"` : words
}
