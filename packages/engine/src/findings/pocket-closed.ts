import { partsOf } from '../cuts/area/clearing-tree.ts'
import type { Rest } from '../cuts/area/rest-region.ts'
import { restRegion } from '../cuts/area/rest-region.ts'
import type { Cutter } from '../cuts/run/cutters.ts'
import { cuttersOf } from '../cuts/run/cutters.ts'
import type { Entry } from '../piece/entry.ts'
import type { Cut } from '../piece/piece-schema.ts'
import { decimals } from '../quantity/format.ts'
import { kept } from '../quantity/kept.ts'
import { difference } from '../shape/combine.ts'
import { inradius } from '../shape/inradius.ts'
import { area, bounds, ringArea } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import type { Check, Found } from './finding.ts'
import { removeValue, rounded, setQuantity, setValue } from './fix.ts'
import type { Work } from './work.ts'

/** A pocket for the machine that none of its cutters goes into, wholly or in part. */
export const pocketClosed: Check = {
  id: 'pocket-closed',
  about: 'a pocket or a part of it too narrow for every cutter: drawn so, or closed by its islands',
  cases: [],
  run
}

/** Forms that clear a floor between upright walls. */
const CLEARS = new Set(['flat', 'ball', 'bull'])
/** Widened by no more than this as a fix, mm: more is another pocket. */
const LITTLE_MM = 1
/** Below this no milling shop takes it: the smallest end mill in common use, mm (practice). */
const LEAST_MILLED_MM = 1
/**
 * Radius of the largest disc in what is left, as a share of the cutter's, above which it is no corner: a corner of
 * 45° keeps (1 − sin 22.5°)/(1 + sin 22.5°) = 0.447.
 */
const CORNER_SHARE = 0.45
const BASIS =
  'plane geometry: the largest disc that lies in it; cutters of the shop, or the usual sizes where it lists none'

function run(work: Work): Found[] {
  if (work.shop.machine === undefined) return []
  const box = cuttersOf(work.shop).cutters.filter(c => CLEARS.has(c.shape.form))
  return work.entries.cuts.flatMap((cut): Found[] => {
    const region = work.stack.geometry.cutRegions[cut.index] ?? null
    const { way, kind } = cut.value
    if (region === null || way !== 'machine' || (kind !== 'pocket' && kind !== 'slot')) return []
    const depth = work.stack.cuts[cut.index]!.day ?? 0
    const long = box.filter(c => c.shape.reachMm >= depth)
    const named =
      cut.value.cutter === undefined ? undefined : box.find(c => c.own && c.id === cut.value.cutter)
    const least = named ?? smallest(long.length > 0 ? long : box)
    if (least === null) return []
    const d = least.shape.diameterMm
    if (plainWidth(cut.value) >= d) return []
    // One that leaves the piece is open: the cutter comes in from outside.
    if (area(difference(region, work.stack.geometry.outline)) > 1) return []
    const rest = restOf(region, d)
    return rest.cleared.rings.length === 0
      ? [closed(work, cut, region, least)]
      : partly(cut, rest.region, least)
  })
}

// Width of a plain rectangle or disc, nothing standing in it; 0 of every other shape.
function plainWidth({ shape, islands }: Cut): number {
  if (shape === undefined || islands !== undefined) return 0
  const across = shape.circle ?? (shape.rectangle === undefined ? 0 : Math.min(...shape.rectangle))
  return across * (shape.scale ?? 1) + 2 * (shape.grow ?? 0)
}

// A drawing stays as it is while the piece is edited.
const rests = new Map<string, Rest>()
const MOST_RESTS = 64

function restOf(region: Region, d: number): Rest {
  const key = `${d} ${region.rings.map(r => r.join(' ')).join(',')}`
  return kept(rests, key, () => restRegion(region, d, (CORNER_SHARE * d) / 4), MOST_RESTS)
}

function smallest(cutters: readonly Cutter[]): Cutter | null {
  return cutters.reduce<Cutter | null>(
    (a, b) => (a === null || b.shape.diameterMm < a.shape.diameterMm ? b : a),
    null
  )
}

function closed(work: Work, cut: Entry<Cut>, region: Region, least: Cutter): Found {
  const widest = 2 * inradius(region, 0.02).radiusMm
  const d = least.shape.diameterMm
  const islands =
    cut.value.islands !== undefined && 2 * inradius({ rings: outersOf(region) }, 0.02).radiusMm >= d
  return {
    severity: 'stop',
    at: cut.at,
    says: `${cut.id} is ${decimals(widest, 2)} mm wide at its widest${islands ? ', closed in by its islands' : ''}; ${cutterWords(cut, least)} does not go in, and nothing of it is cut. One of ${decimals(Math.max(0, Math.floor(widest * 10) / 10), 1)} mm or less would do.`,
    value: widest,
    unit: 'mm',
    limit: d,
    basis: BASIS,
    ...wider(work, cut, widest, d)
  }
}

function cutterWords({ value }: Entry<Cut>, least: Cutter): string {
  if (value.cutter === least.id) return `the cutter it is given, ${least.name},`
  return `the smallest cutter ${least.own ? 'of the shop' : 'in common use'}, ${least.name},`
}

function outersOf(region: Region): Region['rings'] {
  return region.rings.filter(r => ringArea(r) > 0)
}

// A little wider where that changes nothing else; else sent to who has the cutter; else drawn anew.
function wider(
  work: Work,
  { at, id, value }: Entry<Cut>,
  widest: number,
  d: number
): Pick<Found, 'fix' | 'fixSays'> {
  // Given a cutter that does not go in: the plan chooses one that does, where there is one.
  const smaller = cuttersOf(work.shop).cutters.some(
    c => c.own && CLEARS.has(c.shape.form) && c.shape.diameterMm < widest
  )
  if (value.cutter !== undefined && smaller)
    return { fix: removeValue(work.document, `${at}/cutter`), fixSays: `Another cutter for ${id}` }
  const lacking = d - widest
  if (lacking <= LITTLE_MM && value.islands === undefined && value.for === undefined) {
    const by = rounded(lacking / 2, 'up', 0.01)
    return {
      fix: setQuantity(
        work.document,
        `${at}/shape/grow`,
        'length',
        (value.shape?.grow ?? 0) + by,
        'up',
        0.01
      ),
      fixSays: `${id} ${decimals(2 * by, 2)} mm wider`
    }
  }
  if (widest < LEAST_MILLED_MM) return {}
  return { fix: setValue(work.document, `${at}/way`, 'sent out'), fixSays: `Send ${id} out` }
}

// What stays standing between wall and island, or in a narrow end; corners are another matter.
function partly(cut: Entry<Cut>, rest: Region, least: Cutter): Found[] {
  const d = least.shape.diameterMm
  const limit = (CORNER_SHARE * d) / 2
  let worst: { x: number; y: number; radiusMm: number } | null = null
  for (const part of partsOf(rest)) {
    const { minX, maxX, minY, maxY } = bounds(part)
    if (area(part) < Math.PI * limit ** 2 || Math.min(maxX - minX, maxY - minY) < 2 * limit) continue
    const disc = inradius(part, 0.02)
    if (disc.radiusMm > Math.max(limit, worst?.radiusMm ?? 0)) worst = disc
  }
  if (worst === null) return []
  return [
    {
      severity: 'caution',
      at: cut.at,
      says: `${cut.id} narrows to ${decimals(2 * worst.radiusMm, 1)} mm at (${decimals(worst.x, 1)}, ${decimals(worst.y, 1)}); ${cutterWords(cut, least)} does not get in there and leaves it standing. Draw it wider, take a smaller cutter, or clear it with a chisel.`,
      value: 2 * worst.radiusMm,
      unit: 'mm',
      limit: d,
      basis: BASIS
    }
  ]
}
