import type { Task } from '../calendar/task.ts'
import type { Shop } from '../piece/shop-schema.ts'
import type { BuyLine } from './buy-line.ts'
import { consumablesOf } from './consumables.ts'
import type { Charged, CostGroup, CostLine } from './cost-line.ts'
import { COST_GROUPS } from './cost-line.ts'
import { minorDigits, toCoins } from './money.ts'
import type { Once } from './once.ts'
import { onceOf } from './once.ts'
import { deliveryCost } from './orders.ts'

/** What the build costs the shop, before overhead and margin. */
export interface Cost extends Once {
  readonly currency: string
  readonly lines: readonly CostLine[]
  /** Coins by group: what is used of each. */
  readonly sums: Readonly<Record<CostGroup, number>>
  readonly total: number
  /** What is paid at the shop for whole packs, coins; more than what is used of them. */
  readonly bought: number
  /** Names of what has no price: the sums are "at least". */
  readonly unpriced: readonly string[]
  readonly handsMin: number
  readonly machineMin: number
  /** What of the blanks started may be lost, and where that stands; "" for a piece that is made until it is good. */
  readonly spareSays: string
}

/** Kinds of work done once for a row of pieces alike: the mould is used again, a program is tried once (practice). */
const ONCE: ReadonlySet<Task['kind']> = new Set(['mould', 'dry', 'water test', 'test cut', 'air cut'])

/**
 * The cost of a build by what it uses: material at the price of its packs, consumables, hands and machine by their
 * minutes. What has no price or rate counts for nothing and is named.
 *
 *   used = amount × price of a pack / what is in it       hands = minutes / 60 × rate
 *
 * Check: lines add up to their sums and these to the total in coins, exactly (tests).
 * Limits: stock is charged at the price it would be bought for; power and rent belong to the overhead.
 */
export function costOf(input: {
  readonly buy: readonly BuyLine[]
  readonly tasks: readonly Task[]
  /** Batches mixed, all blanks together. */
  readonly batches: number
  /** Blanks started: tasks, material and batches are those of all. */
  readonly blanks: number
  readonly shop: Shop
  /** Wear of cutters and work of others, of all blanks. */
  readonly more?: readonly Charged[]
  /** Delivery, or its share; left out: that of the buy list. */
  readonly delivery?: readonly Charged[]
  /** Pieces wanted, and what of the blanks is lost, %: nothing is allowed for without. */
  readonly loss?: { readonly pieces: number; readonly pct: number }
}): Cost {
  const { buy, tasks, batches, blanks, shop } = input
  const { currency, rates } = shop
  const lines: CostLine[] = []
  const unpriced: string[] = []
  const put = ({ small, ...line }: Charged): void => {
    if (!(line.amount > 0)) return
    const coins = line.rate === null ? null : toCoins(line.amount * line.rate, currency)
    if (coins === null && small !== true) unpriced.push(line.name)
    const { group, name, amount, unit, rate, basis } = line
    lines.push({ group, name, item: line.item ?? null, amount, unit, rate, coins, basis })
  }
  for (const b of buy) {
    const abrasive = b.unit === 'piece' && b.group === 'finish'
    put({
      group: abrasive ? 'consumables' : 'material',
      name: b.name,
      item: b.item,
      amount: b.need,
      unit: b.unit,
      rate: b.rate,
      basis: 'amount by the buy list, price by its packs'
    })
  }
  for (const line of consumablesOf({ tasks, batches, shop })) put(line)
  const sum = (of: readonly Task[]) => of.reduce((total, t) => total + t.minutes, 0)
  const hands = tasks.filter(t => t.attended && t.needs.includes('hands'))
  const machine = tasks.filter(t => t.needs.includes('machine'))
  const [onceHandsMin, onceMachineMin] = [hands, machine].map(of =>
    // A mould made ready for its next fill is not made once.
    sum(of.filter(t => ONCE.has(t.kind) && (t.fill ?? 1) === 1))
  ) as [number, number]
  const [handsMin, machineMin] = [sum(hands), sum(machine)]
  put({
    group: 'labour',
    name: 'your hands',
    amount: handsMin / 60,
    unit: 'h',
    rate: rates.labour ?? null,
    basis: 'minutes of the tasks that hold your hands; rate of the shop'
  })
  put({
    group: 'machine',
    name: 'the machine',
    amount: machineMin / 60,
    unit: 'h',
    rate: rates.machine ?? null,
    basis: 'minutes at the machine, changes and tries among them; rate of the shop'
  })
  for (const line of [...(input.more ?? []), ...(input.delivery ?? deliveryCost(buy, shop))]) put(line)
  const onceCoins = lines.reduce((sum, l) => sum + (l.unit === 'order' ? (l.coins ?? 0) : 0), 0)
  const coin = 10 ** minorDigits(currency)
  const once = onceOf({ onceHandsMin, onceMachineMin, onceCoins }, rates, coin)
  const before = lines.reduce((total, l) => total + (l.coins ?? 0), 0)
  const { pieces, pct } = input.loss ?? { pieces: blanks, pct: 0 }
  // A single piece is made until it is good: of so many begun a share is lost, 1/(1 − loss) are begun for one.
  if (pieces === 1 && blanks === 1 && pct > 0 && before > once)
    put({
      group: 'spoil',
      name: 'allowance for a spoiled blank',
      amount: pct / (100 - pct),
      unit: 'blank',
      rate: (before - once) / coin,
      basis: `${pct} % of blanks are lost, as the piece says or by common practice; made until it is good`
    })
  const sums = Object.fromEntries(COST_GROUPS.map(g => [g, 0])) as Record<CostGroup, number>
  for (const l of lines) sums[l.group] += l.coins ?? 0
  return {
    currency,
    lines,
    sums,
    total: lines.reduce((total, l) => total + (l.coins ?? 0), 0),
    bought: buy.reduce((total, b) => total + toCoins(b.cost ?? 0, currency), 0) + sums.delivery,
    unpriced,
    handsMin,
    machineMin,
    onceHandsMin,
    onceMachineMin,
    onceCoins,
    spareSays:
      blanks > pieces
        ? `${blanks - pieces} of the ${blanks} blanks may be lost: what they take stands in the lines`
        : ''
  }
}
