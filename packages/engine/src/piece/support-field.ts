import { z } from 'zod'
import { choice, exactlyOne, length, mass, point } from './field.ts'

const rail = z
  .strictObject({ from: point('where the rail begins'), to: point('where it ends') })
  .meta({ description: 'a rail', sample: [{ from: [-250, -150], to: [-250, 150] }] })

/** What a top lies on in use, and what it carries there. */
export const supportField = exactlyOne(
  z.strictObject({
    legs: z
      .array(point('the middle of a leg'))
      .min(3)
      .max(40)
      .optional()
      .meta({
        description: 'legs that carry it, by their middles',
        sample: [
          [
            [-250, -150],
            [250, -150],
            [250, 150],
            [-250, 150]
          ]
        ]
      }),
    rails: z
      .array(rail)
      .min(2)
      .max(10)
      .optional()
      .meta({
        description: 'rails that carry it along their length',
        sample: [
          [
            { from: [-250, -150], to: [-250, 150] },
            { from: [250, -150], to: [250, 150] }
          ]
        ]
      }),
    load: mass('what stands on it for long, spread evenly').default(0),
    leaning: mass('what may stand or lean on its edge').default(0),
    held: choice('how it is held there', ['slots', 'round holes', 'loose']).default('slots'),
    slots: length(
      'how far a screw can move in its slot, in all; left out: as the plan asks for',
      0,
      200
    ).optional(),
    screws: z
      .array(point('a screw'))
      .min(1)
      .max(100)
      .optional()
      .meta({
        description: 'screws; left out: at the legs, or at the ends of the rails',
        sample: [
          [
            [-250, 0],
            [250, 0]
          ]
        ]
      }),
    fixed: point('where it is held fast and moves away from; left out: its middle').optional()
  }),
  ['legs', 'rails']
).meta({
  id: 'supports',
  description: 'what the finished piece lies on in use: legs or rails',
  sample: [
    {
      legs: [
        [-250, -150],
        [250, -150],
        [250, 150],
        [-250, 150]
      ]
    }
  ]
})
