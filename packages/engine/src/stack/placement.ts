import type { Entries } from '../piece/entry.ts'
import type { Problem } from '../piece/problem.ts'
import { decimals } from '../quantity/format.ts'
import { difference, intersection } from '../shape/combine.ts'
import { area, bounds, inside } from '../shape/measure.ts'
import type { Bounds, Region } from '../shape/region.ts'
import type { Geometry } from './shapes.ts'
import type { Solid } from './solid.ts'
import { sectionOperand } from './solid.ts'

/** Least area two regions must share to count as overlapping, mm²: a line drawn twice does not. */
const OVERLAP_MM2 = 0.5
/** Least area by which a shape must stand out of the mould to be an error, mm²: rounding of a drawing is not. */
const STRAY_MM2 = 0.5

/** What lies where it cannot: outside the mould, in one another. */
export function misplaced(entries: Entries, g: Geometry): Problem[] {
  return [...straying(entries, g), ...overlapping(entries, g), ...obstructed(entries, g), ...outsideMould(g)]
}

/** Whether a box surely lies wholly in a region: its middle does, and no edge of the region comes near it. */
export function boxInside(box: Bounds, region: Region): boolean {
  if (!inside(region, (box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2)) return false
  // A hair smaller, so that timber against the wall counts as inside.
  const minX = box.minX + HAIR_MM
  const maxX = box.maxX - HAIR_MM
  const minY = box.minY + HAIR_MM
  const maxY = box.maxY - HAIR_MM
  return region.rings.every(ring => {
    for (let k = 0, p = ring.length - 2; k < ring.length; p = k, k += 2) {
      const [ax, ay, bx, by] = [ring[p]!, ring[p + 1]!, ring[k]!, ring[k + 1]!]
      if (Math.max(ax, bx) < minX || Math.min(ax, bx) > maxX) continue
      if (Math.max(ay, by) < minY || Math.min(ay, by) > maxY) continue
      // The boxes meet; only an edge along an axis is then surely in it, any other may pass a corner.
      return false
    }
    return true
  })
}

/** The step of the clipping grid, mm. */
const HAIR_MM = 1e-4

function straying(entries: Entries, g: Geometry): Problem[] {
  const out: Problem[] = []
  g.timbers.forEach((t, i) => {
    const entry = entries.timbers[i]!
    if (boxInside(t.bounds, g.mould)) return
    for (const [edge, key] of [
      [t.upper, 'outline'],
      [t.lofts === null ? null : t.lower, 'underside']
    ] as const) {
      const stray = edge === null ? 0 : area(difference(edge, g.mould))
      if (stray > STRAY_MM2)
        out.push({
          path: `${entry.at}/${key}`,
          found: `"${entry.id}", ${boxWords(bounds(edge!))}, outside the mould by ${areaWords(stray)}`,
          allowed: `inside the mould, ${boxWords(bounds(g.mould))}; "mould": { "margin": ... } makes it larger`,
          example: ''
        })
    }
  })
  return out
}

function overlapping(entries: Entries, g: Geometry): Problem[] {
  const out: Problem[] = []
  g.timbers.forEach((t, i) => {
    const entry = entries.timbers[i]!
    for (let j = 0; j < i; j++) {
      const shared = common(t, g.timbers[j]!)
      if (shared === null) continue
      const b = bounds(shared)
      out.push({
        path: `${entry.at}/outline`,
        found: `${entry.id} and ${entries.timbers[j]!.id} in the same place, ${areaWords(area(shared))} near (${decimals((b.minX + b.maxX) / 2, 0)}, ${decimals((b.minY + b.maxY) / 2, 0)})`,
        allowed: 'timbers beside each other, or one above the other',
        example: ''
      })
    }
  })
  return out
}

// What two bodies share at the foot, the middle or the head of the heights they both have; null for nothing.
function common(a: Solid, b: Solid): Region | null {
  if (a.bounds.maxX < b.bounds.minX || b.bounds.maxX < a.bounds.minX) return null
  if (a.bounds.maxY < b.bounds.minY || b.bounds.maxY < a.bounds.minY) return null
  const from = Math.max(a.base, b.base)
  const to = Math.min(a.high, b.high)
  if (!(to > from)) return null
  const straight = a.lofts === null && b.lofts === null
  for (const share of straight ? [0] : [0, 0.5, 1]) {
    const z = Math.min(from + share * (to - from), to - 1e-9 * (to - from))
    const shared = intersection(sectionOperand(a, z), sectionOperand(b, z))
    if (area(shared) > OVERLAP_MM2) return shared
  }
  return null
}

function obstructed(entries: Entries, g: Geometry): Problem[] {
  const out: Problem[] = []
  g.formers.forEach((f, i) => {
    const entry = entries.formers[i]!
    const inTimber = g.timbers.findIndex(
      t =>
        f.from < t.high &&
        (f.to === null || f.to > t.base) &&
        [t.upper, ...(t.lofts === null ? [] : [t.lower])].some(
          edge => area(intersection(f.region, edge)) > OVERLAP_MM2
        )
    )
    if (inTimber >= 0)
      out.push({
        path: `${entry.at}/shape`,
        found: `${entry.id} where ${entries.timbers[inTimber]!.id} lies`,
        allowed: 'a former clear of the timbers',
        example: ''
      })
    if (area(difference(f.region, g.mould)) > STRAY_MM2)
      out.push({
        path: `${entry.at}/shape`,
        found: `${entry.id} outside the mould`,
        allowed: `inside the mould, ${boxWords(bounds(g.mould))}`,
        example: ''
      })
  })
  return out
}

function outsideMould(g: Geometry): Problem[] {
  const out: Problem[] = []
  if (area(difference(g.outline, g.mould)) > STRAY_MM2)
    out.push({
      path: '/mould/shape',
      found: 'a mould smaller than the outline of the piece',
      allowed: 'a mould round the outline',
      example: ''
    })
  g.pourRegions.forEach((region, i) => {
    if (region !== null && !(area(region) > STRAY_MM2))
      out.push({
        path: `/pours/${i}/region`,
        found: 'a region outside the mould',
        allowed: `inside the mould, ${boxWords(bounds(g.mould))}`,
        example: ''
      })
  })
  return out
}

function areaWords(mm2: number): string {
  return mm2 < 100 ? `${decimals(mm2, 1)} mm²` : `${decimals(mm2 / 100, 1)} cm²`
}

function boxWords(b: Bounds): string {
  return `x ${decimals(b.minX, 0)} to ${decimals(b.maxX, 0)}, y ${decimals(b.minY, 0)} to ${decimals(b.maxY, 0)} mm`
}
