import { z } from 'zod'
import { noSuchDay } from '../quantity/day.ts'
import { parseQuantity, quantityHint, quantityPattern } from '../quantity/parse.ts'
import type { Dimension } from '../quantity/unit.ts'

/**
 * Fields of the documents. A quantity is a JSON number in the document's fixed unit (mm, g, ml, °C, min, %)
 * or a string with a unit, which stays in the document as typed; reading it gives the number.
 *
 * What JSON Schema can say stands in the schema (type, range of a number, form of a string). The range of a
 * string cannot be said there: it is checked when the string is read, as an issue marked `meaning`.
 * `sample` becomes `examples` in the published schema.
 */
export interface QuantityField {
  readonly dimension: Dimension
  readonly min: number
  readonly max: number
}

function quantity(dimension: Dimension, min: number, max: number, description: string) {
  const sign = min < 0 ? 'any' : 'positive'
  return z
    .union([
      z.number().min(min).max(max),
      z
        .string()
        .max(40)
        .regex(new RegExp(quantityPattern(dimension, sign)))
    ])
    .transform((typed, ctx): number => {
      if (typeof typed === 'number') return typed
      const value = parseQuantity(typed, dimension)?.value ?? Number.NaN
      if (!(value >= min && value <= max)) {
        ctx.addIssue({ code: 'custom', message: 'out of range', params: { meaning: true } })
      }
      return value
    })
    .meta({
      description: `${description} (${quantityHint(dimension)})`,
      'x-quantity': { dimension, min, max } satisfies QuantityField,
      sample: [sample(dimension, min, max)]
    })
}

function sample(dimension: Dimension, min: number, max: number): number {
  const usual = { length: 18, mass: 300, volume: 250, temperature: 21, time: 120, percent: 12 }[dimension]
  return Math.min(max, Math.max(min, usual))
}

/** A length, mm. Largest 10 m: a longer piece is not made in a mould. */
export const length = (description: string, min = 0, max = 10_000) =>
  quantity('length', min, max, description)
/** A length above zero, mm: nothing made is thinner than a hundredth. */
export const size = (description: string, max = 10_000) => quantity('length', 0.01, max, description)
/** A place along an axis, mm, either sign. */
export const place = (description: string) => quantity('length', -10_000, 10_000, description)
/** A mass, g; up to 2 t. */
export const mass = (description: string, min = 0, max = 2_000_000) => quantity('mass', min, max, description)
/** A volume, ml. */
export const volume = (description: string, min = 0, max = 2_000_000) =>
  quantity('volume', min, max, description)
/** A temperature, °C. */
export const temperature = (description: string, min = -30, max = 90) =>
  quantity('temperature', min, max, description)
/** A span of time, min; up to a year. */
export const span = (description: string, min = 0, max = 366 * 24 * 60) =>
  quantity('time', min, max, description)
/** A share, %. */
export const percent = (description: string, min = 0, max = 100) => quantity('percent', min, max, description)

/** A plain number without unit. */
export const number = (description: string, min: number, max: number) =>
  z
    .number()
    .min(min)
    .max(max)
    .meta({ description, sample: [min > 0 ? min : Math.min(max, 1)] })

/** A whole number. */
export const whole = (description: string, min: number, max: number) =>
  z
    .int()
    .min(min)
    .max(max)
    .meta({ description, sample: [Math.max(min, 1)] })

/** An angle, degrees, counter-clockwise from the x axis. */
export const angle = (description: string, min = -360, max = 360) =>
  z
    .number()
    .min(min)
    .max(max)
    .meta({ description: `${description} (degrees)`, sample: [90] })

/** A name inside the document: what other entries point at. */
export const id = (description: string) =>
  z
    .string()
    .regex(/^[A-Za-z0-9À-ɏ][A-Za-z0-9À-ɏ _.-]{0,59}$/)
    .meta({
      description: `${description} (letters, digits, blank, dot, dash; at most 60)`,
      sample: ['green']
    })

/** Words for people. */
export const words = (description: string, max = 2000, example = 'a few words') =>
  z
    .string()
    // Counted in code points, as JSON Schema counts; zod's own max counts UTF-16 units.
    .refine(s => s.length > 0 && (s.length <= max || [...s].length <= max), { params: { maxLength: max } })
    .meta({ description, minLength: 1, maxLength: max, sample: [example] })

/** One of several words. */
export function choice<const T extends readonly [string, ...string[]]>(description: string, options: T) {
  return z.enum(options).meta({ description, sample: [options[0]] })
}

/** Yes or no. */
export const yesNo = (description: string) => z.boolean().meta({ description, sample: [true] })

// The form of a date stands in the schema; that February has 28 days is meaning.
function onCalendar(text: string, ctx: z.core.$RefinementCtx<string>): void {
  const wrong = noSuchDay(text)
  if (wrong)
    ctx.addIssue({
      code: 'custom',
      message: 'no such day',
      params: { meaning: true, allowed: wrong.allowed, example: JSON.stringify(wrong.last) }
    })
}

/** A moment: ISO 8601 with offset, on a day of the calendar. */
export const moment = (description: string) =>
  z
    .string()
    .regex(
      /^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])T([01][0-9]|2[0-3]):[0-5][0-9](:[0-5][0-9])?(Z|[+-]([01][0-9]|2[0-3]):[0-5][0-9])$/
    )
    .superRefine(onCalendar)
    .meta({
      description: `${description} (YYYY-MM-DDThh:mm and offset, ISO 8601)`,
      sample: ['2026-12-05T09:00+01:00']
    })

/** A day of the calendar: ISO 8601. */
export const day = (description: string) =>
  z
    .string()
    .regex(/^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$/)
    .superRefine(onCalendar)
    .meta({ description: `${description} (YYYY-MM-DD, ISO 8601)`, sample: ['2026-12-19'] })

/** A point on the plan: [x, y], mm. */
export const point = (description: string) =>
  z.tuple([place('x'), place('y')]).meta({ description, sample: [[0, 40]] })

type Keys<T extends z.ZodObject> = readonly (keyof T['shape'] & string)[]

/** Adds to an object that exactly one of `keys` must be there, in zod and in the published schema alike. */
export function exactlyOne<T extends z.ZodObject>(object: T, keys: Keys<T>): T {
  return counted(object, keys, 1, { oneOf: keys.map(k => ({ required: [k] })) })
}

/** Like {@link exactlyOne}, but none is allowed too. */
export function atMostOne<T extends z.ZodObject>(object: T, keys: Keys<T>): T {
  const some = keys.map(k => ({ required: [k] }))
  return counted(object, keys, 0, { oneOf: [...some, { not: { anyOf: some } }] })
}

function counted<T extends z.ZodObject>(object: T, keys: Keys<T>, least: 0 | 1, rule: object): T {
  const before = (object.meta()?.['allOf'] as object[] | undefined) ?? []
  return object
    .superRefine((value, ctx) => {
      const got = keys.filter(k => (value as Record<string, unknown>)[k] !== undefined)
      if (got.length > 1 || got.length < least) {
        ctx.addIssue({ code: 'custom', message: 'one of several', params: { oneOf: keys, got, least } })
      }
    })
    .meta({ allOf: [...before, rule] }) as T
}
