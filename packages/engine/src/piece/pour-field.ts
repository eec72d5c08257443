import { z } from 'zod'
import {
  choice,
  exactlyOne,
  id,
  length,
  mass,
  moment,
  number,
  percent,
  place,
  point,
  size,
  span,
  temperature,
  volume,
  whole,
  words,
  yesNo
} from './field.ts'
import { shape } from './shape-field.ts'

/** Pigments of a pour with their mass fractions of the whole mix. */
export const tintField = z
  .array(
    z.strictObject({
      pigment: words('a pigment of the catalogue, by id or name', 80, 'white-paste'),
      percent: percent('share of the whole mix by mass', 0, 30)
    })
  )
  .max(12)
  .meta({
    description: 'pigments and their share of the mix by mass',
    sample: [[{ pigment: 'white-paste', percent: 3 }]]
  })

const placed = z
  .strictObject({
    at: point('where its middle lies'),
    size: z
      .tuple([size('length', 500), size('width', 500), size('thickness', 300)])
      .meta({ description: 'length, width, thickness', sample: [[22, 20, 6]] }),
    height: length('height as cast of its underside; left out: on the floor of its pour', 0, 500).optional(),
    volume: volume('its volume; left out: an ellipsoid of its size', 0.01, 100_000).optional()
  })
  .meta({ description: 'a single stone', sample: [{ at: [40, 10], size: [22, 20, 6] }] })

/** Any hard inclusion: a zone filled with it, or single ones placed. */
const stonesField = exactlyOne(
  z.strictObject({
    kind: words('stones of the catalogue, by id or name', 80, 'river-gravel'),
    zone: shape.optional(),
    placed: z
      .array(placed)
      .min(1)
      .max(2000)
      .optional()
      .meta({ description: 'single stones', sample: [[{ at: [40, 10], size: [22, 20, 6] }]] }),
    all: z
      .literal(true)
      .optional()
      .meta({ description: 'the whole pour', sample: [true] }),
    from: place('height as cast of the bottom of the band; left out: the floor of the pour').optional(),
    to: place('height as cast of the top of the band; left out: the level of the pour').optional(),
    fill: number('solid share of the zone; left out: as that kind packs', 0.01, 0.8).optional(),
    dry: choice('how dry they are', ['dry', 'not sure', 'fresh']).default('dry'),
    set: choice('when they go in', ['before the pour', 'into the pour', 'on the tacky layer']).default(
      'on the tacky layer'
    ),
    sealed: yesNo('porous ones sealed all over before they go in').default(false),
    heated: temperature('porous ones heated to before; left out: not heated', 20, 200).optional(),
    note: words('a note').optional()
  }),
  ['zone', 'placed', 'all']
).meta({
  id: 'stones',
  description: 'stones: a zone of them, single ones, or the whole pour',
  sample: [{ kind: 'river-gravel', all: true }]
})

const marbling = z
  .strictObject({
    share: percent('share of the pour by mass', 1, 99),
    tint: tintField,
    later: span('mixed so long after the first colour; left out: at the same time').optional(),
    pace: number('how fast it sets against the clear mix, by a test cup; left out: 1', 0.2, 5).optional()
  })
  .meta({
    description: 'one of several colours of one pour',
    sample: [{ share: 40, tint: [{ pigment: 'white-paste', percent: 2 }] }]
  })

const amounts = ['depth', 'height', 'mass', 'fill'] as const

/** Resin cast at one time. */
export const pourField = exactlyOne(
  z.strictObject({
    id: id('what other entries call it').optional(),
    kind: choice(
      'seal: a thin coat on timber; cast: into the mould; flood: a coat over a face; inlay: into a cut',
      ['cast', 'seal', 'flood', 'inlay']
    ).default('cast'),
    face: choice('the face it lies on, once out of the mould', ['front', 'back']).optional(),
    region: shape
      .optional()
      .meta({ description: 'where it goes, when dams keep it from the rest of the mould' }),
    into: z
      .array(id('a cut'))
      .min(1)
      .max(200)
      .optional()
      .meta({ description: 'the cuts an inlay fills', sample: [['scale']] }),
    resin: words('a resin of the shop or a class of the catalogue: deep, medium, thin', 80, 'medium'),
    depth: length('depth as cast, after cure, over the lowest floor it covers', 0.05, 500).optional(),
    height: length('height as cast, after cure, of its level', 0.05, 1000).optional(),
    mass: mass('mass of the mix poured', 0.1).optional(),
    mixed: mass(
      'mass mixed, when more than goes in; left out: what goes in and what stays in the vessels',
      0.1
    ).optional(),
    fill: choice(
      'timber: level with the lowest timber top when poured; cut: level with the face of the cut',
      ['timber', 'cut']
    ).optional(),
    dam: length('height of the dam round a flood, over the face', 0, 200).optional(),
    tint: tintField.default([]),
    opaque: z
      .boolean()
      .optional()
      .meta({ description: 'what this pour covers must not show through it', sample: [true] }),
    hidesFrom: length('its tint is to hide what lies behind from this depth on', 0.05, 500).optional(),
    lightThrough: percent(
      'light it is to let through its finished depth, against clear resin',
      0.1,
      99.9
    ).optional(),
    stones: z
      .array(stonesField)
      .max(50)
      .default([])
      .meta({ description: 'stones in this pour', sample: [[{ kind: 'river-gravel', all: true }]] }),
    marbling: z
      .array(marbling)
      .min(2)
      .max(6)
      .optional()
      .meta({
        description: 'colours poured into each other',
        sample: [
          [
            { share: 60, tint: [] },
            { share: 40, tint: [] }
          ]
        ]
      }),
    mixing: choice('two cups: stirred, poured over, stirred again', [
      'two cups',
      'one cup',
      'paddle'
    ]).default('two cups'),
    measured: z
      .strictObject({
        a: number('parts of A', 0.01, 1000),
        b: number('parts of B', 0.01, 1000),
        by: choice('what the parts are of', ['mass', 'volume'])
      })
      .optional()
      .meta({
        description: 'how the maker means to measure; left out: the ratio of the resin by mass',
        sample: [{ a: 100, b: 44, by: 'mass' }]
      }),
    pack: mass('resin on hand or bought for this pour; left out: whole packs are bought', 0).optional(),
    batches: whole('number of batches the maker wants; left out: as few as are safe', 1, 1000).optional(),
    vessel: volume(
      'capacity of the mixing vessel; left out: the vessels of the shop',
      20,
      200_000
    ).optional(),
    minutes: span(
      'from the first stir until the last batch is out of its vessel; left out: reckoned',
      1,
      24 * 60
    ).optional(),
    startTemperature: temperature(
      'temperature of the parts when mixed; left out: the room',
      5,
      60
    ).optional(),
    start: moment('when the first batch is mixed').optional(),
    after: span('wait since the pour before; left out: from the recoat window').optional(),
    shrinkage: percent('volumetric shrinkage of this resin; left out: of its class', 0, 12).optional(),
    note: words('a note').optional()
  }),
  amounts
).meta({
  id: 'pour',
  description: 'resin cast at one time; exactly one of depth, height, mass, fill',
  sample: [{ resin: 'medium', depth: 8 }]
})
