import type { Materials } from '../../cast/facts.ts'
import { bounds, inside } from '../../shape/measure.ts'
import type { Region } from '../../shape/region.ts'
import { coreAt } from '../../stack/core.ts'
import type { Stack } from '../../stack/stack.ts'
import type { Met } from '../run/met.ts'
import { filledPours, metOf, metOnce } from '../run/met.ts'

/** Places along each side of the box of a region at which its core is asked. */
const ACROSS = 9
/** Distance between the places along a line, mm, and the most of them. */
const ALONG_MM = 6
const MOST_ALONG = 400

type Place = readonly [x: number, y: number]

/** Places of the plan that stand for a region: a grid over its box and its corners. */
export function placesIn(region: Region): Place[] {
  const b = bounds(region)
  if (!(b.maxX >= b.minX)) return []
  const out: Place[] = []
  for (let i = 0; i < ACROSS; i++) {
    for (let j = 0; j < ACROSS; j++) {
      const x = b.minX + ((i + 0.5) * (b.maxX - b.minX)) / ACROSS
      const y = b.minY + ((j + 0.5) * (b.maxY - b.minY)) / ACROSS
      if (inside(region, x, y)) out.push([x, y])
    }
  }
  for (const ring of region.rings) {
    const every = Math.max(1, Math.floor(ring.length / 2 / 100))
    for (let k = 0; k < ring.length; k += 2 * every) out.push([ring[k]!, ring[k + 1]!])
  }
  return out
}

/** Places of the plan along lines. */
export function placesAlong(lines: readonly Float64Array[]): Place[] {
  const out: Place[] = []
  for (const line of lines) {
    for (let k = 0; k + 3 < line.length && out.length < MOST_ALONG; k += 2) {
      const [ax, ay, bx, by] = [line[k]!, line[k + 1]!, line[k + 2]!, line[k + 3]!]
      const n = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / ALONG_MM))
      for (let i = 0; i <= n; i++) out.push([ax + ((bx - ax) * i) / n, ay + ((by - ay) * i) / n])
    }
  }
  return out
}

/** What lies between two heights as cast at places of the plan, after so many events; each material once. */
export function metAlong(
  stack: Stack,
  events: number,
  places: readonly Place[],
  lowZ: number,
  highZ: number,
  materials: Pick<Materials, 'timbers' | 'stones' | 'tints'>
): Met[] {
  const happened = stack.events.slice(0, events)
  const filled = filledPours(materials)
  const met: Met[] = []
  for (const [x, y] of places) {
    for (const part of coreAt(stack.geometry, happened, x, y))
      if (part.to > lowZ + 1e-6 && part.from < highZ - 1e-6)
        met.push(metOf(part.material, materials.timbers, filled))
  }
  return metOnce(met)
}
