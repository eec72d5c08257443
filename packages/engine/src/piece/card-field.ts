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

/** Least lightness between the bare white and black of a card, L of CIELAB: less is no card (judgement). */
const APART_L = 20
/** Standard deviations of a difference of two readings that are no misreading. */
const SURE = 4 * Math.SQRT2

const STEPS = [
  { depth: 0.5, overBlack: '#2c4030', overWhite: '#8fae90' },
  { depth: 1, overBlack: '#2f4c36', overWhite: '#5c8a66' }
]

const step = z.strictObject({
  depth: length('depth of the step, cured', 0.02, 200),
  overBlack: colour('its colour over the black of the card'),
  overWhite: colour('its colour over the white of the card')
})

// Lightness of a colour read, L of CIELAB; of #rrggbb by a plain gamma, near enough to tell which of two is darker.
function lightness(read: z.output<ReturnType<typeof colour>>): number {
  if (typeof read !== 'string') return read[0]
  const part = (k: number) => (Number.parseInt(read.slice(k, k + 2), 16) / 255) ** 2.2
  return 116 * Math.cbrt(0.2126 * part(1) + 0.7152 * part(3) + 0.0722 * part(5)) - 16
}

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
)
  .superRefine(({ black, white, steps, doubt }, ctx) => {
    const issue = (path: (string | number)[], allowed: string, example: string) =>
      ctx.addIssue({
        code: 'custom',
        message: 'black and white',
        path,
        params: { meaning: true, allowed, example }
      })
    if (lightness(white) - lightness(black) < APART_L)
      lightness(black) > 50
        ? issue(['black'], 'a black of the card that is plainly darker than its white', '"#1c1c1c"')
        : issue(['white'], 'a white of the card that is plainly lighter than its black', '"#e7e7e7"')
    const slack = (SURE * doubt.colour * 100) / 255
    steps?.forEach(({ overBlack, overWhite }, i) => {
      if (lightness(overWhite) < lightness(overBlack) - slack)
        issue(
          ['steps', i, 'overWhite'],
          'a colour no darker than the same step over black: the two are changed about, or misread',
          typeof overBlack === 'string' ? `"${overBlack}"` : JSON.stringify(overBlack)
        )
    })
  })
  .meta({
    id: 'card',
    description: 'a hiding card of one pigment: the last one of a pigment counts',
    sample: [{ pigment: 'green-paste', percent: 2, steps: STEPS }]
  })
