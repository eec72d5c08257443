import { area } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import type { StackEvent } from './event.ts'
import type { Geometry } from './geometry.ts'
import { breaksOf, integrate, openArea } from './level-cut.ts'
import { sectionArea, volumeBetween } from './solid.ts'

/**
 * Free volume: what resin fills when it stands at a level, between timbers, formers and earlier pours.
 *
 * When every pour so far went over the whole mould the answer is a sum of exact body volumes, without any
 * clipping. Otherwise level cuts are clipped and integrated ({@link integrate}).
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

/** The space a pour finds: `region` null for the whole mould; `gapMm3` what creeps under timbers that do not lie flat. */
export function freeSpace(
  g: Geometry,
  events: readonly StackEvent[],
  region: Region | null,
  gapMm3: number
): FreeSpace {
  const plain = region === null && events.every(e => e.kind !== 'pour' || e.region === null)
  if (plain) return wholeMould(g, events, gapMm3)
  const inside = region ?? g.mould
  const areaAt = (z: number) => openArea(g, events, inside, z)
  const floor = breaksOf(g, events).find(z => z >= 0 && areaAt(z + 1e-6) > FLOOR_MM2) ?? 0
  return { floor, areaAt, volumeTo: z => (z <= floor ? 0 : integrate(g, events, floor, z, areaAt) + gapMm3) }
}

function wholeMould(g: Geometry, events: readonly StackEvent[], gapMm3: number): FreeSpace {
  const bodies = events.flatMap(e => (e.kind === 'timber' ? [g.timbers[e.index]!] : []))
  const formers = events.flatMap(e =>
    e.kind === 'former' ? [{ from: e.from, to: e.to, area: area(g.formers[e.index]!.region) }] : []
  )
  const floor = Math.max(0, ...events.map(e => (e.kind === 'pour' ? e.to : 0)))
  const whole = area(g.mould)
  return {
    floor,
    areaAt: z => {
      const timber = bodies.reduce((sum, b) => sum + sectionArea(b, z), 0)
      const plugs = formers.reduce((sum, f) => sum + (z >= f.from && z < f.to ? f.area : 0), 0)
      return Math.max(0, whole - timber - plugs)
    },
    volumeTo: z => {
      if (z <= floor) return 0
      const timber = bodies.reduce((sum, b) => sum + volumeBetween(b, floor, z), 0)
      const plugs = formers.reduce(
        (sum, f) => sum + Math.max(0, Math.min(f.to, z) - Math.max(f.from, floor)) * f.area,
        0
      )
      return Math.max(0, whole * (z - floor) - timber - plugs + gapMm3)
    }
  }
}

/** The level at which `volumeMm3` stands. Bisection on a monotone volume to 1e-6 mm; Infinity when it never fits. */
export function levelFor(space: FreeSpace, volumeMm3: number, highest: number): number {
  if (volumeMm3 <= 0) return space.floor
  let low = space.floor
  let high = highest
  if (space.volumeTo(high) < volumeMm3) return Number.POSITIVE_INFINITY
  for (let k = 0; k < 60 && high - low > 1e-6; k++) {
    const mid = (low + high) / 2
    if (space.volumeTo(mid) < volumeMm3) low = mid
    else high = mid
  }
  return (low + high) / 2
}
