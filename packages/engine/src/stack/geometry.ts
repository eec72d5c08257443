import type { Entries } from '../piece/entry.ts'
import type { Marking, Mould, Piece, Timber } from '../piece/piece-schema.ts'
import type { Problem } from '../piece/problem.ts'
import { InputProblem } from '../piece/problem.ts'
import type { Files } from '../piece/region.ts'
import { linesOf, regionOf } from '../piece/region.ts'
import type { Shape } from '../piece/shape-field.ts'
import { decimals } from '../quantity/format.ts'
import { rectangle } from '../shape/build.ts'
import { difference, intersection, union } from '../shape/combine.ts'
import { area, bounds, centroid } from '../shape/measure.ts'
import type { Bounds, Region } from '../shape/region.ts'
import type { Solid } from './solid.ts'
import { solidOf } from './solid.ts'
import type { Top } from './top.ts'

/** Every plane shape of a piece as a region, and its timbers as bodies. Lists run with the piece's own. */
export interface Geometry {
  readonly outline: Region
  /** Inside of the mould on the plan, ears included. */
  readonly mould: Region
  readonly formers: readonly { readonly region: Region; readonly from: number; readonly to: number | null }[]
  readonly timbers: readonly Solid[]
  /** null: the whole mould. */
  readonly pourRegions: readonly (Region | null)[]
  /** Per pour and per stones entry: the zone, or null for the whole pour and for placed ones. */
  readonly zones: readonly (readonly (Region | null)[])[]
  /** Region of a cut given by its shape; null for a groove along a line. */
  readonly cutRegions: readonly (Region | null)[]
  readonly cutLines: readonly (readonly Float64Array[] | null)[]
  readonly markingLines: readonly (readonly Float64Array[])[]
  readonly keepClear: readonly Region[]
}

/** Least area two regions must share to count as overlapping, mm²: a line drawn twice does not. */
const OVERLAP_MM2 = 0.5
/** How far a timber may stand out of the mould before it is an error, mm: rounding of a drawing. */
const STRAY_MM2 = 0.5

/** Builds all regions. @throws InputProblem for bad shapes, timbers that overlap or leave the mould */
export function geometryOf(piece: Piece, entries: Entries, files: Files, source: string): Geometry {
  const tol = piece.tolerance
  const region = (shape: Shape, at: string) => regionOf(shape, tol, files, at, source)
  const outline = region(piece.outline, '/outline')
  const mould = mouldRegion(piece.mould, outline, region)
  const timbers = entries.timbers.map(t => bodyOf(t.value, t.at, region, source))
  const geometry: Geometry = {
    outline,
    mould,
    formers: piece.mould.formers.map((f, i) => ({
      region: region(f.shape, `/mould/formers/${i}/shape`),
      from: f.from,
      to: f.to ?? null
    })),
    timbers,
    pourRegions: piece.pours.map((p, i) =>
      p.region === undefined ? null : intersection(region(p.region, `/pours/${i}/region`), mould)
    ),
    zones: piece.pours.map((p, i) =>
      p.stones.map((s, j) => (s.zone === undefined ? null : region(s.zone, `/pours/${i}/stones/${j}/zone`)))
    ),
    cutRegions: piece.cuts.map((c, i) =>
      c.shape === undefined ? null : region(c.shape, `/cuts/${i}/shape`)
    ),
    cutLines: piece.cuts.map((c, i) => {
      if (c.along === undefined) return null
      return c.along.path === undefined
        ? [lineOf(c.along.points!)]
        : linesOf(c.along.path, tol, `/cuts/${i}/along/path`, source)
    }),
    markingLines: piece.markings.map(markingLines),
    keepClear: piece.holding.keepClear.map((s, i) => region(s, `/holding/keepClear/${i}`))
  }
  const problems = [...misplaced(entries, geometry), ...widths(piece)]
  if (problems.length > 0) throw new InputProblem(source, problems)
  return geometry
}

function mouldRegion(mould: Mould, outline: Region, region: (shape: Shape, at: string) => Region): Region {
  const ears = mould.ears.map((ear, i) => region(ear, `/mould/ears/${i}`))
  if (mould.shape !== undefined) return union(region(mould.shape, '/mould/shape'), ...ears)
  const b = bounds(outline)
  const w = b.maxX - b.minX + 2 * mould.margin
  const h = b.maxY - b.minY + 2 * mould.margin
  return union(rectangle(w, h, 0, 0.01, (b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2), ...ears)
}

function bodyOf(
  timber: Timber,
  at: string,
  region: (shape: Shape, at: string) => Region,
  source: string
): Solid {
  const upper = region(timber.outline, `${at}/outline`)
  const lower = timber.underside === undefined ? null : region(timber.underside, `${at}/underside`)
  const edge = timber.base + timber.thickness
  try {
    const body = solidOf(upper, lower, timber.base, edge, topOf(timber, upper, edge))
    if (body.low <= timber.base) {
      throw new Error(`the top dips ${decimals(timber.base - body.low, 2)} mm through the underside`)
    }
    return body
  } catch (e) {
    if (e instanceof InputProblem || !(e instanceof Error)) throw e
    throw new InputProblem(source, [
      {
        path: at,
        found: e.message,
        allowed: 'one body: a top over its underside, edges that match',
        example: ''
      }
    ])
  }
}

function topOf(timber: Timber, upper: Region, edge: number): Top {
  if (timber.crown !== undefined) {
    const a = (timber.crown.along * Math.PI) / 180
    const [nx, ny] = [-Math.sin(a), Math.cos(a)]
    let low = Number.POSITIVE_INFINITY
    let high = Number.NEGATIVE_INFINITY
    for (const ring of upper.rings) {
      for (let k = 0; k < ring.length; k += 2) {
        const u = ring[k]! * nx + ring[k + 1]! * ny
        low = Math.min(low, u)
        high = Math.max(high, u)
      }
    }
    const mid = (low + high) / 2
    return {
      kind: 'crown',
      edge,
      rise: timber.crown.rise,
      cx: mid * nx,
      cy: mid * ny,
      nx,
      ny,
      half: (high - low) / 2
    }
  }
  if (timber.measured !== undefined) {
    const { from, step, rises } = timber.measured
    const columns = rises[0]!.length
    if (rises.some(row => row.length !== columns))
      throw new Error('rows of the measured top differ in length')
    return {
      kind: 'grid',
      edge,
      x0: from[0],
      y0: from[1],
      dx: step[0],
      dy: step[1],
      columns,
      rows: rises.length,
      rises: Float64Array.from(rises.flat())
    }
  }
  return { kind: 'flat', edge }
}

function lineOf(points: readonly (readonly [number, number])[]): Float64Array {
  const line = new Float64Array(points.length * 2)
  points.forEach(([x, y], i) => {
    line[2 * i] = x
    line[2 * i + 1] = y
  })
  return line
}

/** The middle lines a marking is cut along. */
function markingLines(m: Marking): Float64Array[] {
  if (m.radial !== undefined) {
    const { centre, radius, length, at } = m.radial
    return at.map(deg => {
      const a = (deg * Math.PI) / 180
      const inner = Math.max(0, radius - length)
      return Float64Array.of(
        centre[0] + radius * Math.cos(a),
        centre[1] + radius * Math.sin(a),
        centre[0] + inner * Math.cos(a),
        centre[1] + inner * Math.sin(a)
      )
    })
  }
  if (m.linear !== undefined) {
    const { from, to, length, at } = m.linear
    const dx = to[0] - from[0]
    const dy = to[1] - from[1]
    const long = Math.hypot(dx, dy) || 1
    return at.map(t => {
      const x = from[0] + t * dx
      const y = from[1] + t * dy
      return Float64Array.of(x, y, x - (dy / long) * length, y + (dx / long) * length)
    })
  }
  return m.lines!.map(lineOf)
}

function misplaced(entries: Entries, g: Geometry): Problem[] {
  const out: Problem[] = []
  g.timbers.forEach((t, i) => {
    const entry = entries.timbers[i]!
    for (const [edge, key] of [[t.upper, 'outline'], ...(t.lofts ? [[t.lower, 'underside']] : [])] as [
      Region,
      string
    ][]) {
      const stray = area(difference(edge, g.mould))
      if (stray > STRAY_MM2) {
        out.push({
          path: `${entry.at}/${key}`,
          found: `${entry.id} outside the mould by ${decimals(stray / 100, 1)} cm²`,
          allowed: `inside the mould, ${box(bounds(g.mould))}`,
          example: ''
        })
      }
    }
    for (let j = 0; j < i; j++) {
      const other = g.timbers[j]!
      if (other.base >= t.high || t.base >= other.high) continue
      const both = Math.max(overlap(t.upper, other.upper), overlap(t.lower, other.lower))
      if (both > OVERLAP_MM2) {
        const middle = centroid(
          intersection(t.upper, other.upper).rings.length > 0
            ? intersection(t.upper, other.upper)
            : intersection(t.lower, other.lower)
        )
        out.push({
          path: `${entry.at}/outline`,
          found: `${entry.id} and ${entries.timbers[j]!.id} in the same place, ${decimals(both / 100, 1)} cm² near (${decimals(middle.x, 0)}, ${decimals(middle.y, 0)})`,
          allowed: 'timbers beside each other, or one above the other',
          example: ''
        })
      }
    }
  })
  g.formers.forEach((f, i) => {
    const entry = entries.formers[i]!
    const inTimber = g.timbers.findIndex(
      t => overlap(f.region, t.upper) > OVERLAP_MM2 || overlap(f.region, t.lower) > OVERLAP_MM2
    )
    if (inTimber >= 0) {
      out.push({
        path: `${entry.at}/shape`,
        found: `${entry.id} where ${entries.timbers[inTimber]!.id} lies`,
        allowed: 'a former clear of the timbers',
        example: ''
      })
    }
  })
  if (area(difference(g.outline, g.mould)) > STRAY_MM2) {
    out.push({
      path: '/mould/shape',
      found: 'a mould smaller than the outline of the piece',
      allowed: 'a mould round the outline',
      example: ''
    })
  }
  return out
}

function overlap(a: Region, b: Region): number {
  return area(intersection(a, b))
}

function box(b: Bounds): string {
  return `x ${decimals(b.minX, 0)} to ${decimals(b.maxX, 0)}, y ${decimals(b.minY, 0)} to ${decimals(b.maxY, 0)} mm`
}

function widths(piece: Piece): Problem[] {
  const out: Problem[] = []
  piece.cuts.forEach((c, i) => {
    if (c.along !== undefined && c.profile !== 'v' && c.width === undefined) {
      out.push({
        path: `/cuts/${i}/width`,
        found: 'nothing',
        allowed: 'the width of the groove',
        example: '"width": 6'
      })
    }
    if (c.shape !== undefined && c.profile !== 'flat') {
      out.push({
        path: `/cuts/${i}/profile`,
        found: `"${c.profile}" with a shape`,
        allowed: '"flat" for a shape; V and round run along a line',
        example: '"along": { "points": [[0, 0], [80, 0]] }'
      })
    }
  })
  piece.pours.forEach((p, i) => {
    if (p.kind === 'inlay' && p.into === undefined)
      out.push({
        path: `/pours/${i}/into`,
        found: 'nothing',
        allowed: 'the cuts this inlay fills',
        example: '"into": ["scale"]'
      })
    if (p.kind === 'cast' && p.into !== undefined)
      out.push({
        path: `/pours/${i}/into`,
        found: '"into" with a pour into the mould',
        allowed: '"kind": "inlay"',
        example: '"kind": "inlay"'
      })
    const shares = p.marbling?.reduce((sum, m) => sum + m.share, 0)
    if (shares !== undefined && Math.abs(shares - 100) > 0.5)
      out.push({
        path: `/pours/${i}/marbling`,
        found: `shares of ${decimals(shares, 1)} % together`,
        allowed: '100 % together',
        example: ''
      })
    if (p.fill === 'cut' && p.kind !== 'inlay')
      out.push({
        path: `/pours/${i}/fill`,
        found: '"cut"',
        allowed: '"cut" for an inlay; "timber" in the mould',
        example: '"fill": "timber"'
      })
  })
  return out
}
