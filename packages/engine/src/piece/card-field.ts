import { z } from 'zod'
import { day, exactlyOne, length, number, percent, words } from './field.ts'

/** A colour that was read: of a screen, or of an instrument. */
const colour = (description: string) =>
  z
    .union([
      z.string().regex(/^#[0-9a-fA-F]{6}$/),
      z.tuple([number('lightness L', 0, 100), number('a', -128, 128), number('b', -128, 128)])
    ])
    .meta({ description: `${description}: #rrggbb, or CIELAB [L, a, b]`, sample: ['#7a8c54'] })

const STEPS = [
  { depth: 0.5, overBlack: '#2c4030', overWhite: '#8fae90' },
  { depth: 1, overBlack: '#2f4c36', overWhite: '#5c8a66' }
]

const step = z.strictObject({
  depth: length('depth of the step, cured', 0.02, 200),
  overBlack: colour('its colour over the black of the card'),
  overWhite: colour('its colour over the white of the card')
})

const wedge = z
  .strictObject({
    shows: length('deepest step through which black and white still look different', 0.01, 500),
    hides: length('shallowest step through which they look alike', 0.01, 500)
  })
  .superRefine(({ shows, hides }, ctx) => {
    if (shows >= hides)
      ctx.addIssue({
        code: 'custom',
        message: 'hides before it shows',
        path: ['hides'],
        params: {
          meaning: true,
          allowed: 'deeper than the step that still shows',
          example: String(shows + 1)
        }
      })
  })
  .meta({ description: 'a card that was only looked at', sample: [{ shows: 1.5, hides: 2 }] })

/**
 * A maker's hiding card of one pigment: steps cast over black and white, with the colours read at each, or only
 * which step still shows and which hides.
 */
export const cardField = exactlyOne(
  z.strictObject({
    pigment: words('a pigment of the catalogue, by id or name', 80, 'green-paste'),
    percent: percent('share of the mix by mass', 0.0001, 30),
    resin: words('the resin it was mixed into; left out: one of 1.1 g/ml', 80, 'medium').optional(),
    day: day('when').optional(),
    steps: z
      .array(step)
      .min(2)
      .max(40)
      .optional()
      .meta({ description: 'steps of which the colours were read', sample: [STEPS] }),
    wedge: wedge.optional(),
    black: colour('the bare black of the card').default('#1c1c1c'),
    white: colour('the bare white of the card').default('#e7e7e7'),
    doubt: z
      .strictObject({
        colour: number('of a colour read, steps of 255', 0.05, 60).default(3),
        depth: length('of a depth read', 0.001, 5).default(0.1)
      })
      .prefault({})
      .meta({ description: 'how far a reading may be off, one standard deviation', sample: [{ colour: 3 }] }),
    note: words('a note').optional()
  }),
  ['steps', 'wedge']
).meta({
  id: 'card',
  description: 'a hiding card of one pigment: the last one of a pigment counts',
  sample: [{ pigment: 'green-paste', percent: 2, steps: STEPS }]
})
