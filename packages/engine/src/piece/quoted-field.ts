import { z } from 'zod'
import { number, whole, words } from './field.ts'

/** Most coins and most lines of a quote that is kept. */
const MOST_COINS = 1e12

const coins = (description: string) =>
  z
    .int()
    .min(0)
    .max(MOST_COINS)
    .meta({ description, sample: [48_000] })

/** A quote as it was given: what each line was reckoned at, so that it can be held against what came of it. */
export const quotedField = {
  count: whole('how many pieces it was for', 1, 10_000),
  currency: words('currency', 12, 'EUR'),
  net: coins('price before tax, in the smallest coins'),
  gross: coins('price with tax, in the smallest coins'),
  lines: z
    .array(
      z.strictObject({
        group: words('what it is of', 20, 'material'),
        name: words('what it is called', 200, 'deep resin'),
        item: words('its id in the buy list', 120, 'deep').optional(),
        unit: words('what it is counted in', 12, 'g'),
        amount: number('how much', 0, 1e9),
        coins: coins('what it was reckoned at; left out: no price was known').optional()
      })
    )
    .max(400)
    .meta({
      description: 'lines of the cost',
      sample: [
        [{ group: 'material', name: 'deep resin', item: 'deep', unit: 'g', amount: 3200, coins: 11_200 }]
      ]
    }),
  steps: z
    .array(
      z.strictObject({
        step: words('the key of a step', 120, 'sand front'),
        minutes: number('minutes of your hands', 0, 1e6)
      })
    )
    .max(2000)
    .meta({ description: 'minutes of each step', sample: [[{ step: 'sand front', minutes: 45 }]] })
}

/** Something used beside what is mixed, in the unit of the buy list. */
export const usedField = {
  amount: number('how much, in the unit of the buy list', 0, 1e6),
  item: words('what, by the id or name of the buy list', 120, 'hardwax-oil')
}
