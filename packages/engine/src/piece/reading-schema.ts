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
  span,
  temperature,
  volume,
  words
} from './field.ts'
import { quotedField, usedField } from './quoted-field.ts'

/** Who a reading is: made once, never changed. */
const ID = /^[A-Za-z0-9-]{8,64}$/

const common = {
  id: z
    .string()
    .regex(ID)
    .meta({
      description:
        'made by whoever took the reading, so that it counts once: 8 to 64 letters, digits, dashes',
      sample: ['r-2026-11-28-0001']
    }),
  at: moment('when it was taken'),
  note: words('a note').optional()
}

const what = id('the entry it is about')
const step = words('the key of a step, as plan.json and the run sheet name it', 120, 'pour green')

/** What goes differently at a bench, in the words of whoever stands there. */
export const TROUBLES = [
  'height short',
  'height over',
  'missed marbling',
  'missed recoat',
  'hot batch',
  'soft cure',
  'bow over',
  'hole misplaced',
  'stones proud',
  'stones sunk',
  'bubble',
  'thickness under',
  'fit tight',
  'fit loose',
  'timber parted',
  'leak',
  'cutter broken',
  'pins off'
] as const

/** Most water taken for timber, % of its dry mass: basic gravity 0.38 quite full (Wood Handbook eq. 4-3; memory). */
const MOST_MOISTURE = 200

/** Longest lot, characters: a mark of 60 of each part, as the shelf has them, with "(A), " and "(B)". */
export const MOST_LOT = 130

/** Something measured at the bench: one line of a readings file. */
export const readingSchema = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('mixed'),
      pour: what,
      mass: mass('in the vessel', 0.1).optional(),
      lot: words('the lot it was mixed from, or that of each part', MOST_LOT, 'K2').optional(),
      ...common
    }),
    z.strictObject({
      kind: z.literal('poured'),
      pour: what,
      mass: mass('out of the vessel', 0.1),
      ...common
    }),
    z.strictObject({
      kind: z.literal('height'),
      pour: what,
      height: length('level as cast', 0, 1000),
      ...common
    }),
    z.strictObject({
      kind: z.literal('temperature'),
      pour: what.optional(),
      temperature: temperature('measured', -30, 300),
      ...common
    }),
    z.strictObject({ kind: z.literal('humidity'), humidity: percent('relative humidity'), ...common }),
    z.strictObject({
      kind: z.literal('stage'),
      pour: what,
      stage: choice('what it does', ['strings', 'tacky', 'gelled', 'hard']),
      ...common
    }),
    z.strictObject({ kind: z.literal('demoulded'), ...common }),
    z.strictObject({ kind: z.literal('thickness'), thickness: length('measured', 0.1, 1000), ...common }),
    z.strictObject({
      kind: z.literal('flatness'),
      face: choice('face', ['front', 'back']),
      out: length('out of flat, greatest', 0, 100),
      ...common
    }),
    z.strictObject({
      kind: z.literal('moisture'),
      timber: what,
      moisture: percent('measured', 0, 60),
      way: choice('pins: a resistance meter; pinless: held against it; oven-dry: a sample', [
        'pins',
        'pinless',
        'oven-dry'
      ]).optional(),
      depth: length('how deep the pins read, insulated but for their tips', 0.1, 200).optional(),
      setting: words('timber the meter was set to, by id or name of the catalogue', 80).optional(),
      temperature: temperature('of the timber', -10, 60).optional(),
      ...common
    }),
    z.strictObject({
      kind: z.literal('weight'),
      timber: what,
      mass: mass('the whole timber, weighed', 1),
      moisture: percent('its moisture then, when known', 0, 60).optional(),
      ...common
    }),
    z
      .strictObject({
        kind: z.literal('sample'),
        timber: what,
        wet: mass('sample cut from it, at once', 0.1),
        dry: mass('the same dried in the oven until it lost no more', 0.1),
        ...common
      })
      .superRefine(({ wet, dry }, ctx) => {
        if (wet >= dry && wet <= (1 + MOST_MOISTURE / 100) * dry) return
        ctx.addIssue({
          code: 'custom',
          message: 'no sample of timber',
          path: ['dry'],
          params: {
            meaning: true,
            allowed: `${Math.ceil((wet * 10) / (1 + MOST_MOISTURE / 100)) / 10} to ${wet} g: it loses water in the oven, at most ${MOST_MOISTURE} % of what is left`,
            example: String(Math.round(wet / 0.111) / 10)
          }
        })
      }),
    z.strictObject({
      kind: z.literal('corners'),
      corners: z.array(place('what a corner reads high')).length(4),
      ...common
    }),
    z.strictObject({
      kind: z.literal('cup check'),
      volume: volume('water filled to the mark', 1, 10_000),
      mass: mass('what it weighed', 0.1),
      ...common
    }),
    z.strictObject({
      kind: z.literal('water test'),
      lost: mass('water lost'),
      over: span('in this time', 1),
      ...common
    }),
    z.strictObject({
      kind: z.literal('pin'),
      pin: number('which', 1, 20),
      x: place('measured'),
      y: place('measured'),
      ...common
    }),
    z.strictObject({
      kind: z.literal('place'),
      face: choice('the face that is up', ['front', 'back']),
      marks: z
        .array(
          z.strictObject({
            drawn: point('where the piece has it, seen from the front'),
            measured: point('where the machine found it, from the zero of the setting')
          })
        )
        .min(2)
        .max(20)
        .meta({
          description: 'marks touched on the machine',
          sample: [
            [
              { drawn: [-100, 0], measured: [-99.8, 0.1] },
              { drawn: [100, 0], measured: [100.2, 0.3] }
            ]
          ]
        }),
      ...common
    }),
    exactlyOne(
      z.strictObject({
        kind: z.literal('edge'),
        face: choice('the face that is up', ['front', 'back']),
        side: choice('the outermost edge of the casting on that side, seen from the front', [
          'left',
          'right',
          'near',
          'far'
        ]).optional(),
        along: z
          .tuple([point('on the edge, seen from the front'), point('on the edge')])
          .meta({
            description: 'a straight edge of casting or outline, by two of its points',
            sample: [
              [
                [-100, -50],
                [100, -50]
              ]
            ]
          })
          .optional(),
        measured: z
          .array(point('middle of the tip as it touched, from the zero of the setting'))
          .min(1)
          .max(20)
          .meta({
            description: 'places touched along the edge',
            sample: [
              [
                [-80, -53],
                [80, -53.2]
              ]
            ]
          }),
        radius: length('of the tip it was touched with', 0, 50),
        ...common
      }),
      ['side', 'along']
    ),
    z.strictObject({
      kind: z.literal('film'),
      face: choice('face', ['front', 'back']),
      film: length('dry film', 0, 10),
      ...common
    }),
    z.strictObject({
      kind: z.literal('size'),
      cut: what,
      across: length('measured across it, where it is narrowest', 0.1, 10_000),
      ...common
    }),
    z.strictObject({ kind: z.literal('began'), step, ...common }),
    z.strictObject({
      kind: z.literal('done'),
      step,
      minutes: span('it took', 0).optional(),
      ...common
    }),
    z.strictObject({ kind: z.literal('minutes'), step, minutes: span('it took', 0), ...common }),
    z.strictObject({
      kind: z.literal('trouble'),
      trouble: choice('what went differently', TROUBLES),
      of: what.optional(),
      by: length('by how much', 0, 1000).optional(),
      ...common
    }),
    z.strictObject({
      kind: z.literal('withdrawn'),
      reading: z
        .string()
        .regex(ID)
        .meta({
          description: 'the id of a reading that was a mistake: both stay, neither counts',
          sample: ['r-2026-11-28-0001']
        }),
      ...common
    }),
    z.strictObject({ kind: z.literal('used'), ...usedField, ...common }),
    z.strictObject({ kind: z.literal('quoted'), ...quotedField, ...common }),
    z.strictObject({
      kind: z.literal('photo'),
      photo: words('name of the picture', 200),
      step: step.optional(),
      ...common
    }),
    z.strictObject({ kind: z.literal('note'), step: step.optional(), ...common })
  ])
  .meta({ id: 'reading', title: 'Castwright reading', description: 'something measured, done or quoted' })

export type Reading = z.output<typeof readingSchema>
