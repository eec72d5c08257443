import { intersection } from '../shape/combine.ts'
import { area } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import { EMPTY } from '../shape/region.ts'
import { clipMemo } from './clip-memo.ts'
import type { StackEvent } from './event.ts'
import type { Geometry } from './geometry.ts'
import { breaksOf } from './level-cut.ts'
import { boxInside } from './placement.ts'
import { levelSamples } from './sample.ts'
import type { Solid } from './solid.ts'
import { sectionArea, sectionOperand, volumeBetween } from './solid.ts'

/**
 * Free volume: what resin fills when it stands at a level, between timbers, formers and earlier pours.
 *
 * Between two heights at which something begins or ends, the place left by formers and earlier pours is the same
 * all the way; the timbers in it are taken off. A timber that lies wholly in that place counts by the exact
 * volume of its body; one that reaches out of it is clipped, level by level where its side or top slants.
 *
 * Limits: resin is taken to reach every open place below its level, also under timbers and behind dams of the
 * same region; air trapped under a timber is not.
 */
export interface FreeSpace {
  /** Height of the lowest open place, mm as cast. */
  readonly floor: number
  /** Volume open between the floor and the level z, mm³. */
  volumeTo(z: number): number
  /** Open area at height z, mm². */
  areaAt(z: number): number
}

/** Least open area that counts as a floor, mm². */
const FLOOR_MM2 = 1
/** Least area by which a timber must reach out of a place to be clipped by it, mm²: rounding is not. */
const STRAY_MM2 = 1e-2

/**
 * The space a pour finds: `region` null for the whole mould; `gapMm3` what creeps under timbers that do not lie
 * flat. `events` holds what was set and poured before, nothing cut.
 */
export function freeSpace(
  g: Geometry,
  events: readonly StackEvent[],
  region: Region | null,
  gapMm3: number
): FreeSpace {
  const memo = clipMemo()
  const inside = region ?? g.mould
  const timbers = events.flatMap(e => (e.kind === 'timber' ? [g.timbers[e.index]!] : []))
  // What formers and earlier pours leave at a height.
  const placeAt = (z: number): Place => {
    const taken: Region[] = []
    for (const e of events) {
      if (e.kind === 'former' && z >= e.from && z < e.to) taken.push(g.formers[e.index]!.region)
      if (e.kind === 'pour' && z >= 0 && z < e.to) {
        if (e.region === null) return NOWHERE
        taken.push(e.region)
      }
    }
    return placeOf(memo.difference(inside, taken), timbers)
  }
  const measured = (place: Place, z: number) =>
    place.areaMm2 - timbers.reduce((sum, t, k) => sum + sharedArea(t, place, k, z), 0)

  const stops = breaksOf(g, events).filter(z => z >= 0)
  const stretches = stops.map((from, k): Stretch => {
    const to = stops[k + 1] ?? from + 1
    return { from, to, place: placeAt((from + to) / 2) }
  })
  const first = stretches.findIndex(({ from, to, place }) => {
    const hair = Math.min(1e-6, (to - from) / 4)
    return [from + hair, (from + to) / 2, to - hair].some(z => measured(place, z) > FLOOR_MM2)
  })
  const open = first < 0 ? stretches.slice(-1) : stretches.slice(first)
  const floor = open[0]?.from ?? 0
  const stretchOf = (z: number): number => {
    let k = open.length - 1
    while (k > 0 && open[k]!.from > z) k--
    return k
  }
  const part = (k: number, z: number): number => {
    const { from, place } = open[k]!
    return (
      place.areaMm2 * (z - from) - timbers.reduce((sum, t, i) => sum + sharedVolume(t, place, i, from, z), 0)
    )
  }
  // Volumes up to the feet of the stretches, found as they are asked for.
  const volumes = [0]
  const upTo = (k: number): number => {
    for (let i = volumes.length; i <= k; i++) volumes.push(volumes[i - 1]! + part(i - 1, open[i]!.from))
    return volumes[k]!
  }
  return {
    floor,
    areaAt: z => (z < floor ? 0 : Math.max(0, measured(open[stretchOf(z)]!.place, z))),
    volumeTo: z => {
      if (z <= floor) return 0
      const k = stretchOf(z)
      return Math.max(0, upTo(k) + part(k, z)) + gapMm3
    }
  }
}

/** Heights between which the place left by formers and earlier pours is the same; the last has no end. */
interface Stretch {
  readonly from: number
  readonly to: number
  readonly place: Place
}

/** A place on the plan and how each timber lies to it. */
interface Place {
  readonly region: Region
  readonly areaMm2: number
  readonly lies: readonly ('in' | 'across' | 'apart')[]
}

const NOWHERE: Place = { region: EMPTY, areaMm2: 0, lies: [] }

function placeOf(region: Region, timbers: readonly Solid[]): Place {
  if (region.rings.length === 0) return NOWHERE
  return {
    region,
    areaMm2: area(region),
    lies: timbers.map(t => {
      if (boxInside(t.bounds, region)) return 'in'
      // A side between two edges that both lie inside, or both outside, does so too.
      const edges = t.lofts === null ? [t.upper] : [t.upper, t.lower]
      const shared = edges.map(e => area(intersection(e, region)))
      if (shared.every(a => a < STRAY_MM2)) return 'apart'
      return shared.every((a, k) => a > area(edges[k]!) - STRAY_MM2) ? 'in' : 'across'
    })
  }
}

// Area of a timber's level cut in a place.
function sharedArea(t: Solid, place: Place, k: number, z: number): number {
  if (place.lies[k] === 'in') return sectionArea(t, z)
  return place.lies[k] === 'across' ? area(intersection(sectionOperand(t, z), place.region)) : 0
}

// Volume of a timber in a place between two heights, no break between them.
function sharedVolume(t: Solid, place: Place, k: number, from: number, to: number): number {
  if (place.lies[k] === 'in') return volumeBetween(t, from, to)
  if (place.lies[k] !== 'across' || !(to > from)) return 0
  let sum = 0
  for (const { at, weight } of levelSamples([t], from, to, false))
    sum += weight * area(intersection(sectionOperand(t, at), place.region))
  return sum
}

/** How closely a level is found, mm. */
const LEVEL_TOL_MM = 1e-7

/**
 * The level at which `volumeMm3` stands, by Newton steps on the monotone volume (its slope is the open area),
 * held inside a bracket that shrinks. Infinity when it does not fit below `highest`.
 */
export function levelFor(space: FreeSpace, volumeMm3: number, highest: number): number {
  return solveLevel(z => space.volumeTo(z), space.areaAt, volumeMm3, space.floor, highest)
}

/** The height z in [floor, highest] at which the growing `volume` is `wanted`, `slope` its derivative. */
export function solveLevel(
  volume: (z: number) => number,
  slope: (z: number) => number,
  wanted: number,
  floor: number,
  highest: number
): number {
  if (!(wanted > 0)) return floor
  if (volume(highest) < wanted) return Number.POSITIVE_INFINITY
  let low = floor
  let high = highest
  let z = Math.min(high, low + wanted / Math.max(1, slope(high)))
  for (let k = 0; k < 200 && high - low > LEVEL_TOL_MM; k++) {
    const over = volume(z) - wanted
    if (over === 0) return z
    if (over < 0) low = z
    else high = z
    const rate = slope(z)
    const next = z - over / rate
    // A step out of the bracket, or one that follows slow ones, is replaced by halving.
    const newton = next > low && next < high && k % 8 !== 7
    if (newton && Math.abs(next - z) < LEVEL_TOL_MM / 2) return next
    z = newton ? next : (low + high) / 2
  }
  return (low + high) / 2
}
