import { z } from 'zod'
import { number, words } from './field.ts'

/** What others make for the piece: legs welded, a glass cut, a plate engraved. */
export const outsideField = z
  .array(
    z.strictObject({
      work: words('what is made', 120, 'steel legs, welded'),
      firm: words('by whom', 120, 'the smith').optional(),
      price: number('price for all pieces together', 0, 1e6).optional(),
      days: number('days from the order until it is here', 0, 365).default(0)
    })
  )
  .max(50)
  .default([])
  .meta({
    description: 'what others make for it, to be there before parts are fitted',
    sample: [[{ work: 'steel legs, welded', firm: 'the smith', price: 180, days: 14 }]]
  })
