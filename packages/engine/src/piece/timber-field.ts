import { z } from 'zod'
import { angle, atMostOne, choice, id, length, number, percent, point, size, words, yesNo } from './field.ts'
import { shape } from './shape-field.ts'

const grid = z
  .strictObject({
    from: point('the first measured point'),
    step: z
      .tuple([size('step along x'), size('step along y')])
      .meta({ description: 'distance between measured points: [along x, along y]', sample: [[50, 50]] }),
    rises: z
      .array(
        z
          .array(length('what the top stands above `thickness` there (negative: below)', -200, 200))
          .min(2)
          .max(400)
      )
      .min(2)
      .max(400)
      .meta({
        description: 'rows from the front row to the back row, each from left to right',
        sample: [
          [
            [0, 0.5],
            [0.2, 0.4]
          ]
        ]
      })
  })
  .meta({
    description: 'a top measured on a grid',
    sample: [
      {
        from: [0, 0],
        step: [50, 50],
        rises: [
          [0, 1],
          [0, 1]
        ]
      }
    ]
  })

const crown = z
  .strictObject({
    rise: length('how far the middle stands above the edges (negative: hollow)', -60, 60),
    along: angle('direction of the ridge').default(0)
  })
  .meta({ description: 'a top that is crowned or hollow across its width', sample: [{ rise: 3 }] })

const board = z
  .strictObject({
    thickness: size('thickness, not yet planed', 500).optional(),
    cup: length('hollow across it, greatest gap under a straightedge', 0, 100).optional(),
    bow: length('hollow along it, greatest gap under a straightedge', 0, 200).optional(),
    twist: length('what one corner stands off a flat table, the other three on it', 0, 200).optional()
  })
  .meta({ description: 'the board it is cut from, as it lies', sample: [{ thickness: 27, cup: 1 }] })

/** A wooden part set in the mould. */
export const timberField = atMostOne(
  z.strictObject({
    id: id('what other entries call it').optional(),
    species: words('a timber of the catalogue, by id or name', 80, 'ash-white'),
    outline: shape.describe('its upper edge, seen from above as it lies in the mould'),
    underside: shape.optional().meta({
      description:
        'its lower edge where the side is undercut or flared: the side runs straight between the two'
    }),
    thickness: length('thickness from its underside to the edge of its top', 0.2, 500),
    base: length('height as cast of its underside', 0, 500).default(0),
    crown: crown.optional(),
    measured: grid.optional(),
    moisture: percent('moisture content now, of the dry mass', 0, 60).optional(),
    grain: angle('direction of the grain; left out: along its longer side').optional(),
    rings: choice('how the year rings stand to the face: flat (flat-sawn), rift, quarter (quartersawn)', [
      'flat',
      'rift',
      'quarter'
    ]).default('flat'),
    pith: number('distance from the pith to its face, mm; only for cupping', 1, 2000).optional(),
    rough: board.optional(),
    flush: choice('what its edges are worked flush with that does not move with the air', [
      'nothing',
      'metal',
      'stone',
      'resin'
    ]).default('nothing'),
    charred: length('depth charred on its sides', 0, 20).default(0),
    charredTop: length('depth charred on its top', 0, 20).default(0),
    brushed: yesNo('loose char brushed out').default(false),
    sealed: choice('how its sides are sealed before the pour', ['no', 'tacky', 'hard']).default('tacky'),
    keyed: yesNo('a hard seal coat sanded dull before the pour').default(false),
    bark: yesNo('bark left on its sides').default(false),
    held: choice('what holds it down', ['screws', 'tape', 'weights', 'nothing']).default('weights'),
    holding: number(
      'what those hold, g, all together; left out: as much as the plan asks for',
      0,
      1_000_000
    ).optional(),
    level: length('gap under it where it does not lie flat, greatest', 0, 50).default(0),
    note: words('a note').optional()
  }),
  ['crown', 'measured']
).meta({
  id: 'timber',
  description: 'a wooden part set in the mould',
  sample: [{ species: 'oak-european', outline: { rectangle: [300, 80] }, thickness: 24 }]
})
