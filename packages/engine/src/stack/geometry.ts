import type { Entries } from '../piece/entry.ts'
import type { Marking, Mould, Piece, Timber } from '../piece/piece-schema.ts'
import { InputProblem } from '../piece/problem.ts'
import type { Files } from '../piece/region.ts'
import { linesOf, regionOf } from '../piece/region.ts'
import type { Shape } from '../piece/shape-field.ts'
import { decimals } from '../quantity/format.ts'
import { kept } from '../quantity/kept.ts'
import { rectangle } from '../shape/build.ts'
import { difference, intersection, union } from '../shape/combine.ts'
import { bounds } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import { translate } from '../shape/transform.ts'
import { contradictions } from './contradiction.ts'
import { inlayPair } from './inlay-plug.ts'
import { keyholePlan } from './keyhole.ts'
import { misplaced } from './placement.ts'
import type { Geometry } from './shapes.ts'
import type { Solid } from './solid.ts'
import { solidOf } from './solid.ts'
import type { Top } from './top.ts'
import { topRange } from './top.ts'

export type { Geometry } from './shapes.ts'

/** The last few geometries: a plan is made anew with readings and prices, and its drawing stays as it is. */
const geometries = new Map<string, Geometry>()
const MOST_GEOMETRIES = 8

/**
 * Builds all regions. The same drawing gives the very same regions while it is among the last few: what was reckoned
 * of them can be kept with them.
 *
 * @throws InputProblem for bad shapes, timbers that overlap or leave the mould
 */
export function geometryOf(piece: Piece, entries: Entries, files: Files, source: string): Geometry {
  const contrary = contradictions(piece, entries)
  if (contrary.length > 0) throw new InputProblem(source, contrary)
  const geometry = kept(
    geometries,
    drawingKey(piece, files),
    () => geometryAnew(piece, entries, files, source),
    MOST_GEOMETRIES
  )
  const astray = misplaced(entries, geometry)
  if (astray.length > 0) throw new InputProblem(source, astray)
  return geometry
}

function drawingKey(piece: Piece, files: Files): string {
  const { tolerance, outline, mould, timbers, cuts, markings, holding } = piece
  const pours = piece.pours.map(p => [p.region, p.stones.map(s => s.zone)])
  return JSON.stringify([
    tolerance,
    outline,
    mould,
    timbers,
    pours,
    cuts,
    markings,
    holding.keepClear,
    Object.entries(files)
  ])
}

function geometryAnew(piece: Piece, entries: Entries, files: Files, source: string): Geometry {
  const tol = piece.tolerance
  const region = (shape: Shape, at: string) => regionOf(shape, tol, files, at, source)
  const outline = region(piece.outline, '/outline')
  const mould = mouldRegion(piece.mould, outline, region)
  refuseHuge(outline, '/outline', source)
  refuseHuge(mould, '/mould', source)
  const timbers = entries.timbers.map(t => bodyOf(t.value, t.at, region, source))
  const idleIslands: number[][] = piece.cuts.map(() => [])
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
    idleIslands,
    cutRegions: piece.cuts.map((c, i) => {
      if (c.kind === 'keyhole') return keyholePlan(c, tol)
      if (c.shape === undefined) return null
      const drawn = region(c.shape, `/cuts/${i}/shape`)
      const bore = c.around === undefined ? undefined : entries.cuts.find(b => b.id === c.around)?.value
      const middle = bore?.shape?.at ?? [0, 0]
      const placed = bore === undefined ? drawn : translate(drawn, middle[0], middle[1])
      const whole =
        c.plug === undefined ? placed : inlayPair(placed, 2 * c.plug.corner, c.plug.gap, tol).pocket
      if (whole.rings.length === 0) return noPlug(`/cuts/${i}/plug/corner`, source)
      if (c.islands === undefined) return whole
      const islands = c.islands.map((s, j) => region(s, `/cuts/${i}/islands/${j}`))
      idleIslands[i] = [...islands.keys()].filter(j => intersection(islands[j]!, whole).rings.length === 0)
      const left = difference(whole, union(...islands))
      return left.rings.length > 0 ? left : nothingLeft(`/cuts/${i}/islands`, source)
    }),
    cutLines: piece.cuts.map((c, i) => {
      if (c.along === undefined || c.kind === 'keyhole') return null
      return c.along.path === undefined
        ? [lineOf(c.along.points!)]
        : linesOf(c.along.path, tol, `/cuts/${i}/along/path`, source)
    }),
    markingLines: piece.markings.map(markingLines),
    keepClear: piece.holding.keepClear.map((s, i) => region(s, `/holding/keepClear/${i}`))
  }
  return geometry
}

/** Largest piece or mould along x or y, mm: twice the longest length of the documents; beyond it the mould is not levelled. */
const MOST_ACROSS_MM = 20_000

function nothingLeft(path: string, source: string): never {
  throw new InputProblem(source, [
    {
      path,
      found: 'islands that leave nothing to cut',
      allowed: 'islands smaller than the shape',
      example: ''
    }
  ])
}

function noPlug(path: string, source: string): never {
  throw new InputProblem(source, [
    {
      path,
      found: 'a corner rounder than the inlay is wide',
      allowed: 'a corner that a cutter of twice its radius finds room for',
      example: '"corner": 0.8'
    }
  ])
}

function refuseHuge(region: Region, path: string, source: string): void {
  const b = bounds(region)
  const across = Math.max(b.maxX - b.minX, b.maxY - b.minY)
  if (across <= MOST_ACROSS_MM) return
  throw new InputProblem(source, [
    { path, found: `${decimals(across, 0)} mm across`, allowed: `at most ${MOST_ACROSS_MM} mm`, example: '' }
  ])
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
  const fail = (key: string, found: string, allowed: string): never => {
    throw new InputProblem(source, [{ path: `${at}/${key}`, found, allowed, example: '' }])
  }
  timber.measured?.rises.forEach((row, k, rows) => {
    if (row.length !== rows[0]!.length)
      fail(
        `measured/rises/${k}`,
        `a row of ${row.length} points after one of ${rows[0]!.length}`,
        'rows of equal length'
      )
  })
  let body: Solid
  try {
    body = solidOf(upper, lower, timber.base, edge, topOf(timber, upper, edge))
  } catch (e) {
    if (!(e instanceof Error)) throw e
    return fail('underside', e.message, 'an edge with the same outlines and holes, that follows the other')
  }
  // The top may come down to the underside nowhere.
  const lowest = topRange(body.top, upper.rings).low
  if (lowest <= timber.base)
    fail(
      timber.crown === undefined ? 'measured/rises' : 'crown/rise',
      `a top that dips ${decimals(timber.base - lowest, 2)} mm through the underside`,
      'a top above the underside everywhere'
    )
  return body
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
    return {
      kind: 'grid',
      edge,
      x0: from[0],
      y0: from[1],
      dx: step[0],
      dy: step[1],
      columns: rises[0]!.length,
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
    const long = Math.hypot(dx, dy)
    return at.map(t => {
      const x = from[0] + t * dx
      const y = from[1] + t * dy
      return Float64Array.of(x, y, x - (dy / long) * length, y + (dx / long) * length)
    })
  }
  return m.lines!.map(lineOf)
}
