import type { Task } from '../calendar/task.ts'
import type { Shop } from '../piece/shop-schema.ts'
import type { BuyLine } from './buy-line.ts'
import { toCoins } from './money.ts'
import { pricedIn, unitPrice } from './price-row.ts'

/** What a line of the cost is of. */
export type CostGroup = 'material' | 'consumables' | 'labour' | 'machine'

/** One line of the cost of a build: amount, rate, and where the rate comes from. Coins of the shop's currency. */
export interface CostLine {
  readonly group: CostGroup
  readonly name: string
  readonly amount: number
  readonly unit: string
  /** What one unit costs; null: no price is known, and the line counts for nothing. */
  readonly rate: number | null
  readonly coins: number | null
  readonly basis: string
}

/** What the build costs the shop, before overhead and margin. */
export interface Cost {
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
  /** Minutes of those two that are spent once, however many pieces are made alike. */
  readonly onceHandsMin: number
  readonly onceMachineMin: number
}

/** Kinds of work done once for a row of pieces alike: the mould is used again, a program is tried once (practice). */
const ONCE: ReadonlySet<Task['kind']> = new Set([
  'mould',
  'dry',
  'water test',
  'test cut',
  'air cut',
  'cutter change'
])

/** Consumables of a batch: a vessel, two sticks; of a day of mixing: a pair of gloves (practice). */
const CUP = 'mixing cup'
const STICK = 'stir stick'
const GLOVES = 'gloves'

/**
 * The cost of a build by what it uses: material at the price of its packs, consumables, hands and machine by their
 * minutes. What has no price or rate counts for nothing and is named.
 *
 *   used = amount × price of a pack / what is in it       hands = minutes / 60 × rate
 *   minutes = done once + blanks × the rest
 *
 * Check: lines add up to their sums and these to the total in coins, exactly (tests).
 * Limits: stock is charged at the price it would be bought for; power and rent belong to the overhead.
 */
export function costOf(input: {
  readonly buy: readonly BuyLine[]
  readonly tasks: readonly Task[]
  /** Batches mixed, all blanks together. */
  readonly batches: number
  /** Blanks started: the tasks are those of one, material and batches those of all. */
  readonly blanks: number
  readonly shop: Shop
}): Cost {
  const { buy, tasks, batches, blanks, shop } = input
  const { currency, rates } = shop
  const lines: CostLine[] = []
  const put = (line: Omit<CostLine, 'coins'>): void => {
    if (!(line.amount > 0)) return
    const coins = line.rate === null ? null : toCoins(line.amount * line.rate, currency)
    lines.push({ ...line, coins })
  }
  for (const b of buy) {
    const abrasive = b.unit === 'piece' && b.group === 'finish'
    put({
      group: abrasive ? 'consumables' : 'material',
      name: b.name,
      amount: b.need,
      unit: b.unit,
      rate: b.rate,
      basis: 'used of it, at the price of its packs'
    })
  }
  const priced = (item: string) => {
    const { row } = pricedIn(shop, item, item === GLOVES ? 'pair' : 'piece')
    return row === null ? null : unitPrice(row.packs)
  }
  const mixing = blanks * new Set(tasks.filter(t => t.kind === 'mix').map(t => t.step)).size
  for (const [name, amount] of [
    [CUP, batches],
    [STICK, 2 * batches],
    [GLOVES, mixing]
  ] as const)
    put({
      group: 'consumables',
      name,
      amount,
      unit: name === GLOVES ? 'pair' : 'piece',
      rate: priced(name),
      basis: 'common practice, no source'
    })
  const sum = (of: readonly Task[]) => of.reduce((total, t) => total + t.minutes, 0)
  const hands = tasks.filter(t => t.attended && t.needs.includes('hands'))
  const machine = tasks.filter(t => t.needs.includes('machine'))
  const [onceHandsMin, onceMachineMin] = [hands, machine].map(of =>
    sum(of.filter(t => ONCE.has(t.kind)))
  ) as [number, number]
  const all = (of: readonly Task[], once: number) => once + blanks * (sum(of) - once)
  const [handsMin, machineMin] = [all(hands, onceHandsMin), all(machine, onceMachineMin)]
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
  const sums: Record<CostGroup, number> = { material: 0, consumables: 0, labour: 0, machine: 0 }
  for (const l of lines) sums[l.group] += l.coins ?? 0
  return {
    currency,
    lines,
    sums,
    total: sums.material + sums.consumables + sums.labour + sums.machine,
    bought: buy.reduce((total, b) => total + toCoins(b.cost ?? 0, currency), 0),
    unpriced: lines.flatMap(l => (l.coins === null ? [l.name] : [])),
    handsMin,
    machineMin,
    onceHandsMin,
    onceMachineMin
  }
}
