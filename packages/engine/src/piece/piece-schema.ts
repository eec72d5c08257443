import { z } from 'zod'
import { cutField, edgeField, hardwareField, holdingField, markingField } from './cut-field.ts'
import { choice, day, length, moment, percent, temperature, whole, words } from './field.ts'
import { finishField } from './finish-field.ts'
import { mouldField } from './mould-field.ts'
import { outsideField } from './outside-field.ts'
import { pinsField } from './pins-field.ts'
import { pourField } from './pour-field.ts'
import { shape } from './shape-field.ts'
import { stepField } from './step-field.ts'
import { supportField } from './support-field.ts'
import { timberField } from './timber-field.ts'

/** The version of the documents this build writes. */
export const VERSION = 1

const some = <T extends z.ZodType>(entry: T, most: number, description: string) =>
  z
    .array(entry)
    .max(most)
    .meta({ description, sample: [[]] })

const air = z
  .strictObject({
    temperature: temperature('air', -30, 60),
    humidity: percent('relative humidity', 0, 100)
  })
  .meta({ description: 'air', sample: [{ temperature: 21, humidity: 40 }] })

/** Where the piece will live: one kind of room, or its driest and dampest air. */
const climateField = z
  .union([
    words('a room of the catalogue, by id or name', 80),
    z.strictObject({ dry: air, damp: air }).superRefine(({ dry, damp }, ctx) => {
      if (dry.humidity <= damp.humidity) return
      ctx.addIssue({
        code: 'custom',
        message: 'damper than the dampest',
        path: ['dry', 'humidity'],
        params: {
          meaning: true,
          allowed: `at most the ${damp.humidity} % of the dampest air`,
          example: String(Math.min(30, damp.humidity))
        }
      })
    })
  ])
  .meta({
    id: 'climate',
    description: 'a room of the catalogue, or its driest and dampest air',
    sample: ['heated-room']
  })

const quantityField = z
  .union([
    z.int().min(1).max(500),
    z.strictObject({
      pieces: whole('good pieces wanted', 1, 500),
      blanks: whole('blanks started; left out: as many as the certainty asks for', 1, 2000).optional(),
      loss: percent('chance that one blank is lost', 0, 90).default(5),
      certainty: percent('how sure the maker wants to be', 50, 99.9).default(90),
      gang: whole('pieces cast side by side in one mould', 1, 200).default(1)
    })
  ])
  .meta({ description: 'how many: a number, or pieces with loss, certainty and gang', sample: [12] })

/** The object and its document. */
export const pieceSchema = z
  .strictObject({
    castwright: z.literal(VERSION).meta({ description: 'version of this document', sample: [VERSION] }),
    $schema: words('where the schema lies, for editors', 300).optional(),
    name: words('name of the piece', 120),
    about: words('what it is, for whom').optional(),
    kind: choice('the kind it was started from', [
      'panel',
      'tray',
      'tabletop',
      'dial',
      'boards',
      'lamp',
      'other'
    ]).optional(),
    quantity: quantityField.default(1),
    outline: shape.describe('outline of the finished piece'),
    down: choice('which face lies down in the mould', ['back', 'front']).default('back'),
    tolerance: length('how far a flattened curve may stray', 0.001, 0.5).default(0.01),
    mould: mouldField.prefault({}),
    flatten: z
      .strictObject({
        back: length('taken off the back', 0, 60).default(1),
        front: length('taken off the front, sanding included', 0, 60).default(1)
      })
      .prefault({})
      .meta({ description: 'what flattening each face takes off', sample: [{ back: 1, front: 1 }] }),
    timbers: some(timberField, 200, 'wooden parts set in the mould').default([]),
    pours: z
      .array(pourField)
      .min(1)
      .max(100)
      .meta({ description: 'pours in order', sample: [[{ resin: 'medium', depth: 8 }]] }),
    flatness: length(
      'how far from flat a straightedge of 300 mm may show a face; left out: what is usual for the kind',
      0.05,
      20
    ).optional(),
    cuts: some(cutField, 500, 'what is cut away').default([]),
    hardware: some(hardwareField, 200, 'bought-in parts').default([]),
    markings: some(markingField, 100, 'scales, lines, figures').default([]),
    edges: some(edgeField, 10, 'edges worked').default([]),
    finish: finishField.default({}),
    holding: holdingField.prefault({}),
    pins: pinsField.optional(),
    climate: climateField.default('heated-room'),
    sun: z
      .boolean()
      .default(false)
      .meta({ description: 'stands in direct sun', sample: [false] }),
    supports: supportField.optional(),
    outside: outsideField,
    food: choice('the face that touches food', ['none', 'front', 'back', 'both']).default('none'),
    wanted: day('when it must be ready').optional(),
    start: moment('when work may begin').optional(),
    placed: z
      .array(
        z.strictObject({
          task: words('a task of the calendar, by its name there', 200, 'pour green: mix'),
          at: moment('when it begins')
        })
      )
      .max(200)
      .default([])
      .meta({
        description: 'tasks that are put at a moment by hand: the calendar goes round them',
        sample: [[{ task: 'pour green: mix', at: '2026-12-05T09:00+01:00' }]]
      }),
    steps: z
      .array(stepField)
      .min(1)
      .max(2000)
      .optional()
      .meta({
        description: 'the order of the build, when it is not the usual one',
        sample: [[{ do: 'make mould' }]]
      }),
    note: words('a note', 20_000).optional()
  })
  .meta({ id: 'piece', title: 'Castwright piece', description: 'a one-off piece of timber and cast resin' })

/** A piece as a file holds it: strings with units, defaults left out. */
export type PieceDocument = z.input<typeof pieceSchema>
/** A piece read: numbers in the fixed units, defaults in place. */
export type Piece = z.output<typeof pieceSchema>
export type Timber = Piece['timbers'][number]
export type Pour = Piece['pours'][number]
export type Cut = Piece['cuts'][number]
export type Hardware = Piece['hardware'][number]
export type Marking = Piece['markings'][number]
export type Mould = Piece['mould']
export type Pins = NonNullable<Piece['pins']>
export type StepDocument = NonNullable<Piece['steps']>[number]
export type Face = Cut['face']
