import { z } from 'zod'
import { id, number, words } from './field.ts'
import { nearest } from './nearest.ts'

/** Where a thing is bought. */
export const fromField = words('the supplier it comes from', 60, 'the resin shop').optional()

/** Where things are bought, and what it costs to have them brought. */
export const suppliersField = z
  .array(
    z.strictObject({
      id: id('what prices call it'),
      delivery: number('delivery of one order', 0, 1e6).default(0),
      freeFrom: number('nothing for delivery from this sum on', 0, 1e6).optional()
    })
  )
  .max(100)
  .default([])
  .meta({
    description: 'suppliers, and what they take for delivery',
    sample: [[{ id: 'the resin shop', delivery: 9.5, freeFrom: 150 }]]
  })

/** The firm that makes the cuts that are sent out. */
export const sentOutField = z
  .strictObject({
    firm: words('its name', 120, 'the joiner in town').optional(),
    price: number('price of one order, whatever is cut', 0, 1e6).default(0),
    each: number('price of each cut', 0, 1e6).optional(),
    days: number('days until it is back; left out: a week', 0, 365).optional()
  })
  .optional()
  .meta({
    description: 'who makes the cuts that are sent out',
    sample: [{ firm: 'the joiner in town', price: 40, each: 15, days: 6 }]
  })

interface Bought {
  readonly from?: string | undefined
}

/** Every supplier that is named is one of the shop's. */
export function suppliersKnown(
  shop: {
    readonly suppliers: readonly { readonly id: string }[]
    readonly prices: readonly Bought[]
    readonly resins: readonly Bought[]
  },
  ctx: z.core.$RefinementCtx<unknown>
): void {
  const known = shop.suppliers.map(s => s.id)
  for (const list of ['prices', 'resins'] as const)
    shop[list].forEach(({ from }, i) => {
      if (from === undefined || known.includes(from)) return
      const near = nearest(from, known) ?? known[0]
      ctx.addIssue({
        code: 'custom',
        message: 'no such supplier',
        path: [list, i, 'from'],
        params: {
          meaning: true,
          allowed:
            known.length === 0 ? 'a supplier of the shop: it has none yet' : `one of ${known.join(', ')}`,
          example: near === undefined ? '"suppliers": [{ "id": "…" }]' : JSON.stringify(near)
        }
      })
    })
}
