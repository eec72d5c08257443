import { z } from 'zod'
import { angle, exactlyOne, length, number, point, size, words } from './field.ts'

/**
 * A plane shape as a document gives it, seen from the front, mm, x to the right, y away from the maker.
 * One of `circle`, `rectangle`, `polygon`, `path`, `file`, `union`, `difference`, `common` says what it is;
 * `at` and `turn` place it. Paths and files are read as SVG reads them (y down) and set upright.
 */
export interface ShapeDocument {
  circle?: number | string | undefined
  rectangle?: [number | string, number | string] | undefined
  corner?: number | string | undefined
  polygon?: [number | string, number | string][] | undefined
  holes?: [number | string, number | string][][] | undefined
  path?: string | undefined
  file?: string | undefined
  part?: string | undefined
  scale?: number | undefined
  union?: ShapeDocument[] | undefined
  difference?: ShapeDocument[] | undefined
  common?: ShapeDocument[] | undefined
  grow?: number | string | undefined
  at?: [number | string, number | string] | undefined
  turn?: number | undefined
}

/** A plane shape read: lengths are numbers in mm. */
export interface Shape {
  circle?: number | undefined
  rectangle?: [number, number] | undefined
  corner?: number | undefined
  polygon?: [number, number][] | undefined
  holes?: [number, number][][] | undefined
  path?: string | undefined
  file?: string | undefined
  part?: string | undefined
  scale?: number | undefined
  union?: Shape[] | undefined
  difference?: Shape[] | undefined
  common?: Shape[] | undefined
  grow?: number | undefined
  at?: [number, number] | undefined
  turn?: number | undefined
}

const points = (description: string) =>
  z
    .array(point('a corner'))
    .min(3)
    .max(30_000)
    .meta({
      description,
      sample: [
        [
          [0, 0],
          [300, 0],
          [300, 200]
        ]
      ]
    })

const inner: z.ZodType<Shape, ShapeDocument> = z.lazy(() => shape)

const kinds = ['circle', 'rectangle', 'polygon', 'path', 'file', 'union', 'difference', 'common'] as const

export const shape: z.ZodType<Shape, ShapeDocument> = exactlyOne(
  z.strictObject({
    circle: size('a circle: its diameter').optional(),
    rectangle: z
      .tuple([size('width'), size('height')])
      .optional()
      .meta({ description: 'a rectangle about its centre: [width, height]', sample: [[300, 200]] }),
    corner: length('radius of the corners of a rectangle', 0, 5000).optional(),
    polygon: points('corners in order: [[x, y], ...]').optional(),
    holes: z
      .array(points('a hole'))
      .max(1000)
      .optional()
      .meta({ description: 'holes of a polygon', sample: [[]] }),
    path: words('SVG path data in mm, y down as in SVG', 2_000_000).optional(),
    file: words('an SVG file beside the piece file', 200).optional(),
    part: words('the id of the element of that file; without it all of them', 200).optional(),
    scale: number('factor on a path or file', 0.001, 1000).optional(),
    union: z
      .array(inner)
      .min(1)
      .max(200)
      .optional()
      .meta({ description: 'all of these shapes together', sample: [[{ circle: 60 }]] }),
    difference: z
      .array(inner)
      .min(2)
      .max(200)
      .optional()
      .meta({ description: 'the first shape less the others', sample: [[{ circle: 60 }, { circle: 20 }]] }),
    common: z
      .array(inner)
      .min(2)
      .max(200)
      .optional()
      .meta({
        description: 'what these shapes have in common',
        sample: [[{ circle: 60 }, { rectangle: [40, 40] }]]
      }),
    grow: length('moves the edge outward (negative: inward)', -5000, 5000).optional(),
    at: point('where its centre, or the origin of its points, lies: [x, y]').optional(),
    turn: angle('turned counter-clockwise about `at`').optional()
  }),
  kinds
).meta({
  id: 'shape',
  description: 'a plane shape',
  sample: [{ rectangle: [300, 200], corner: 12 }]
}) as z.ZodType<Shape, ShapeDocument>
