import type { RoundBody, RoundModel } from './round-model.ts'

/** A body between two heights: the outlines it has halfway up. */
interface SlabPart {
  readonly body: RoundBody
  readonly rings: readonly Float64Array[]
}

/** A stretch of a level over which nothing changes but sides that lean. Heights finished, mm. */
export interface LevelSlab {
  readonly fromMm: number
  readonly toMm: number
  readonly parts: readonly SlabPart[]
}

/** What lies between two heights: the piece parted where a pour or a timber begins or ends. Heights finished, mm. */
export interface Level {
  readonly fromMm: number
  readonly toMm: number
  /** Timbers and pours from the back up: parted where a cut ends or a side leans. */
  readonly slabs: readonly LevelSlab[]
  /** Stones, filled lines and parts that reach into the level, as outlines on the plan. */
  readonly small: readonly SlabPart[]
}

/** Levels thinner than this are drawn with their neighbour, mm, and the most there are of them. */
const LEAST_MM = 0.4
const MOST_LEVELS = 8
/** Cuts that end closer to each other count as one, mm; the most slabs of a level; steps of a side that leans. */
const LEAST_SLAB_MM = 0.15
const MOST_SLABS = 12
const STEPS = 6

/** The levels of a model between two heights, from the back up. */
export function levelsOf(model: RoundModel, fromMm: number, toMm: number): Level[] {
  const large = model.bodies.filter(b => b.kind === 'pour' || b.kind === 'timber')
  const stops = stopsOf(
    large.flatMap(b => [b.fromMm, b.toMm]),
    fromMm,
    toMm,
    LEAST_MM,
    MOST_LEVELS
  )
  return stops.slice(1).map((to, k): Level => {
    const from = stops[k]!
    return {
      fromMm: from,
      toMm: to,
      slabs: slabsBetween(large, from, to),
      small: model.bodies
        .filter(b => !large.includes(b))
        .flatMap(body => {
          const rings = ringsIn(body, from, to)
          return rings.length === 0 ? [] : [{ body, rings }]
        })
    }
  })
}

function slabsBetween(bodies: readonly RoundBody[], from: number, to: number): LevelSlab[] {
  const wanted = bodies.flatMap(edgeHeights)
  if (bodies.some(b => leansBetween(b, from, to)))
    for (let k = 1; k < STEPS; k++) wanted.push(from + ((to - from) * k) / STEPS)
  const stops = stopsOf(wanted, from, to, LEAST_SLAB_MM, MOST_SLABS)
  return stops.slice(1).map((high, k): LevelSlab => {
    const low = stops[k]!
    const mid = (low + high) / 2
    return {
      fromMm: low,
      toMm: high,
      parts: bodies.flatMap(body => {
        const rings = ringsAt(body, mid)
        return rings.length === 0 ? [] : [{ body, rings }]
      })
    }
  })
}

// Heights from `from` to `to`, none closer than `least` to another, at most `most` + 1 of them.
function stopsOf(
  heights: readonly number[],
  from: number,
  to: number,
  least: number,
  most: number
): number[] {
  const between = heights.filter(z => z > from + least && z < to - least).sort((a, b) => a - b)
  const out = [from, ...between.filter((z, k) => k === 0 || z - between[k - 1]! > least), to]
  while (out.length > most + 1) {
    let closest = 1
    for (let k = 1; k + 1 < out.length; k++)
      if (out[k + 1]! - out[k - 1]! < out[closest + 1]! - out[closest - 1]!) closest = k
    out.splice(closest, 1)
  }
  return out
}

/** Heights at which a body has level edges: where it begins and ends, floors and ceilings of cuts; mm. */
export function edgeHeights({ rims }: RoundBody): number[] {
  const out = new Set<number>()
  for (let k = 0; k < rims.length; k += 6) if (rims[k + 2] === rims[k + 5]) out.add(rims[k + 2]!)
  return [...out]
}

// Where a side leans prisms follow each other without an edge between them.
function leansBetween(body: RoundBody, from: number, to: number): boolean {
  const edges = new Set(edgeHeights(body))
  return body.heights.some((z, k) => k % 2 === 1 && z > from && z < to && !edges.has(z))
}

/** Outlines of a body at a height. */
function ringsAt(body: RoundBody, at: number): Float64Array[] {
  return ringsWhere(body, (low, high) => low <= at && at < high)
}

// All outlines that reach into a level. A filled line has a prism for every step of its flanks: one speaks for all.
function ringsIn(body: RoundBody, from: number, to: number): Float64Array[] {
  let only = -1
  return ringsWhere(body, (low, high, prism) => {
    if (!(high > from + LEAST_MM / 4 && low < to - LEAST_MM / 4)) return false
    if (body.kind !== 'marking') return true
    if (only < 0) only = prism
    return prism === only
  })
}

function ringsWhere(
  { rings, heights, positions }: RoundBody,
  wanted: (low: number, high: number, prism: number) => boolean
): Float64Array[] {
  const out: Float64Array[] = []
  for (let k = 0; k < rings.length; k += 3) {
    const prism = rings[k]!
    if (!wanted(heights[2 * prism]!, heights[2 * prism + 1]!, prism)) continue
    const ring = new Float64Array(2 * (rings[k + 2]! - rings[k + 1]!))
    for (let p = rings[k + 1]!, i = 0; p < rings[k + 2]!; p++) {
      ring[i++] = positions[3 * p]!
      ring[i++] = positions[3 * p + 1]!
    }
    out.push(ring)
  }
  return out
}
