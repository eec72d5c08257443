import { intersection } from '../shape/combine.ts'
import { area, bounds } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import type { StackEvent } from './event.ts'
import type { Geometry } from './geometry.ts'
import { breaksOf, integrate, openArea, steady } from './level-cut.ts'
import { sectionArea, volumeBetween } from './solid.ts'

/**
 * Free volume: what resin fills when it stands at a level, between timbers, formers and earlier pours.
 *
 * When every pour so far went over the whole mould the answer is a sum of exact body volumes, without any
 * clipping. Otherwise level cuts are clipped and integrated ({@link integrate}).
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
  const plain = region === null && events.every(e => e.kind !== 'pour' || e.region === null)
  return plain && formersApart(g, events)
    ? wholeMould(g, events, gapMm3)
    : partOfMould(g, events, region ?? g.mould, gapMm3)
}

function partOfMould(g: Geometry, events: readonly StackEvent[], inside: Region, gapMm3: number): FreeSpace {
  const areas = new Map<number, number>()
  const measured = (z: number): number => {
    const known = areas.get(z)
    if (known !== undefined) return known
    const found = openArea(g, events, inside, z)
    areas.set(z, found)
    return found
  }
  const stops = breaksOf(g, events).filter(z => z >= 0)
  const floor = lowestOpen(stops, measured)
  // Stretches from the floor up, the last without end. Where the level cut stays the same it is taken once.
  const from = [floor, ...stops.filter(z => z > floor)]
  const middles = from.map((a, k): number | null => {
    const b = from[k + 1] ?? a + 1
    return steady(g, events, a, b) ? (a + b) / 2 : null
  })
  const stretchOf = (z: number): number => {
    let k = from.length - 1
    while (k > 0 && from[k]! > z) k--
    return k
  }
  const part = (k: number, z: number): number => {
    const middle = middles[k]!
    return middle === null ? integrate(g, events, from[k]!, z, measured) : measured(middle) * (z - from[k]!)
  }
  // Volumes up to the stops, found as they are asked for.
  const volumes = [0]
  const upTo = (k: number): number => {
    for (let i = volumes.length; i <= k; i++) volumes.push(volumes[i - 1]! + part(i - 1, from[i]!))
    return volumes[k]!
  }
  return {
    floor,
    areaAt: z => measured(z >= floor ? (middles[stretchOf(z)] ?? z) : z),
    volumeTo: z => {
      if (z <= floor) return 0
      const k = stretchOf(z)
      return upTo(k) + part(k, z) + gapMm3
    }
  }
}

function wholeMould(g: Geometry, events: readonly StackEvent[], gapMm3: number): FreeSpace {
  const bodies = events.flatMap(e => (e.kind === 'timber' ? [g.timbers[e.index]!] : []))
  const formers = events.flatMap(e =>
    e.kind === 'former'
      ? [{ from: e.from, to: e.to, area: area(intersection(g.formers[e.index]!.region, g.mould)) }]
      : []
  )
  const filled = Math.max(0, ...events.map(e => (e.kind === 'pour' ? e.to : 0)))
  const whole = area(g.mould)
  const areaAt = (z: number): number => {
    const timber = bodies.reduce((sum, b) => sum + sectionArea(b, z), 0)
    const plugs = formers.reduce((sum, f) => sum + (z >= f.from && z < f.to ? f.area : 0), 0)
    return Math.max(0, whole - timber - plugs)
  }
  const floor = lowestOpen([filled, ...breaksOf(g, events).filter(z => z > filled)], areaAt)
  return {
    floor,
    areaAt,
    volumeTo: z => {
      if (z <= floor) return 0
      const timber = bodies.reduce((sum, b) => sum + volumeBetween(b, floor, z), 0)
      const plugs = formers.reduce(
        (sum, f) => sum + Math.max(0, Math.min(f.to, z) - Math.max(f.from, floor)) * f.area,
        0
      )
      return Math.max(0, whole * (z - floor) - timber - plugs) + gapMm3
    }
  }
}

// Foot of the lowest stretch between two stops that is open anywhere: just above its foot, at its middle or
// just under its head.
function lowestOpen(stops: readonly number[], areaAt: (z: number) => number): number {
  for (let k = 0; k < stops.length; k++) {
    const a = stops[k]!
    const b = stops[k + 1] ?? a + 1
    const hair = Math.min(1e-6, (b - a) / 4)
    if ([a + hair, (a + b) / 2, b - hair].some(z => areaAt(z) > FLOOR_MM2)) return a
  }
  return stops[stops.length - 1] ?? 0
}

function formersApart(g: Geometry, events: readonly StackEvent[]): boolean {
  const boxes = events.flatMap(e => (e.kind === 'former' ? [bounds(g.formers[e.index]!.region)] : []))
  return boxes.every((a, i) =>
    boxes.every((b, j) => j >= i || a.maxX < b.minX || b.maxX < a.minX || a.maxY < b.minY || b.maxY < a.minY)
  )
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
