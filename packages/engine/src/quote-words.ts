import type { CostGroup, CostLine } from './cost/cost-line.ts'
import { moneyWords } from './cost/money.ts'
import { lengthsIn, lengthsOf } from './piece/lengths.ts'
import type { Shop } from './piece/shop-schema.ts'
import { METRIC } from './quantity/shown-units.ts'
import type { Quote } from './quote.ts'

/** A part of a quote as it is read: a head, and its rows. No sum stands in it without its label. */
export interface QuotePart {
  readonly head: string
  readonly rows: readonly string[]
}

const GROUPS: Readonly<Record<CostGroup, string>> = {
  material: 'Material used',
  consumables: 'Consumables used',
  labour: 'Hands',
  machine: 'Machine',
  cutters: 'Cost of wear of cutters',
  outside: 'Cost of work outside',
  delivery: 'Cost of delivery',
  spoil: 'Cost of spoil, allowed for'
}

/** The quote as the shop keeps it: every line, the rules side by side, what a spoiled blank costs. */
export function privateQuote(q: Quote): QuotePart[] {
  const money = (coins: number) => moneyWords(coins, q.cost.currency)
  const least = q.whole ? '' : 'at least '
  const groups = Object.entries(GROUPS).flatMap(([group, title]): QuotePart[] => {
    const lines = q.cost.lines.filter(l => l.group === group)
    if (lines.length === 0) return []
    const least = lines.some(l => q.cost.unpriced.includes(l.name)) ? 'at least ' : ''
    const none = group === 'labour' || group === 'machine' ? 'no rate known' : 'no price known'
    const bare = lines.every(l => l.coins === null)
    const sum = bare ? none : `${least}${money(q.cost.sums[group as CostGroup])}`
    // What holds for every line of a group is said once, at its head.
    const shared = lines.length > 1 && lines.every(l => l.basis === lines[0]!.basis)
    const price = (l: CostLine) => (l.coins === null ? `: ${none}` : `: costs ${money(l.coins)}`)
    return [
      {
        head: `${title}: ${sum}${shared ? ` (${lines[0]!.basis})` : ''}`,
        rows: lines.map(l => `${l.name}, ${used(l)}${bare ? '' : price(l)}${shared ? '' : ` (${l.basis})`}`)
      }
    ]
  })
  // Sums of nothing would read as if it cost nothing.
  if (q.cost.lines.every(l => l.coins === null))
    return [
      {
        head: 'No price and no rate is known',
        rows: ['With prices and rates in the shop these become sums.']
      },
      ...groups
    ]
  const asked =
    q.asked === null
      ? []
      : [
          `At a price of ${money(q.asked.coins)} before tax${q.asked.anHour === null ? '' : `, ${q.whole ? '' : 'at most '}${money(q.asked.anHour)} is left for an hour`}.`
        ]
  return [
    ...groups,
    {
      head: 'Cost to the shop',
      rows: [
        `Cost to the shop: ${least}${money(q.cost.total)}`,
        `Paid for whole packs and their delivery: ${least}${money(q.cost.bought)}`,
        `One spoiled blank costs ${least}${money(q.spoiled)}`,
        ...(q.cost.spareSays === '' ? [] : [`${q.cost.spareSays}.`])
      ]
    },
    {
      head: `Price to the client, before tax, of ${q.count} ${q.count === 1 ? 'piece' : 'pieces'}, by rule (common practice, no source)`,
      rows: [
        ...q.prices.map(
          p =>
            `${p.rule}: price ${least}${money(p.coins)}${p.anHour === null ? '' : `; leaves ${money(p.anHour)} an hour`} (${p.says})`
        ),
        ...asked
      ]
    },
    {
      head: 'Price of one, before tax, when made alike',
      rows: q.units.map(u => `of ${u.count}: price ${least}${money(u.coins)}`)
    },
    { head: 'What the client is quoted', rows: priceRows(q) },
    ...(q.whole ? [] : [{ head: 'Without a price or a rate', rows: [`${q.cost.unpriced.join(', ')}.`] }])
  ]
}

/** The quote as the client sees it: the piece, the price, what is paid when; no costs. */
export function clientQuote(
  q: Quote,
  piece: {
    readonly sizeMm: readonly number[]
    readonly madeOf: readonly string[]
    readonly ready: string | null
    /** The shop's units; left out: mm. */
    readonly units?: Shop['units']
  }
): QuotePart[] {
  const lengths = piece.units === undefined ? lengthsIn(METRIC) : lengthsOf({ units: piece.units })
  const size = piece.sizeMm.map(mm => lengths.of(mm, 1)).join(' × ')
  return [
    { head: 'The piece', rows: [`Finished size: ${size} ${lengths.unit}`, ...piece.madeOf] },
    { head: 'Price', rows: priceRows(q) },
    {
      head: 'When',
      rows: [
        ...(piece.ready === null ? [] : [`Ready on ${piece.ready.slice(0, 10)}, if it is ordered today.`]),
        `This price holds for ${q.validDays} days from ${q.asOf.slice(0, 10)}.`,
        'A care sheet comes with the piece.'
      ]
    }
  ]
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

const MEASURES: ReadonlySet<string> = new Set(['g', 'ml', 'm', 'm²'])

// Hours as the clock counts them, pieces as one says them, what is worn or spoiled as its share.
function used({ amount, unit }: CostLine): string {
  if (unit === 'h') return hours(amount * 60)
  const share = unit === 'cutter' || unit === 'blank'
  if (share && amount < 1) return `${amount < 0.01 ? 'less than 1' : Math.round(amount * 100)} % of a ${unit}`
  const figure = Number(amount.toFixed(2))
  return `${figure} ${unit}${figure === 1 || MEASURES.has(unit) ? '' : 's'}`
}

function hours(min: number): string {
  const whole = Math.round(min)
  return `${Math.floor(whole / 60)} h ${String(whole % 60).padStart(2, '0')}`
}
