import { minorDigits } from '../cost/money.ts'
import { formatMinutes } from '../quantity/format.ts'
import type { Block } from './block.ts'
import { fills } from './block.ts'
import type { OrderFigures } from './order-plan.ts'

/** A move told before the rest are counted. */
const MOST_MOVES = 3
/** A change of hands that is worth a word, min. */
const WORTH_MIN = 5
const HALF_DAY_MIN = 720

/** What is done otherwise, in words: the fewest steps that have to be moved to get from the given order to this one. */
export function movesSaid(order: readonly Block[], joined: readonly (readonly Block[])[]): string {
  const kept = longestKept(order.map(b => b.index))
  const says: string[] = []
  for (let i = 0; i < order.length; i++) {
    if (kept.has(order[i]!.index)) continue
    let to = i
    while (to + 1 < order.length && !kept.has(order[to + 1]!.index)) to++
    const run = order.slice(i, to + 1)
    const [before, after] = [order[i - 1], order[to + 1]]
    // Said by the neighbour it has passed.
    const place =
      before !== undefined && before.index > run[0]!.index
        ? `after “${before.step.says}”`
        : after !== undefined
          ? `before “${after.step.says}”`
          : `after “${before?.step.says ?? ''}”`
    says.push(`${named(run)} ${place}`)
    i = to
  }
  for (const group of joined)
    says.push(`fill ${list(group.map(b => b.step.marking?.id ?? b.step.pour!.id))} in one go, with one wait`)
  const told = says.slice(0, MOST_MOVES).join('; ')
  const more = says.length > MOST_MOVES ? `; and ${says.length - MOST_MOVES} moves more` : ''
  return `${told.charAt(0).toUpperCase()}${told.slice(1)}${more}`
}

/** Fillings made in one go that the given order makes one by one. */
export function joinedFills(order: readonly Block[], given: (a: Block, b: Block) => boolean): Block[][] {
  const out: Block[][] = []
  for (let i = 0; i < order.length; i++) {
    let to = i
    while (
      to + 1 < order.length &&
      fills(order[to]!.step) &&
      fills(order[to + 1]!.step) &&
      order[to]!.face === order[to + 1]!.face
    )
      to++
    const group = order.slice(i, to + 1)
    if (group.slice(1).some((b, k) => !given(group[k]!, b))) out.push(group)
    i = to
  }
  return out
}

/** What an order gains or costs against the given one, in words. */
export function comparedSaid(now: OrderFigures, given: OrderFigures, currency: string): string {
  const out: string[] = []
  if (now.readyMs !== null && given.readyMs === null) out.push('there is a calendar')
  if (now.readyMs !== null && given.readyMs !== null) {
    const min = (given.readyMs - now.readyMs) / 60_000
    if (Math.abs(min) >= HALF_DAY_MIN) {
      const days = Math.max(1, Math.round(Math.abs(min) / 1440))
      out.push(`${days} ${days === 1 ? 'day' : 'days'} ${min > 0 ? 'sooner' : 'later'}`)
    } else if (Math.abs(min) >= 60)
      out.push(`${formatMinutes(Math.abs(min))} ${min > 0 ? 'sooner' : 'later'}`)
  }
  const hands = given.handsMin - now.handsMin
  if (Math.abs(hands) >= WORTH_MIN)
    out.push(`${formatMinutes(Math.abs(hands))} ${hands > 0 ? 'less' : 'more'} work`)
  const coins = given.coins - now.coins
  const digits = minorDigits(currency)
  if (Math.abs(coins) >= 0.5 * 10 ** digits)
    out.push(
      `${currency} ${(Math.abs(coins) / 10 ** digits).toFixed(digits)} ${coins > 0 ? 'cheaper' : 'dearer'}`
    )
  return out.length === 0 ? 'as soon ready, as much work' : out.join(', ')
}

function named(run: readonly Block[]): string {
  const [first] = run
  const face = first!.face
  if (run.length > 2 && face !== null && run.every(b => b.face === face)) return `work the ${face}`
  const say = ({ step }: Block) => step.says.charAt(0).toLowerCase() + step.says.slice(1)
  return run.length > 3 ? `${say(first!)} and the ${run.length - 1} steps after it` : list(run.map(say))
}

function list(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
}

// The longest run of steps that stand in the given order: all others are moved.
function longestKept(order: readonly number[]): Set<number> {
  const best = order.map(() => 1)
  const from = order.map(() => -1)
  order.forEach((x, i) => {
    for (let k = 0; k < i; k++)
      if (order[k]! < x && best[k]! + 1 > best[i]!) {
        best[i] = best[k]! + 1
        from[i] = k
      }
  })
  const out = new Set<number>()
  for (let at = best.indexOf(Math.max(0, ...best)); at >= 0; at = from[at]!) out.add(order[at]!)
  return out
}
