import { z } from 'zod'
import { cardField } from './card-field.ts'
import { cupTestHolds, LEAST_CUP_READINGS } from './cup-meaning.ts'
import {
  choice,
  day,
  id,
  length,
  mass,
  number,
  percent,
  span,
  temperature,
  volume,
  whole,
  words,
  yesNo
} from './field.ts'
import { handField } from './hand-schema.ts'
import { cutterField, machineField } from './machine-field.ts'
import { VERSION } from './piece-schema.ts'
import { keepsField, lotsField, partField, resinLotsField } from './stock-field.ts'
import { fromField, sentOutField, suppliersField, suppliersKnown } from './supply-field.ts'
import { zoneField } from './zone-field.ts'

const opening = z
  .string()
  .regex(/^([01][0-9]|2[0-3]):[0-5][0-9]-(([01][0-9]|2[0-3]):[0-5][0-9]|24:00)$/)
  .superRefine((text, ctx) => {
    // Two-digit hours: the order of the texts is the order of the times.
    if (text.length === 11 && text.slice(0, 5) >= text.slice(6))
      ctx.addIssue({
        code: 'custom',
        message: 'ends before it begins',
        params: { meaning: true, allowed: 'hours that end after they begin, before midnight' }
      })
  })
  .meta({ description: 'from-to, local time', sample: ['08:00-12:00'] })
const openings = z
  .array(opening)
  .max(6)
  .default([])
  .meta({ description: 'hours at the bench', sample: [['08:00-12:00', '13:00-17:00']] })

// Two entries of one name: the second would never be asked. Said at its name.
function namedOnce(entries: readonly { id: string }[], ctx: z.core.$RefinementCtx<unknown>): void {
  entries.forEach((entry, i) => {
    if (entries.findIndex(e => e.id === entry.id) < i)
      ctx.addIssue({
        code: 'custom',
        message: 'a name twice',
        path: [i, 'id'],
        params: { meaning: true, allowed: 'each name once', example: JSON.stringify(`${entry.id} 2`) }
      })
  })
}

const price = { price: number('price of one', 0, 1e6).optional() }

const timeAt = (description: string) =>
  z
    .strictObject({
      minutes: span(description, 1),
      temperature: temperature('at this temperature', 5, 40).default(25)
    })
    .meta({ description, sample: [{ minutes: '6 h', temperature: 25 }] })

/** Most readings of a cup test that a shop keeps: a logger's, every ten seconds of a day and more. */
export const MOST_CUP_READINGS = 10_000
const CUP_SAMPLE = [
  [0, 22],
  [30, 26],
  [60, 48]
]

/** A cup of resin that was watched with a thermometer in its middle; readings as they were taken. */
export const cupTestSchema = z
  .strictObject({
    day: day('when').optional(),
    mass: mass('mixed, A and B together', 5, 50_000),
    diameter: length('inner diameter of the cup', 20, 1000),
    room: temperature('air about it', 0, 45),
    start: temperature('the mix at the start; left out: the first reading', 5, 60).optional(),
    unit: choice('what the thermometer reads', ['°C', '°F', 'K']).default('°C'),
    readings: z
      .array(z.tuple([number('minutes since mixing', 0, 43_200), number('temperature', -60, 700)]))
      .min(LEAST_CUP_READINGS)
      .max(MOST_CUP_READINGS)
      .meta({ description: '[minutes since mixing, temperature], in order of time', sample: [CUP_SAMPLE] }),
    strings: span('when a stick began to pull strings, since mixing', 1, 43_200).optional(),
    gelled: span('when nothing clung to the stick any more, since mixing', 1, 43_200).optional(),
    note: words('a note', 2000).optional()
  })
  .superRefine(cupTestHolds)
  .meta({
    description: 'a cup test',
    sample: [{ mass: 100, diameter: 70, room: 22, readings: CUP_SAMPLE }]
  })

/** A resin of the maker's own, from its label; what is left out comes from its class. */
const shopResin = z
  .strictObject({
    id: id('what pours call it'),
    name: words('what the label says, in the maker’s words', 120).optional(),
    family: choice('family', ['epoxy', 'polyester', 'polyurethane', 'other']).default('epoxy'),
    like: choice('the generic class it is nearest to', ['deep', 'medium', 'thin']).optional(),
    ratio: z
      .strictObject({
        a: number('parts of A', 0.01, 1000),
        b: number('parts of B', 0.01, 1000),
        by: choice('what the parts are of', ['mass', 'volume'])
      })
      .optional()
      .meta({ description: 'mixing ratio of the label', sample: [{ a: 2, b: 1, by: 'volume' }] }),
    densityA: number('density of A, g/ml', 0.7, 2).optional(),
    densityB: number('density of B, g/ml', 0.7, 2).optional(),
    greatestDepth: length('greatest depth of one pour by the label', 0.5, 500).optional(),
    leastTemperature: temperature('coldest room by the label', -10, 40).optional(),
    potLife: z
      .strictObject({
        minutes: span('pot life', 1),
        mass: mass('at this mass', 10, 100_000).default(100),
        temperature: temperature('at this temperature', 5, 40).default(25)
      })
      .optional()
      .meta({
        description: 'pot life by the label: sets how fast the class is taken to be',
        sample: [{ minutes: 45 }]
      }),
    gelTime: timeAt('gel time of a thin film by the label').optional(),
    hardTime: timeAt('until a thin film is hard by the label').optional(),
    viscosity: number('viscosity of the fresh mix at 25 °C by the label, mPa·s', 20, 100_000).optional(),
    cupTests: z
      .array(cupTestSchema)
      .max(20)
      .default([])
      .meta({
        description: 'cups of it that were watched: the fullest of the last six says how it cures',
        sample: [[{ mass: 100, diameter: 70, room: 22, readings: CUP_SAMPLE }]]
      }),
    shrinkage: percent('volumetric shrinkage', 0, 12).optional(),
    packs: z
      .array(z.strictObject({ mass: mass('what is in it', 10), part: partField, ...price }))
      .max(20)
      .default([])
      .meta({
        description: 'packs it is sold in: A and B together, or each alone',
        sample: [[{ mass: 1500, price: 42 }]]
      }),
    stock: mass('on the shelf, A and B together in their ratio').default(0),
    lots: resinLotsField,
    keeps: keepsField,
    days: number('days until it is here', 0, 365).optional(),
    from: fromField
  })
  .meta({ description: 'a resin of the maker’s own', sample: [{ id: 'slow', like: 'deep' }] })

/** The maker's own facts. */
export const shopSchema = z
  .strictObject({
    castwright: z.literal(VERSION).meta({ description: 'version of this document', sample: [VERSION] }),
    $schema: words('where the schema lies, for editors', 300).optional(),
    name: words('name of the shop', 120).default('a small workshop'),
    timeZone: zoneField,
    units: z
      .strictObject({
        length: choice('of sizes and heights', ['mm', 'in', 'in fraction']).default('mm'),
        temperature: choice('of the room and the resin', ['°C', '°F']).default('°C')
      })
      .prefault({})
      .meta({
        description: 'units that sheets are written in; grams stay',
        sample: [{ length: 'in', temperature: '°F' }]
      }),
    currency: words('what prices are in, by the three letters banks use', 12, 'EUR').default('EUR'),
    climate: z
      .strictObject({
        night: temperature('coldest of the night', -20, 45).default(19),
        day: temperature('warmest of the day', -20, 45).default(22),
        humidity: percent('relative humidity', 1, 99).default(50),
        doubt: number('how far the room may stray, K', 0, 15).default(2)
      })
      .prefault({})
      .meta({ description: 'air of the room where it is cast', sample: [{ night: 18, day: 22 }] }),
    storage: z
      .strictObject({
        temperature: temperature('air', -20, 45),
        humidity: percent('relative humidity', 1, 99)
      })
      .optional()
      .meta({ description: 'air where the timber is kept', sample: [{ temperature: 15, humidity: 60 }] }),
    hours: z
      .strictObject({
        mon: openings,
        tue: openings,
        wed: openings,
        thu: openings,
        fri: openings,
        sat: openings,
        sun: openings
      })
      .optional()
      .meta({ description: 'hours at the bench', sample: [{ sat: ['09:00-17:00'] }] }),
    away: z
      .array(day('a day nobody is at the bench'))
      .max(400)
      .default([])
      .meta({ description: 'days nobody is at the bench: holidays, absence', sample: [['2026-12-25']] }),
    alarm: span('alarm in the calendar: so long before what must not begin late', 1, 1440).default(30),
    secondPair: yesNo('a second pair of hands can be had').default(false),
    machine: machineField.optional(),
    byHand: z
      .strictObject({
        router: length('a router along a template or a fence', 0.01, 5).default(0.3),
        drill: length('a drill: how much larger it cuts', 0.01, 5).default(0.2),
        saw: length('a saw', 0.01, 5).default(0.5),
        sled: length('a router on a sled', 0.01, 5).default(0.3)
      })
      .prefault({})
      .meta({
        description: 'how far the width of what is cut by hand is off',
        sample: [{ router: 0.2 }]
      }),
    hand: handField,
    minutes: z
      .array(
        z.strictObject({
          work: choice('kind of work', [
            'mill',
            'prepare',
            'mould',
            'water test',
            'set',
            'mix',
            'pour',
            'bubbles',
            'stones',
            'marble',
            'demould',
            'turn',
            'flatten',
            'pins',
            'cutter change',
            'test cut',
            'air cut',
            'cut',
            'hand cut',
            'mark',
            'fill',
            'level',
            'edge',
            'sand',
            'coat',
            'fit',
            'pack'
          ]),
          times: number('times the minutes that are reckoned', 0.1, 10)
        })
      )
      .max(40)
      .default([])
      .meta({
        description: 'how much longer or shorter work takes here than is reckoned',
        sample: [[{ work: 'sand', times: 1.3 }]]
      }),
    cutters: z
      .array(cutterField)
      .max(200)
      .superRefine(namedOnce)
      .default([])
      .meta({ description: 'cutters', sample: [[]] }),
    vessels: z
      .array(
        z.strictObject({
          capacity: volume('up to the brim', 20, 200_000),
          diameter: length('inside', 20, 1000),
          count: whole('how many', 1, 100).default(1)
        })
      )
      .min(1)
      .max(40)
      .default([
        { capacity: 250, diameter: 70, count: 4 },
        { capacity: 1000, diameter: 110, count: 4 },
        { capacity: 2500, diameter: 160, count: 2 },
        { capacity: 10_000, diameter: 260, count: 1 }
      ])
      .meta({ description: 'mixing vessels', sample: [[{ capacity: 1000, diameter: 110 }]] }),
    scale: z
      .strictObject({
        resolution: number('smallest step, g', 0.001, 100).default(1),
        most: mass('carries up to', 50).default(5000)
      })
      .prefault({})
      .meta({ description: 'the scale', sample: [{ resolution: 0.1 }] }),
    sander: z
      .strictObject({
        disc: length('diameter of the disc', 50, 400).default(150),
        minutes: span('that a disc cuts well; left out: 15 min in timber, 10 in resin', 1, 600).optional()
      })
      .prefault({})
      .meta({ description: 'the sander', sample: [{ disc: 125 }] }),
    resins: z
      .array(shopResin)
      .max(100)
      .superRefine(namedOnce)
      .default([])
      .meta({ description: 'resins of the maker’s own', sample: [[]] }),
    cards: z
      .array(cardField)
      .max(200)
      .default([])
      .meta({ description: 'hiding cards of pigments', sample: [[]] }),
    leftover: percent('what stays in the vessel', 0, 40).default(5),
    spare: percent('resin bought beyond the need', 0, 100).default(10),
    rates: z
      .strictObject({
        labour: number('an hour of work', 0, 10_000).optional(),
        hour: number('an hour as it is charged, all in, for a price by the hour', 0, 10_000).optional(),
        machine: number('an hour of the machine', 0, 10_000).optional(),
        overhead: percent('overhead on cost', 0, 500).default(15),
        margin: percent('margin on top', 0, 500).default(10),
        tax: percent('tax on the price', 0, 60).default(0),
        deposit: percent('paid beforehand, of the price with tax', 0, 100).default(30),
        valid: number('how long a quote holds, days', 1, 366).default(30),
        round: number(
          'what the client pays goes up to whole steps of this: 5, or 0.5',
          0.01,
          10_000
        ).optional()
      })
      .prefault({})
      .meta({ description: 'rates', sample: [{ labour: 35 }] }),
    prices: z
      .array(
        z.strictObject({
          item: words('what, as the buy list names it: its column "id"', 80),
          unit: words('per what: g, kg, oz, lb; ml, l; m, m²; piece', 40),
          price: number('price of a pack; left out: not known', 0, 1e6).optional(),
          pack: number('units in a pack', 0.001, 1e6).default(1),
          packs: z
            .array(z.strictObject({ pack: number('units in a pack', 0.001, 1e6), ...price }))
            .max(20)
            .default([])
            .meta({
              description: 'other packs it is sold in: those are bought that cost least together',
              sample: [[{ pack: 250, price: 34 }]]
            }),
          stock: number('units on the shelf', 0, 1e6).default(0),
          lots: lotsField,
          keeps: keepsField,
          days: number('days until it is here', 0, 365).default(0),
          from: fromField
        })
      )
      .max(1000)
      .default([])
      .meta({
        description: 'prices, stock and delivery',
        sample: [[{ item: 'white-paste', unit: 'g', pack: 50, price: 9 }]]
      }),
    suppliers: suppliersField.superRefine(namedOnce),
    sentOut: sentOutField,
    note: words('a note', 20_000).optional()
  })
  .superRefine(suppliersKnown)
  .meta({ id: 'shop', title: 'Castwright shop', description: 'the maker’s own facts' })

export type ShopDocument = z.input<typeof shopSchema>
export type Shop = z.output<typeof shopSchema>
export type ShopMachine = NonNullable<Shop['machine']>
export type ShopCutter = Shop['cutters'][number]
export type ShopResin = Shop['resins'][number]
export type ShopCupTest = ShopResin['cupTests'][number]
export type CupTestDocument = z.input<typeof cupTestSchema>
