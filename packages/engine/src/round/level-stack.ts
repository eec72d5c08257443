import type { RoundBody, RoundModel } from './round-model.ts'

/** What lies between two heights: the piece parted where a pour or a timber begins or ends. Heights finished, mm. */
export interface Level {
  readonly fromMm: number
  readonly toMm: number
  /** Bodies with the outlines they have halfway up, lowest first. */
  readonly parts: readonly { readonly body: RoundBody; readonly rings: readonly Float64Array[] }[]
}

/** Levels thinner than this are drawn with their neighbour, mm, and the most there are of them. */
const LEAST_MM = 0.4
const MOST_LEVELS = 8

/** The levels of a model between two heights, from the back up. */
export function levelsOf(model: RoundModel, fromMm: number, toMm: number): Level[] {
  const stops = new Set([fromMm, toMm])
  for (const b of model.bodies) {
    if (b.kind !== 'pour' && b.kind !== 'timber') continue
    for (const z of [b.fromMm, b.toMm]) if (z > fromMm + LEAST_MM && z < toMm - LEAST_MM) stops.add(z)
  }
  let sorted = [...stops].sort((a, b) => a - b).filter((z, k, all) => k === 0 || z - all[k - 1]! > LEAST_MM)
  while (sorted.length > MOST_LEVELS + 1) sorted = withoutClosest(sorted)
  return sorted.slice(1).map((to, k): Level => {
    const from = sorted[k]!
    const mid = (from + to) / 2
    const parts = model.bodies.flatMap(body => {
      const rings = ringsAt(body, body.kind === 'timber' || body.kind === 'pour' ? mid : null, from, to)
      return rings.length === 0 ? [] : [{ body, rings }]
    })
    return { fromMm: from, toMm: to, parts }
  })
}

function withoutClosest(stops: readonly number[]): number[] {
  let best = 1
  for (let k = 1; k + 1 < stops.length; k++)
    if (stops[k + 1]! - stops[k - 1]! < stops[best + 1]! - stops[best - 1]!) best = k
  return stops.filter((_, k) => k !== best)
}

// Outlines at a height; of small things (null) all that reach into the level.
function ringsAt(body: RoundBody, at: number | null, from: number, to: number): Float64Array[] {
  const out: Float64Array[] = []
  const { rings, heights, positions } = body
  let only = -1
  for (let k = 0; k < rings.length; k += 3) {
    const prism = rings[k]!
    const [low, high] = [heights[2 * prism]!, heights[2 * prism + 1]!]
    const there = at === null ? high > from + LEAST_MM / 4 && low < to - LEAST_MM / 4 : low <= at && at < high
    // A filled line has a prism for every step of its flanks: the first speaks for all.
    if (!there || (body.kind === 'marking' && only >= 0 && prism !== only)) continue
    only = prism
    const ring = new Float64Array(2 * (rings[k + 2]! - rings[k + 1]!))
    for (let p = rings[k + 1]!, i = 0; p < rings[k + 2]!; p++) {
      ring[i++] = positions[3 * p]!
      ring[i++] = positions[3 * p + 1]!
    }
    out.push(ring)
  }
  return out
}
