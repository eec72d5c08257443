import { rectangle } from '../../shape/build.ts'
import { intersection, union } from '../../shape/combine.ts'
import { inside, ringArea } from '../../shape/measure.ts'
import type { Region, Ring } from '../../shape/region.ts'
import { EMPTY } from '../../shape/region.ts'
import type { Position } from './position.ts'
import { spanAlong, stripOf } from './position.ts'

/** What of a span is worked in a position: all of it, a part, or nothing. */
export type Share = 'all' | 'part' | 'none'

/**
 * Which share of [low, high] along the axis is worked in a position. What one strip holds is worked there whole, in the
 * strip whose middle is nearest; what none holds is divided. All of it where the piece is not moved along.
 */
export function shareOf(position: Position | null, low: number, high: number): Share {
  if (position === null) return 'all'
  const { strips, number } = position
  const off = (s: { fromMm: number; toMm: number }) => Math.abs(s.fromMm + s.toMm - low - high)
  let best = -1
  strips.forEach((s, i) => {
    if (low >= s.fromMm - 1e-6 && high <= s.toMm + 1e-6 && (best < 0 || off(s) < off(strips[best]!))) best = i
  })
  if (best >= 0) return best === number - 1 ? 'all' : 'none'
  const { fromMm, toMm } = stripOf(position)
  return high > fromMm && low < toMm ? 'part' : 'none'
}

/** A region as far as it is worked in a position, its parts each by itself. */
export function regionHere(position: Position | null, region: Region): Region {
  if (position === null) return region
  const here = partsOf(region).flatMap(part => {
    const share = shareOf(position, ...spanAlong(position, part))
    return share === 'none' ? [] : [share === 'all' ? part : cutTo(position, part)]
  })
  return here.length === 0 ? EMPTY : union(...here)
}

/** What of a region lies in the strip of a position. */
export function cutTo(position: Position | null, region: Region): Region {
  if (position === null || region.rings.length === 0) return region
  const { fromMm, toMm } = stripOf(position)
  const across: Position = { ...position, axis: position.axis === 'x' ? 'y' : 'x' }
  const [low, high] = spanAlong(across, region)
  const [long, wide] = [toMm - fromMm, high - low + 2]
  const [u, v] = [(fromMm + toMm) / 2, (low + high) / 2]
  const band =
    position.axis === 'x' ? rectangle(long, wide, 0, 0.01, u, v) : rectangle(wide, long, 0, 0.01, v, u)
  return intersection(region, band)
}

/** Lines as far as they are worked in a position. @param asideMm how far the cut reaches beside them */
export function linesHere(
  position: Position | null,
  lines: readonly Float64Array[],
  asideMm: number
): Float64Array[] {
  if (position === null) return [...lines]
  return lines.flatMap(line => {
    const [low, high] = spanAlong(position, { rings: [line] })
    const share = shareOf(position, low - asideMm, high + asideMm)
    if (share !== 'part') return share === 'all' ? [line] : []
    const { fromMm, toMm } = stripOf(position)
    return lineWithin(line, position.axis === 'x' ? 0 : 1, fromMm, toMm)
  })
}

// The stretches of a line between two values of one of its coordinates; a closed line is taken on past its start.
function lineWithin(line: Float64Array, axis: 0 | 1, low: number, high: number): Float64Array[] {
  const out: number[][] = []
  let open: number[] | null = null
  for (let k = 0; k + 3 < line.length; k += 2) {
    const [ax, ay, bx, by] = [line[k]!, line[k + 1]!, line[k + 2]!, line[k + 3]!]
    const [a, b] = axis === 0 ? [ax, bx] : [ay, by]
    const d = b - a
    let [from, to] = [0, 1]
    if (Math.abs(d) < 1e-12) {
      if (a < low || a > high) to = -1
    } else {
      const [p, q] = [(low - a) / d, (high - a) / d]
      from = Math.max(0, Math.min(p, q))
      to = Math.min(1, Math.max(p, q))
    }
    if (to <= from) {
      open = null
      continue
    }
    if (open === null || from > 0) {
      open = [ax + from * (bx - ax), ay + from * (by - ay)]
      out.push(open)
    }
    open.push(ax + to * (bx - ax), ay + to * (by - ay))
    if (to < 1) open = null
  }
  const n = line.length
  const closed = n > 4 && line[0] === line[n - 2] && line[1] === line[n - 1]
  const [first, last] = [out[0], out.at(-1)]
  if (closed && first !== undefined && last !== undefined && first !== last) {
    const meets = last.at(-2) === first[0] && last.at(-1) === first[1]
    if (meets) {
      last.push(...first.slice(2))
      out.shift()
    }
  }
  return out.map(o => Float64Array.from(o))
}

// Each outside ring with the holes in it.
function partsOf({ rings }: Region): Region[] {
  const outside = rings.filter(r => ringArea(r) > 0).sort((a, b) => ringArea(a) - ringArea(b))
  const parts = new Map<Ring, Ring[]>(outside.map(r => [r, [r]]))
  for (const hole of rings.filter(r => ringArea(r) < 0)) {
    const of = outside.find(r => inside({ rings: [r] }, hole[0]!, hole[1]!)) ?? outside.at(-1)
    if (of !== undefined) parts.get(of)!.push(hole)
  }
  return [...parts.values()].map(p => ({ rings: p }))
}
