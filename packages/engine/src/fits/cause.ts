import type { PourCast } from '../cast/cast.ts'
import type { StepTime } from '../cast/clock.ts'
import type { Materials } from '../cast/facts.ts'
import { RESIN_ELASTIC } from '../catalogue/resin-elastic.ts'
import type { Piece } from '../piece/piece-schema.ts'
import type { Shop } from '../piece/shop-schema.ts'
import { strainAfterGel } from '../resin/shrinkage.ts'
import { crossGrainMovement } from '../timber/movement.ts'
import { deviationsMm, TOLERANCE_RANGE_MM } from '../tolerance/iso286.ts'
import type { LivingAir } from './air.ts'
import type { Season } from './season.ts'
import type { Band, Share } from './share.ts'
import { exactly } from './share.ts'
import type { Walls } from './walls.ts'

/**
 * What each cause does to the width of a hole, on each side, mm, positive: wider.
 *
 *   cut      ± e/2; a drill cuts 0 to e larger              e  error of the machine or the hand, across
 *   class    half of the deviations of ISO 286
 *   cure     − D·S·(1 − α)/6                                 S  volume shrinkage, α conversion when cut
 *   former   − D·(S·(1 − αg)/3 + β·ΔT)/2                     αg conversion at gel, β expansion, ΔT cooling
 *   season   D·C·(M − M₀)/2 across the grain                 C  coefficient, M moisture over the year, M₀ now
 *   warmth   D·Δβ·(T − T₀)/2 in resin                        Δβ resin less metal, T of the room where it lives
 *
 * D is the width across times the share of the walls that are of that material. Resin that has gone glassy cures on
 * for months or not at all: what is left when it is cut is taken as none to all. A former holds the hole open while
 * the resin tightens on it; once it is out the hole springs to anything between its size and the free size.
 *
 * Source: resin/shrinkage (S linear in conversion), timber/movement (Wood Handbook 13-2, 13-3), tolerance/iso286;
 * springing back from a former and the errors of hands: common practice, no source; expansion of cured epoxy
 * catalogue/resin-elastic (70e-6/K), of steel 12e-6, of aluminium 23e-6 (memory): about 50e-6 apart.
 *
 * Limits: the part is taken not to move with moisture; along the grain timber is taken as still (0.1 % at most); a
 * hole in timber that resin holds all round moves less. Thickness moves too: depths leave it out.
 */

/** How much more resin grows with warmth than the metal or plastic of a part, 1/K (memory). */
const APART_PER_K = 50e-6
/** What a machine is off by where the shop does not say: its field's own default, mm (practice). */
const MACHINE_MM = 0.1

/** How far the width of what is cut this way is off, mm. */
export function errorMm(shop: Shop, way: Piece['cuts'][number]['way']): number {
  if (way === 'machine' || way === 'sent out') return shop.machine?.error ?? MACHINE_MM
  return shop.byHand[way]
}

/** What cutting does; a hole that is reamed to a class is as good as its class. */
export function cutShare(
  shop: Shop,
  cut: Pick<Piece['cuts'][number], 'way' | 'toleranceClass'>,
  acrossMm: number
): Share {
  if (cut.toleranceClass !== undefined && acrossMm <= TOLERANCE_RANGE_MM[1]) {
    const { lowerMm, upperMm } = deviationsMm(acrossMm, cut.toleranceClass)
    return { cause: 'class', sideMm: [lowerMm / 2, (lowerMm + upperMm) / 4, upperMm / 2], sure: false }
  }
  const half = errorMm(shop, cut.way) / 2
  return {
    cause: 'cut',
    sideMm: cut.way === 'drill' ? [0, half / 2, half] : [-half, 0, half],
    sure: false
  }
}

/** What the year does to a hole in timber; null where none of its walls is timber, or the species has no figure. */
export function seasonShare(
  walls: Walls,
  seasons: readonly Season[],
  materials: Materials,
  acrossMm: number
): Share | null {
  const total: [number, number, number] = [0, 0, 0]
  for (const [index, share] of walls.timbers) {
    const season = seasons[index]!
    if (season.coefficientPerPct === null) continue
    const to = (toPct: number) =>
      crossGrainMovement({
        dimensionMm: acrossMm * share,
        coefficientPerPct: season.coefficientPerPct!,
        fromPct: season.moisturePct,
        toPct,
        shrinkageStartPct: materials.timbers[index]!.shrinkageStartPct ?? 30
      })
    const [dry, damp] = [to(season.dryPct), to(season.dampPct)]
    total[0] += Math.min(dry.lowMm, damp.lowMm) / 2
    total[1] += (dry.centralMm + damp.centralMm) / 4
    total[2] += Math.max(dry.highMm, damp.highMm) / 2
  }
  return total.every(x => Math.abs(x) < 1e-9) ? null : { cause: 'season', sideMm: total, sure: true }
}

/** What warmth and cold of the room it lives in do to a hole in resin beside a part of metal. */
export function warmthShare(walls: Walls, air: LivingAir, shop: Shop, acrossMm: number): Share | null {
  const share = sum(walls.pours)
  if (share === 0) return null
  const shopC = (shop.climate.night + shop.climate.day) / 2
  const per = (acrossMm * share * APART_PER_K) / 2
  const a = per * (air.dry.tempC - shopC)
  const b = per * (air.damp.tempC - shopC)
  return { cause: 'warmth', sideMm: [Math.min(a, b, 0), (a + b) / 2, Math.max(a, b, 0)], sure: true }
}

/** What resin still shrinks by after the cut. `cutMin`: when, on the clock of the pours; null: not known. */
export function cureShare(
  walls: Walls,
  piece: Piece,
  materials: Materials,
  casts: readonly (PourCast | null)[],
  cutMin: number | null,
  acrossMm: number
): Share | null {
  let [low, high] = [0, 0]
  for (const [index, share] of walls.pours) {
    const cast = casts[index]
    if (!cast) continue
    const { min, conversion } = cast.curve
    const age = cutMin === null ? Number.POSITIVE_INFINITY : cutMin - cast.startMin
    const end = conversion[conversion.length - 1] ?? 1
    const then = at(min, conversion, age)
    const strain = (piece.pours[index]!.shrinkage ?? materials.resins[index]!.shrinkagePct) / 100 / 3
    low -= (acrossMm * share * strain * (1 - then)) / 2
    high -= (acrossMm * share * strain * Math.max(0, end - then)) / 2
  }
  return low === 0 ? null : { cause: 'cure', sideMm: [low, (low + high) / 2, high], sure: false }
}

/** What a hole that a former kept open closes by once the former is out. */
export function formerShare(
  walls: Walls,
  piece: Piece,
  materials: Materials,
  casts: readonly (PourCast | null)[],
  shop: Shop,
  acrossMm: number
): Share | null {
  let full = 0
  for (const [index, share] of walls.pours) {
    const { record, shrinkagePct } = materials.resins[index]!
    const gel = record.model?.kinetics.gelConversion ?? GEL
    const shrinkage = (piece.pours[index]!.shrinkage ?? shrinkagePct) / 100
    const peakC = casts[index]?.peakC ?? shop.climate.day
    const cooling = RESIN_ELASTIC.expansionPerK * Math.max(0, Math.min(peakC, GLASS_C) - shop.climate.night)
    full += (acrossMm * share * (strainAfterGel(shrinkage, gel) + cooling)) / 2
  }
  return full === 0 ? null : { cause: 'former', sideMm: [-full, -full / 2, 0], sure: false }
}

/** Conversion at gel of families without a model: the middle of 0.5 to 0.6 of the classes. */
const GEL = 0.55
/** Above about this resin is too soft to hold what cooling pulls, °C (classes go glassy at 45 to 60; fitted). */
const GLASS_C = 60

/** The share of a part whose size may be off: bought to a class, or so much either way. */
export function partShare(
  part: { readonly tolerance?: number | undefined; readonly toleranceClass?: string | undefined },
  sizeMm: number
): Share | null {
  if (part.toleranceClass !== undefined && sizeMm <= TOLERANCE_RANGE_MM[1]) {
    const { lowerMm, upperMm } = deviationsMm(sizeMm, part.toleranceClass)
    const sideMm: Band = [-upperMm / 2, -(lowerMm + upperMm) / 4, -lowerMm / 2]
    return { cause: 'part size', sideMm, sure: false }
  }
  const half = (part.tolerance ?? 0) / 2
  return half === 0 ? null : { cause: 'part size', sideMm: [-half, 0, half], sure: false }
}

/** The share of a coat on the part itself. */
export function partCoatShare(filmMm: number | undefined): Share | null {
  return filmMm === undefined || filmMm === 0
    ? null
    : { cause: 'part coat', sideMm: exactly(-filmMm), sure: true }
}

/** When step `i` begins, min; null for a step that is not there. */
export function beginsMin(clock: readonly StepTime[], i: number): number | null {
  return clock[i]?.startMin ?? null
}

function sum(shares: ReadonlyMap<number, number>): number {
  return [...shares.values()].reduce((total, x) => total + x, 0)
}

function at(x: readonly number[], y: readonly number[], wanted: number): number {
  const last = y[y.length - 1] ?? 1
  const k = x.findIndex(v => v >= wanted)
  if (k < 0) return last
  if (k === 0) return y[0] ?? last
  const t = (wanted - x[k - 1]!) / (x[k]! - x[k - 1]!)
  return y[k - 1]! + t * (y[k]! - y[k - 1]!)
}
