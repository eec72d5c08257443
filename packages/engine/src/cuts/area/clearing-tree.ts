import { inside, ringArea } from '../../shape/measure.ts'
import { offset } from '../../shape/offset.ts'
import type { Region, Ring } from '../../shape/region.ts'

/** One connected part of where the middle of the cutter may go, `level` side steps away from its edge. */
export interface Layer {
  readonly region: Region
  readonly level: number
  /** Outer ring first, then those about islands; the inside of the layer lies to the left of each. */
  readonly rings: readonly Ring[]
  /** Parts one side step further in. */
  readonly inner: readonly Layer[]
}

/** Most side steps from the edge to the middle: a step too fine for the pocket ends here, and is refused. */
const MOST_LEVELS = 2000

/**
 * The rings that clear a region: its edge, and its insets by one side step after the other until none is left, as
 * a tree of connected parts.
 *
 * Every place of the region is within one step of a ring: at depth d inside the edge it is d − k·step from the
 * ring of inset k = floor(d / step), for an inset by discs is the level set of the distance to the edge. So with a
 * step no larger than the flat radius of the cutter nothing is left standing between the rings.
 *
 * @throws Error for a step so fine that more than 2000 insets come of it
 */
export function clearingTree(centres: Region, stepMm: number, tolMm: number): Layer[] {
  const levels: Region[] = []
  for (let now = centres; now.rings.length > 0; ) {
    levels.push(now)
    if (levels.length > MOST_LEVELS)
      throw new Error(
        `side steps of ${stepMm} mm: more than ${MOST_LEVELS} rings from the edge to the middle`
      )
    now = offset(centres, -levels.length * stepMm, { join: 'round', tolMm })
  }
  let inner: Layer[] = []
  for (let level = levels.length - 1; level >= 0; level--) {
    const parts = partsOf(levels[level]!)
    const owner = inner.map(layer => ownerOf(parts, layer.rings[0]!))
    inner = parts.map((region, i) => ({
      region,
      level,
      rings: region.rings,
      inner: inner.filter((_, k) => owner[k] === i)
    }))
  }
  return inner
}

/** Connected parts of a region: each an outer ring and the holes in it. */
export function partsOf(region: Region): Region[] {
  const outers = region.rings.filter(r => ringArea(r) > 0)
  if (outers.length === 1) return [{ rings: [outers[0]!, ...region.rings.filter(r => r !== outers[0])] }]
  const parts = outers.map(outer => ({ rings: [outer] }))
  // Of outer rings one within another's hole, a hole belongs to the least that holds it.
  const areas = outers.map(ringArea)
  for (const ring of region.rings) {
    if (ringArea(ring) > 0) continue
    let best = -1
    outers.forEach((outer, i) => {
      if ((best < 0 || areas[i]! < areas[best]!) && holds(outer, ring)) best = i
    })
    if (best >= 0) parts[best]!.rings.push(ring)
  }
  return parts
}

function holds(outer: Ring, ring: Ring): boolean {
  const whole = { rings: [outer] }
  // A hole may touch its outer ring at a point: most of its points decide.
  let votes = 0
  for (let k = 0; k < Math.min(ring.length, 10); k += 2)
    votes += inside(whole, ring[k]!, ring[k + 1]!) ? 1 : -1
  return votes > 0
}

function ownerOf(parts: readonly Region[], ring: Ring): number {
  const found = parts.findIndex(p => inside(p, ring[0]!, ring[1]!))
  if (found >= 0 || parts.length === 1) return Math.max(0, found)
  // On the grid a point can lie a hair outside: any other of its points will do.
  for (let k = 2; k < ring.length; k += 2) {
    const other = parts.findIndex(p => inside(p, ring[k]!, ring[k + 1]!))
    if (other >= 0) return other
  }
  return 0
}
