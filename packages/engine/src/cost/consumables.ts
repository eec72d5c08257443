import type { Task } from '../calendar/task.ts'
import type { Shop } from '../piece/shop-schema.ts'
import type { Charged } from './cost-line.ts'
import { pricedIn, unitPrice } from './price-row.ts'

/** Work that throws dust. */
const DUSTY: ReadonlySet<Task['kind']> = new Set(['sand', 'level', 'flatten', 'edge', 'hand cut', 'mill'])
/** A mask that is thrown away lasts a day at the bench, min (practice). */
const MASK_MIN = 8 * 60

const PRACTICE = 'common practice, no source'

/**
 * What is used up beside the buy list: of a batch a vessel and two sticks; of a day of mixing a pair of gloves; a dust
 * mask for eight hours of dusty work begun (all practice; particle masks for dust: EN 149 FFP2 or better, in the
 * safety lines).
 */
export function consumablesOf(input: {
  readonly tasks: readonly Task[]
  readonly batches: number
  readonly shop: Shop
}): Charged[] {
  const { tasks, batches, shop } = input
  const mixing = new Set(tasks.filter(t => t.kind === 'mix').map(t => `${t.step} ${t.fill ?? 1}`)).size
  const dustyMin = tasks.reduce((sum, t) => sum + (t.attended && DUSTY.has(t.kind) ? t.minutes : 0), 0)
  const line = (name: string, amount: number, unit: 'piece' | 'pair', small: boolean): Charged => {
    const { row } = pricedIn(shop, name, unit)
    const rate = row === null ? null : unitPrice(row.packs)
    return {
      group: 'consumables',
      name,
      item: name,
      amount,
      unit,
      rate,
      basis: small && rate === null ? `${PRACTICE}; without a price it is part of the overhead` : PRACTICE,
      small
    }
  }
  return [
    line('mixing cup', batches, 'piece', false),
    line('stir stick', 2 * batches, 'piece', false),
    line('gloves', mixing, 'pair', false),
    line('dust mask', Math.ceil(dustyMin / MASK_MIN - 1e-9), 'piece', true)
  ]
}
