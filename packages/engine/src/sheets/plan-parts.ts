import type { Work } from '../findings/work.ts'
import type { Face } from '../piece/piece-schema.ts'
import { difference, intersection, union } from '../shape/combine.ts'
import { area, bounds } from '../shape/measure.ts'
import type { Bounds, Region } from '../shape/region.ts'
import { coreAt } from '../stack/core.ts'
import type { Material } from '../stack/event.ts'
import { removalPlan } from '../stack/event.ts'
import type { CoreModel } from './core-model.ts'
import { seenColour } from './look.ts'

/** A part of a face that looks alike: what lies on top, and the colour seen; both null where nothing is. */
export interface PlanPart {
  readonly region: Region
  readonly top: Material | null
  readonly colour: `#${string}` | null
}

/** Parts smaller than this are left to their neighbour, mm². */
const SLIVER_MM2 = 0.05
/** Dividers beyond this number are those of the far side, which are let go first. */
const MOST_DIVIDERS = 240

/**
 * The outline divided by everything that changes what is seen (timbers, cuts of both faces, formers, dams), each
 * part with the colour of a core inside it; parts alike are joined. Layers lie level and floors are flat, so
 * that is exact but for slanted sides, where the core in the middle of a part speaks for it.
 */
export function planParts(work: Work, model: CoreModel, face: Face): PlanPart[] {
  const { stack } = work
  let parts: Part[] = [partOf(stack.geometry.outline)]
  for (const divider of dividers(work, face)) {
    const box = bounds(divider)
    parts = parts.flatMap(p => {
      if (apart(p.box, box)) return [p]
      return [intersection(p.region, divider), difference(p.region, divider)]
        .filter(r => area(r) > SLIVER_MM2)
        .map(partOf)
    })
  }
  // Scales are drawn as lines of their own: a core that hits one speaks for the line only.
  const events = model.events.filter(e => e.kind !== 'mark' && !(e.kind === 'fill' && e.what === 'marking'))
  const alike = new Map<string, { top: Material | null; colour: `#${string}` | null; regions: Region[] }>()
  for (const { region } of parts) {
    const place = placeInside(region)
    if (place === null) continue
    const core = coreAt(model.geometry, events, place.x, place.y)
    const fromBack = (face === 'front') === (model.down === 'back') ? core : [...core].reverse()
    const colour = seenColour(model.looks, core, face)
    const top = fromBack[fromBack.length - 1]?.material ?? null
    const key = `${top?.kind} ${top?.index} ${colour}`
    const known = alike.get(key)
    if (known === undefined) alike.set(key, { top, colour, regions: [region] })
    else known.regions.push(region)
  }
  return [...alike.values()].map(({ top, colour, regions }) => ({ region: union(...regions), top, colour }))
}

interface Part {
  readonly region: Region
  readonly box: Bounds
}

function partOf(region: Region): Part {
  return { region, box: bounds(region) }
}

function apart(a: Bounds, b: Bounds): boolean {
  return a.maxX <= b.minX || b.maxX <= a.minX || a.maxY <= b.minY || b.maxY <= a.minY
}

function dividers(work: Work, face: Face): Region[] {
  const { stack } = work
  const g = stack.geometry
  const out: Region[] = []
  for (const t of g.timbers) {
    out.push(t.upper)
    if (t.lofts !== null) out.push(t.lower)
  }
  for (const f of g.formers) out.push(f.region)
  for (const r of g.pourRegions) if (r !== null) out.push(r)
  const cuts = stack.events.flatMap(e => (e.kind === 'cut' ? [e] : []))
  const near = cuts.filter(e => work.piece.cuts[e.index]!.face === face)
  const far = cuts.filter(e => work.piece.cuts[e.index]!.face !== face)
  for (const e of [...near, ...far]) {
    if (out.length >= MOST_DIVIDERS) break
    out.push(removalPlan(e.removal, stack.cuts[e.index]!.faceZ))
  }
  return out.filter(r => r.rings.length > 0)
}

/**
 * A place well inside a region: the middle of the widest stretch of five level lines through it; of five through
 * each of its outlines where those find nothing, as between two strips far apart.
 */
function placeInside(region: Region): { x: number; y: number } | null {
  return (
    widestStretch(region, [region]) ??
    widestStretch(
      region,
      region.rings.map(ring => ({ rings: [ring] }))
    )
  )
}

function widestStretch(region: Region, through: readonly Region[]): { x: number; y: number } | null {
  let best: { x: number; y: number; wide: number } | null = null
  for (const b of through.map(bounds)) {
    for (const share of [0.5, 0.31, 0.69, 0.12, 0.88]) {
      const y = b.minY + share * (b.maxY - b.minY) + 1e-7
      const xs: number[] = []
      for (const ring of region.rings) {
        for (let k = 0, p = ring.length - 2; k < ring.length; p = k, k += 2) {
          const [py, qy] = [ring[p + 1]!, ring[k + 1]!]
          if (py > y !== qy > y) xs.push(ring[p]! + ((y - py) / (qy - py)) * (ring[k]! - ring[p]!))
        }
      }
      xs.sort((a, c) => a - c)
      for (let k = 0; k + 1 < xs.length; k += 2) {
        const wide = xs[k + 1]! - xs[k]!
        if (best === null || wide > best.wide) best = { x: (xs[k]! + xs[k + 1]!) / 2, y, wide }
      }
    }
  }
  return best
}
