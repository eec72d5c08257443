import { z } from 'zod'
import { angle, choice, exactlyOne, id, length, number, point, size, whole, words, yesNo } from './field.ts'
import { partFit } from './part-field.ts'
import { tintField } from './pour-field.ts'
import { shape } from './shape-field.ts'

const faceField = choice('the face it is cut from', ['front', 'back'])
const wayField = choice('how it is cut', ['machine', 'router', 'drill', 'saw', 'sled', 'sent out'])

/** Largest size of a tolerance class, mm. */
const MOST_CLASS_MM = 80
/** Classes that holes of fittings are made to. */
const HOLE_CLASSES = ['H7', 'H8', 'H6', 'H9', 'H10', 'H11', 'G7', 'F7', 'F8', 'E9', 'D10'] as const

const line = z.strictObject({
  points: z
    .array(point('a point of the line'))
    .min(2)
    // One that crosses itself everywhere costs the square of its points.
    .max(2000)
    .optional()
    .meta({
      description: 'a line through these points',
      sample: [
        [
          [0, 0],
          [80, 0]
        ]
      ]
    }),
  path: words('SVG path data, mm, y down as in SVG', 1_000_000).optional()
})

// The tables of ISO 286 are held up to a size.
function withinClasses(
  toleranceClass: string | undefined,
  acrossMm: number | undefined,
  ctx: z.core.$RefinementCtx<unknown>
): void {
  if (toleranceClass === undefined || acrossMm === undefined || acrossMm <= MOST_CLASS_MM) return
  ctx.addIssue({
    code: 'custom',
    message: 'too large for its class',
    path: ['toleranceClass'],
    params: { meaning: true, allowed: `a class on a size of at most ${MOST_CLASS_MM} mm`, example: '"H7"' }
  })
}

const tabsField = z
  .union([
    z.boolean(),
    z.strictObject({
      count: whole('how many', 1, 60).default(4),
      width: length('along the edge', 1, 200).default(8),
      thick: length('what is left of the thickness', 0.2, 100).default(3)
    })
  ])
  .meta({
    description:
      'tabs hold the part until it is sawn off: yes, no, or their count and size; left out: four where an outline goes through',
    sample: [true, { count: 4, width: 8, thick: 3 }]
  })

// What stands inside a cut, and what holds a part that is cut free.
function standsTogether(
  cut: {
    readonly islands?: unknown
    readonly shape?: unknown
    readonly tabs?: unknown
    readonly skin?: unknown
  },
  ctx: z.core.$RefinementCtx<unknown>
): void {
  const refuse = (key: string, message: string, allowed: string) =>
    ctx.addIssue({ code: 'custom', message, path: [key], params: { meaning: true, allowed } })
  if (cut.islands !== undefined && cut.shape === undefined)
    refuse('islands', 'islands without a shape', 'islands only in a cut with a `shape`')
  if (cut.skin !== undefined && cut.tabs !== undefined && cut.tabs !== false)
    refuse('skin', 'a skin beside tabs', 'one of the two: tabs, or a skin all round')
}

/** The piece of wood that goes into an inlay pocket. */
const plugField = z
  .strictObject({
    gap: length('all round between plug and pocket', 0, 2).default(0.1),
    thickness: length('of the board it is cut from', 0.5, 200),
    corner: length('radius of the corners of both: half the cutter they are cut with', 0.2, 25).default(1.5),
    species: words('a timber of the catalogue, by id or name', 80).optional(),
    relief: length('room for glue: how far its foot stays above the floor', 0, 20).default(0)
  })
  .meta({
    description: 'of an inlay: the plug that goes into the pocket',
    sample: [{ gap: 0.1, thickness: 8 }]
  })

/** One removal of material from one face. */
export const cutField = exactlyOne(
  exactlyOne(
    z.strictObject({
      id: id('what other entries call it').optional(),
      kind: choice('what it is', [
        'pocket',
        'bore',
        'counterbore',
        'groove',
        'slot',
        'keyhole',
        'inlay',
        'outline',
        'rebate'
      ]).default('pocket'),
      face: faceField,
      shape: shape.optional().meta({ description: 'what it takes away, seen from the front' }),
      islands: z
        .array(shape)
        .min(1)
        .max(200)
        .optional()
        .meta({
          description: 'what stands inside the shape and is not cut, seen from the front',
          sample: [[{ circle: 20 }]]
        }),
      along: exactlyOne(line, ['points', 'path'])
        .optional()
        .meta({ description: 'the middle line of a groove' }),
      width: size('width of a groove at the face; of a keyhole its neck', 500).optional(),
      head: size('of a keyhole: across its head, under the face', 200).optional(),
      lip: length('of a keyhole: thickness of what stays over its head', 0.5, 200).optional(),
      around: id('of a counterbore: the bore it goes round; its circle is laid about that middle').optional(),
      plug: plugField.optional(),
      profile: choice('shape of a groove or pocket floor: flat, V, or round', ['flat', 'v', 'round']).default(
        'flat'
      ),
      angle: number('included angle of a V, degrees', 10, 150).default(60),
      depth: length('depth from the face that exists on that day', 0.05, 500).optional(),
      finishedDepth: length(
        'depth from the finished face: the cut of the day is reckoned',
        0.05,
        500
      ).optional(),
      through: z
        .literal(true)
        .optional()
        .meta({ description: 'right through', sample: [true] }),
      way: wayField.default('machine'),
      tabs: tabsField.optional(),
      skin: length('left under an outline, sawn or sanded through later', 0.1, 50).optional(),
      corners: choice(
        'rounded: as the cutter leaves them; relieved: bored out so that a square part goes in',
        ['rounded', 'relieved']
      ).default('rounded'),
      allowance: length('left on the walls for a last pass', 0, 5).optional(),
      direction: choice('which way the cutter runs along the wall', ['climb', 'conventional']).optional(),
      cutter: words('a cutter of the shop, by id', 60, 'flat-6').optional(),
      for: id('the hardware that goes in').optional(),
      mask: yesNo('plugged or taped while its face is coated').optional(),
      toleranceClass: choice('tolerance class it is reamed or bored to (ISO 286)', HOLE_CLASSES).optional(),
      note: words('a note').optional()
    }),
    ['depth', 'finishedDepth', 'through']
  ).superRefine((cut, ctx) => {
    const across =
      cut.width ??
      cut.shape?.circle ??
      (cut.shape?.rectangle === undefined ? undefined : Math.min(...cut.shape.rectangle))
    withinClasses(cut.toleranceClass, across, ctx)
    standsTogether(cut, ctx)
  }),
  ['shape', 'along']
).meta({
  id: 'cut',
  description: 'one removal of material; one of depth, finishedDepth, through',
  sample: [{ face: 'back', shape: { circle: 60 }, depth: 10 }]
})

/** Bought-in parts that need a cut or a former. Sizes override the catalogue: measure yours. */
export const hardwareField = z
  .strictObject({
    id: id('what other entries call it').optional(),
    kind: words('hardware of the catalogue, by id or name', 80),
    at: point('where its middle sits').optional(),
    turn: angle('turned counter-clockwise').default(0),
    face: choice('the face it goes in from', ['front', 'back']).default('back'),
    in: id('the cut or former it sits in').optional(),
    castIn: id('the pour it is cast into').optional(),
    width: size('width of the body', 2000).optional(),
    length: size('length of the body', 2000).optional(),
    diameter: size('diameter of a round body', 2000).optional(),
    depth: size('depth of the body', 500).optional(),
    clearance: length('gap wanted on each side', 0, 20).optional(),
    ...partFit,
    thread: size('length of the thread', 500).optional(),
    shaft: size('length of the shaft', 500).optional(),
    heat: number('greatest temperature it takes, °C', 20, 400).optional(),
    count: z
      .int()
      .min(1)
      .max(200)
      .default(1)
      .meta({ description: 'how many', sample: [1] }),
    fitting: choice('press: pushed in tight; loose: with play; screwed', [
      'press',
      'loose',
      'screwed'
    ]).default('loose'),
    note: words('a note').optional()
  })
  .superRefine((part, ctx) => {
    const across = part.diameter ?? part.width ?? part.length
    withinClasses(part.toleranceClass, across, ctx)
  })
  .meta({
    id: 'hardware',
    description: 'a bought-in part',
    sample: [{ kind: 'quartz-movement', at: [0, 0], in: 'pocket' }]
  })

/** Scales, ticks and numerals. Widths are of the finished line: the depth of the cut is reckoned. */
export const markingField = exactlyOne(
  z.strictObject({
    id: id('what other entries call it').optional(),
    face: choice('the face it is on', ['front', 'back']).default('front'),
    radial: z
      .strictObject({
        centre: point('centre of the ring').default([0, 0]),
        radius: size('outer radius of the lines', 5000),
        length: size('length of a line, inward', 1000),
        at: z
          .array(z.number().min(-3600).max(3600))
          .min(1)
          .max(2000)
          .meta({
            description: 'angles of the lines, degrees, counter-clockwise from x',
            sample: [[0, 30, 60]]
          })
      })
      .optional(),
    linear: z
      .strictObject({
        from: point('start of the scale'),
        to: point('end of the scale'),
        length: size('length of a line, to the left of from-to', 1000),
        at: z
          .array(z.number().min(0).max(1))
          .min(1)
          .max(2000)
          .meta({
            description: 'places of the lines, 0 at the start to 1 at the end, even or not',
            sample: [[0, 0.5, 1]]
          })
      })
      .optional(),
    lines: z
      .array(z.array(point('a point')).min(2).max(2000))
      .min(1)
      .max(2000)
      .optional()
      .meta({
        description: 'free lines',
        sample: [
          [
            [
              [0, 0],
              [40, 0]
            ]
          ]
        ]
      }),
    width: size('width of the finished line', 50).default(1.4),
    figures: choice('how numerals are cut: as single lines like the scale, or as outlines filled by the V', [
      'single line',
      'outline'
    ]).default('single line'),
    deepest: length(
      'of figures as outlines: how deep they go at most under the finished face; wider ones get a flat floor',
      0.05,
      100
    ).optional(),
    cutter: words('a cutter of the shop, by id', 60, 'v-60').optional(),
    angle: number('included angle of the V it is cut with, degrees', 10, 150).default(60),
    sandedAfter: length('what is sanded off the face after the line is cut', 0, 5).optional(),
    filled: tintField.optional(),
    resin: words('the resin it is filled with', 80).default('thin'),
    numerals: z
      .array(
        z.strictObject({
          text: words('the text', 24),
          at: point('its middle'),
          height: size('height of the figures', 300).default(8)
        })
      )
      .max(500)
      .default([])
      .meta({ description: 'figures beside the lines', sample: [[{ text: '12', at: [0, 90] }]] }),
    way: wayField.default('machine'),
    note: words('a note').optional()
  }),
  ['radial', 'linear', 'lines']
).meta({
  id: 'marking',
  description: 'a scale or lines, filled',
  sample: [{ linear: { from: [-100, 0], to: [100, 0], length: 8, at: [0, 0.5, 1] } }]
})

export const edgeField = z
  .strictObject({
    face: choice('the edge of which face', ['front', 'back', 'both']).default('front'),
    profile: choice('what is done to it', ['chamfer', 'round']),
    size: size('how far it goes in, finished', 100),
    way: wayField.default('router')
  })
  .meta({ description: 'an edge worked', sample: [{ profile: 'chamfer', size: 3 }] })

export const holdingField = z
  .strictObject({
    by: choice('what holds it on the machine', [
      'screws in the waste',
      'pins',
      'tape',
      'clamps',
      'vacuum'
    ]).default('screws in the waste'),
    keepClear: z
      .array(shape)
      .max(100)
      .default([])
      .meta({ description: 'places the cutter must keep clear of', sample: [[]] })
  })
  .meta({ description: 'how it is held on the machine', sample: [{ by: 'tape' }] })
