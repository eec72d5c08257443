import { z } from 'zod'
import { choice, id, length, point, size, span, words, yesNo } from './field.ts'
import { shape } from './shape-field.ts'

const former = z
  .strictObject({
    id: id('what other entries call it').optional(),
    shape: shape,
    from: length('height as cast of its foot', 0, 500).default(0),
    to: length('height as cast of its top; left out: above the last pour', 0, 1000).optional(),
    released: yesNo('wrapped or waxed so that it comes out').default(true)
  })
  .meta({ description: 'a released plug that keeps a hole open', sample: [{ shape: { circle: 68 } }] })

const dam = z
  .strictObject({
    line: z
      .array(point('a point of the dam'))
      .min(2)
      .max(2000)
      .meta({
        description: 'where it stands',
        sample: [
          [
            [0, 0],
            [0, 100]
          ]
        ]
      }),
    sealed: yesNo('sealed to the base').default(true)
  })
  .meta({
    description: 'a temporary wall between two pours',
    sample: [
      {
        line: [
          [0, -50],
          [0, 50]
        ]
      }
    ]
  })

/** What the piece is cast in. */
export const mouldField = z
  .strictObject({
    shape: shape.optional().meta({
      description: 'inside of the mould on the plan; left out: a rectangle round the outline and the margin'
    }),
    margin: length('from the outline to the wall: waste that is trimmed off', 0, 200).default(6),
    ears: z
      .array(shape)
      .max(40)
      .default([])
      .meta({
        description: 'ears of waste, for pins or screws',
        sample: [[{ rectangle: [44, 60], at: [280, 0] }]]
      }),
    base: words('a board of the catalogue, by id or name', 80).default('melamine-particleboard-18'),
    bearers: size('distance between the bearers under the base', 5000).optional(),
    wall: length(
      'height of the walls over the base; left out: the level when poured and 10 mm',
      0,
      1000
    ).optional(),
    wallBoard: words('a board of the catalogue for the walls', 80).optional(),
    liner: words('what keeps resin from the mould, by id or name', 80).default('release-tape'),
    formers: z
      .array(former)
      .max(100)
      .default([])
      .meta({ description: 'plugs that keep holes open', sample: [[{ shape: { circle: 68 } }]] }),
    dams: z
      .array(dam)
      .max(100)
      .default([])
      .meta({ description: 'temporary walls', sample: [[]] }),
    corners: z
      .array(length('what a corner reads high (negative: low)', -100, 100))
      .length(4)
      .optional()
      .meta({
        description: 'level readings at the corners: front left, front right, back right, back left',
        sample: [[0, 0.4, 0.3, 0]]
      }),
    moved: yesNo('it will be moved while the resin is liquid').default(false),
    waterTest: yesNo('filled with water once before the pour').default(true),
    sealant: span('how long the sealant dries before the pour').default(12 * 60),
    joints: choice('where the joints are sealed', [
      'inside and outside',
      'inside',
      'outside',
      'tape only'
    ]).default('inside and outside')
  })
  .meta({ description: 'what the piece is cast in', sample: [{ margin: 6 }] })
