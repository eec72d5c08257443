import { decimals } from '../quantity/format.ts'
import { kept } from '../quantity/kept.ts'
import { circle, polygon, rectangle } from '../shape/build.ts'
import { holesOutside } from '../shape/check.ts'
import { difference, intersection, union } from '../shape/combine.ts'
import { area, bounds } from '../shape/measure.ts'
import { offset } from '../shape/offset.ts'
import { parsePath } from '../shape/path.ts'
import type { Region, Ring } from '../shape/region.ts'
import { regionOfRings } from '../shape/region.ts'
import { selfCrossing } from '../shape/self-crossing.ts'
import type { SvgReading } from '../shape/svg.ts'
import { readSvg } from '../shape/svg.ts'
import { SvgError } from '../shape/svg-error.ts'
import { mirrorY, rotate, scale, translate } from '../shape/transform.ts'
import { InputProblem, oneOf } from './problem.ts'
import type { Shape } from './shape-field.ts'

/** The texts of the files a piece names, by name. The engine reads no files: whoever calls it does. */
export type Files = Readonly<Record<string, string>>

/** Largest coordinate of a placed shape, mm: the documents' own range of places, and a shape about it. */
const FARTHEST_MM = 30_000

/**
 * The plane region a shape of a document stands for, mm, seen from the front.
 * `at` is the JSON Pointer of the shape, for messages; `tolMm` the most a curve may stray from its chords.
 * @throws InputProblem for an outline that crosses itself, a hole outside, an empty region, a missing or bad file
 */
export function regionOf(shape: Shape, tolMm: number, files: Files, at: string, source: string): Region {
  const fail = (path: string, found: string, allowed: string, example = ''): never => {
    throw new InputProblem(source, [{ path, found, allowed, example }])
  }
  const part = (s: Shape, key: string, i: number) => regionOf(s, tolMm, files, `${at}/${key}/${i}`, source)
  let region: Region
  if (shape.circle !== undefined) {
    region = circle(shape.circle, tolMm)
  } else if (shape.rectangle !== undefined) {
    const [w, h] = shape.rectangle
    const corner = shape.corner ?? 0
    if (corner > Math.min(w, h) / 2) {
      fail(
        `${at}/corner`,
        `${corner}`,
        `at most half the shorter side, ${decimals(Math.min(w, h) / 2, 3)} mm`,
        `${decimals(Math.min(w, h) / 4, 1)}`
      )
    }
    region = rectangle(w, h, corner, tolMm)
  } else if (shape.polygon !== undefined) {
    const outer = flat(shape.polygon)
    const holes = (shape.holes ?? []).map(flat)
    ;[outer, ...holes].forEach((ring, i) => {
      const path = i === 0 ? `${at}/polygon` : `${at}/holes/${i - 1}`
      sound(ring, path, fail)
    })
    const outside = holesOutside(outer, holes)
    if (outside !== null)
      fail(
        `${at}/holes/${outside}`,
        'a hole that leaves its outline, or cuts another hole',
        'holes inside the outline, apart from each other'
      )
    region = polygon(outer, holes)
  } else if (shape.path !== undefined) {
    region = closedPath(shape.path, tolMm * (1 / (shape.scale ?? 1)), `${at}/path`, fail)
  } else if (shape.file !== undefined) {
    region = fromFile(shape, tolMm, files, at, fail)
  } else if (shape.union !== undefined) {
    region = union(...shape.union.map((s, i) => part(s, 'union', i)))
  } else if (shape.difference !== undefined) {
    const [first, ...rest] = shape.difference.map((s, i) => part(s, 'difference', i))
    region = difference(first!, union(...rest))
  } else {
    region = shape.common!.map((s, i) => part(s, 'common', i)).reduce(intersection)
  }
  // Held at each step: the kernels that move an edge have a bound of their own.
  const held = (r: Region): Region => {
    if (r.rings.length === 0 || !(area(r) > 1e-6))
      fail(at, 'a shape with no area', 'a shape that encloses something')
    const b = bounds(r)
    const far = Math.max(-b.minX, -b.minY, b.maxX, b.maxY)
    if (!(far <= FARTHEST_MM))
      fail(at, `a shape that reaches ${decimals(far, 0)} mm from the origin`, `at most ${FARTHEST_MM} mm`)
    return r
  }
  const points = region.rings.reduce((sum, ring) => sum + ring.length / 2, 0)
  if (points > MOST_SHAPE_POINTS)
    fail(at, `a shape of ${points} points`, `at most ${MOST_SHAPE_POINTS}: draw it with fewer`)
  if (shape.scale !== undefined) region = scale(region, shape.scale)
  region = held(region)
  if (shape.grow) region = held(offset(region, shape.grow, { join: 'round', tolMm }))
  if (shape.turn) region = rotate(region, shape.turn)
  if (shape.at !== undefined) region = translate(region, shape.at[0], shape.at[1])
  return held(region)
}

/** Most points of a shape: one drawn to confuse costs the square of them. */
const MOST_SHAPE_POINTS = 30_000

/** Most points of the line of a groove: one that crosses itself costs their square. */
const MOST_LINE_POINTS = 4000

/** The lines (open or closed) of an SVG path of a document, set upright, mm. @throws InputProblem */
export function linesOf(d: string, tolMm: number, at: string, source: string): Float64Array[] {
  try {
    const { rings, open } = parsePath(d, tolMm)
    const closed = rings.map(r => {
      const line = new Float64Array(r.length + 2)
      line.set(r)
      line.set(r.subarray(0, 2), r.length)
      return line
    })
    const lines = [...closed, ...open].map(upright)
    const points = lines.reduce((sum, l) => sum + l.length / 2, 0)
    if (points > MOST_LINE_POINTS)
      throw new Error(`a line of ${points} points once it is flattened; at most ${MOST_LINE_POINTS}`)
    return lines
  } catch (e) {
    throw new InputProblem(source, [
      { path: at, found: said(e), allowed: 'SVG path data', example: '"M 0 0 L 80 0"' }
    ])
  }
}

function closedPath(
  d: string,
  tolMm: number,
  at: string,
  fail: (path: string, found: string, allowed: string, example?: string) => never
): Region {
  let rings: Ring[]
  let open: Float64Array[]
  try {
    ;({ rings, open } = parsePath(d, tolMm))
  } catch (e) {
    return fail(at, said(e), 'SVG path data', '"M 0 0 H 80 V 40 H 0 Z"')
  }
  if (rings.length === 0) {
    return fail(
      at,
      open.length > 0 ? 'a path that is not closed' : 'an empty path',
      'a closed path: end it with Z',
      '"M 0 0 H 80 V 40 H 0 Z"'
    )
  }
  const points = rings.reduce((sum, ring) => sum + ring.length / 2, 0)
  if (points > MOST_SHAPE_POINTS)
    return fail(at, `a path of ${points} points once it is flattened`, `at most ${MOST_SHAPE_POINTS}`)
  for (const ring of rings) sound(ring, at, fail)
  return mirrorY(regionOfRings(rings))
}

// A drawing stays as it is while the piece is edited: a few parts of one or two files.
const readings = new Map<string, SvgReading>()
const MOST_READINGS = 16

function fromFile(
  shape: Shape,
  tolMm: number,
  files: Files,
  at: string,
  fail: (path: string, found: string, allowed: string, example?: string) => never
): Region {
  const name = shape.file!
  const text = Object.hasOwn(files, name) ? files[name] : undefined
  if (text === undefined)
    return fail(`${at}/file`, `"${name}", which could not be read`, 'an SVG file beside the piece file')
  try {
    const tol = tolMm * (1 / (shape.scale ?? 1))
    const reading = kept(
      readings,
      `${tol} ${JSON.stringify(shape.part ?? null)} ${text}`,
      () => readSvg(text, { tolMm: tol, ...(shape.part === undefined ? {} : { id: shape.part }) }),
      MOST_READINGS
    )
    if (reading.region.rings.length === 0) {
      const ids = reading.shapes.map(s => s.id).filter(id => id !== null)
      return fail(
        shape.part === undefined ? `${at}/file` : `${at}/part`,
        shape.part === undefined
          ? `no closed shape in "${name}"`
          : `no closed shape with the id "${shape.part}" in "${name}"`,
        ids.length === 0 ? 'a file with closed paths or basic shapes' : oneOf(ids)
      )
    }
    return reading.region
  } catch (e) {
    if (!(e instanceof SvgError)) throw e
    return fail(`${at}/file`, `"${name}": ${e.message}`, 'an SVG file of paths and basic shapes')
  }
}

function sound(
  ring: Ring,
  path: string,
  fail: (path: string, found: string, allowed: string) => never
): void {
  const cross = selfCrossing(ring)
  if (cross)
    fail(
      path,
      `an outline that crosses itself near (${decimals(cross.x, 1)}, ${decimals(cross.y, 1)})`,
      'an outline that does not cross itself'
    )
}

function flat(points: readonly (readonly [number, number])[]): Ring {
  const ring = new Float64Array(points.length * 2)
  points.forEach(([x, y], i) => {
    ring[2 * i] = x
    ring[2 * i + 1] = y
  })
  return ring
}

function upright(line: Float64Array): Float64Array {
  const out = line.slice()
  for (let i = 1; i < out.length; i += 2) out[i] = -out[i]!
  return out
}

function said(e: unknown): string {
  return e instanceof Error ? e.message : String(e)
}
