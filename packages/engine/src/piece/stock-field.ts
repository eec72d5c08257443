import { z } from 'zod'
import { day, mass, number, words } from './field.ts'

const dated = {
  lot: words('what its label says: the lot, or your own mark', 60, 'K2').optional(),
  opened: day('when it was opened').optional(),
  expires: day('the last day it may be used, by its label').optional()
}

/** Days that a thing keeps once opened. */
export const keepsField = number('how long it keeps once opened, by its label, days', 1, 3650).optional()

/** Things on the shelf with a lot or a date of their own, in the units of their price. */
export const lotsField = z
  .array(z.strictObject({ amount: number('units of it', 0, 1e6), ...dated }))
  .max(50)
  .default([])
  .meta({
    description: 'on the shelf by lot: what expires first is used first, what has expired is not used',
    sample: [[{ amount: 375, lot: 'K2', opened: '2026-09-01' }]]
  })

/** What of a resin a bottle or a pack holds. */
export const partField = z
  .enum(['both', 'A', 'B'])
  .default('both')
  .meta({ description: 'what is in it: both in their ratio, A alone or B alone', sample: ['both'] })

/** Resin on the shelf with a lot or a date of its own. */
export const resinLotsField = z
  .array(z.strictObject({ mass: mass('of it'), part: partField, ...dated }))
  .max(50)
  .default([])
  .meta({
    description: 'on the shelf by lot: what expires first is used first, what has expired is not used',
    sample: [[{ mass: 900, part: 'B', lot: 'H-17', expires: '2027-03-31' }]]
  })
