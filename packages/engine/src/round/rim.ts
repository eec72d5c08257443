import type { Ring } from '../shape/region.ts'
import type { Slab } from './slab.ts'

/** An edge that turns by more than this is drawn upright, degrees. */
const CORNER_DEG = 32

/**
 * The edges of prisms that a draughtsman would draw: outlines of tops and floors where they do not go on unchanged
 * in the next prism, and uprights at corners. Steps of a slanted side are left out. x, y, z of both ends, mm.
 */
export function rimsOf(slabs: readonly Slab[]): Float32Array {
  const out: number[] = []
  slabs.forEach((slab, k) => {
    const below = slabs[k - 1]
    const above = slabs[k + 1]
    if (!(slab.stepsBelow && joins(below, slab)))
      outline(out, slab, joins(below, slab) ? below : undefined, slab.from)
    if (!(slab.stepsAbove && joins(slab, above)))
      outline(out, slab, joins(slab, above) ? above : undefined, slab.to)
    for (const ring of slab.region.rings) uprights(out, ring, slab)
  })
  return Float32Array.from(out)
}

function joins(a: Slab | undefined, b: Slab | undefined): boolean {
  return a !== undefined && b !== undefined && Math.abs(a.to - b.from) < 1e-9
}

// Edges the neighbour has too lie in the middle of a wall.
function outline(out: number[], slab: Slab, next: Slab | undefined, z: number): void {
  const shared = new Set<string>()
  for (const ring of next?.region.rings ?? []) each(ring, (...edge) => shared.add(edge.join(' ')))
  for (const ring of slab.region.rings) {
    each(ring, (ax, ay, bx, by) => {
      if (!shared.has(`${ax} ${ay} ${bx} ${by}`)) out.push(ax, ay, z, bx, by, z)
    })
  }
}

function each(ring: Ring, edge: (ax: number, ay: number, bx: number, by: number) => void): void {
  for (let k = 0, p = ring.length - 2; k < ring.length; p = k, k += 2)
    edge(ring[p]!, ring[p + 1]!, ring[k]!, ring[k + 1]!)
}

function uprights(out: number[], ring: Ring, { from, to, stepsBelow, stepsAbove }: Slab): void {
  if (stepsBelow && stepsAbove) return
  const n = ring.length
  for (let k = 0; k < n; k += 2) {
    const p = (k + n - 2) % n
    const q = (k + 2) % n
    const ax = ring[k]! - ring[p]!
    const ay = ring[k + 1]! - ring[p + 1]!
    const bx = ring[q]! - ring[k]!
    const by = ring[q + 1]! - ring[k + 1]!
    const turn = Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by))
    if (turn > (CORNER_DEG * Math.PI) / 180)
      out.push(ring[k]!, ring[k + 1]!, from, ring[k]!, ring[k + 1]!, to)
  }
}
