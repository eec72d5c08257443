import type { Materials } from '../cast/facts.ts'
import type { CoatRecord } from '../catalogue/coat.ts'
import { coefficientOf } from '../catalogue/timber.ts'
import type { TimberRecord } from '../catalogue/timber-record.ts'
import type { Timber } from '../piece/piece-schema.ts'
import type { Shop } from '../piece/shop-schema.ts'
import { shortName } from '../quantity/short-name.ts'
import {
  coefficientAtRingAnglePerPct,
  crossGrainMovement,
  longitudinalMovement,
  RING_ANGLE_DEG
} from '../timber/movement.ts'
import { daysToFraction } from '../timber/settle.ts'
import { settledPct, shopAir, standingAir } from './air.ts'
import type { Season } from './season.ts'

type Range = readonly [low: number, central: number, high: number]

/** Where a timber comes to stand, how long that takes, and what it moves over a year there. */
export interface Stand {
  /** Balance of the air it stands in now, of the shop, and of the driest and dampest air where it will live, %. */
  readonly nowPct: number
  readonly shopPct: number
  readonly winterPct: number
  readonly summerPct: number
  /** Days until nine tenths of a change of air are through it: bare on both faces, and finished as the piece says. */
  readonly bareDays: Range
  readonly finishedDays: Range
  /** One face lets water through far slower than the other. */
  readonly oneSided: boolean
  /** How its faces are finished, for the days: "hardwax oil on both faces". */
  readonly faces: string
  /**
   * What it moves from the driest to the dampest air, mm: over its width as its rings stand, were it quartersawn and
   * were it flat-sawn; through its thickness; along its length. null where the catalogue has no coefficient.
   */
  readonly widthMm: Range | null
  readonly radialMm: Range | null
  readonly tangentialMm: Range | null
  readonly thicknessMm: Range | null
  readonly lengthMm: Range
}

/** Share of a change that counts as settled. */
const SETTLED = 0.9

/**
 * How much longer a coated face takes: from the share of water that coats kept out of panels over 14 days at 90 %
 * humidity (Wood Handbook ch. 16, moisture-excluding effectiveness; memory): oils and wax next to nothing, varnish and
 * lacquer a fifth to two thirds, thick epoxy nine tenths. 1/(1 − share) is taken as the factor (derived).
 */
const SLOWER: Readonly<Record<CoatRecord['kind'], readonly [low: number, high: number]>> = {
  penetrating: [1, 1.2],
  film: [1.25, 3],
  flood: [5, 10]
}

/** One timber; `lengthMm` and `thickMm` are those of the timber in the piece. */
export function standOf(
  timber: Timber,
  record: TimberRecord,
  season: Season,
  materials: Materials,
  shop: Shop,
  lengthMm: number,
  thickMm: number
): Stand {
  const { dryPct, dampPct, acrossMm } = season
  const now = standingAir(shop)
  const bench = shopAir(shop)
  const start = record.shrinkageStartPct ?? 30
  const across = (mm: number, c: number | null): Range | null => {
    if (c === null) return null
    const m = crossGrainMovement({
      dimensionMm: mm,
      coefficientPerPct: c,
      fromPct: dryPct,
      toPct: dampPct,
      shrinkageStartPct: start
    })
    return [m.lowMm, m.centralMm, m.highMm]
  }
  const radial = coefficientOf(record, 'radial')?.value ?? null
  const tangential = coefficientOf(record, 'tangential')?.value ?? null
  // Through the thickness the rings stand the other way round.
  const through =
    radial === null || tangential === null
      ? null
      : coefficientAtRingAnglePerPct(radial, tangential, 90 - RING_ANGLE_DEG[timber.rings])
  const along = longitudinalMovement(Math.min(100_000, lengthMm), dryPct, dampPct)
  const bare = daysToFraction({ thicknessMm: Math.max(0.1, thickMm), openFaces: 2 }, SETTLED)
  const { factor, words, oneSided } = facesOfTimber(materials)
  return {
    nowPct: settledPct(now.tempC, now.humidityPct),
    shopPct: settledPct(bench.tempC, bench.humidityPct),
    winterPct: dryPct,
    summerPct: dampPct,
    bareDays: [bare.lowDays, bare.centralDays, bare.highDays],
    finishedDays: [
      bare.lowDays * factor[0],
      bare.centralDays * Math.sqrt(factor[0] * factor[1]),
      bare.highDays * factor[1]
    ],
    oneSided,
    faces: words,
    widthMm: across(acrossMm, season.coefficientPerPct),
    radialMm: across(acrossMm, radial),
    tangentialMm: across(acrossMm, tangential),
    thicknessMm: across(thickMm, through),
    lengthMm: [along.lowMm, along.centralMm, along.highMm]
  }
}

/** So many times slower one face than the other counts as open on one face (judgement). */
const UNLIKE = 1.5

// The faster face leads at first; with unlike faces the timber dries as if by that one, as a slab twice as thick.
function facesOfTimber({ coats: { front, back } }: Materials): {
  factor: readonly [number, number]
  words: string
  oneSided: boolean
} {
  const of = (coat: CoatRecord | null) => (coat === null ? ([1, 1] as const) : SLOWER[coat.kind])
  const name = (coat: CoatRecord | null) => (coat === null ? 'bare' : shortName(coat.name))
  if (front?.id === back?.id)
    return {
      factor: of(front),
      words: front === null ? 'both faces bare' : `${name(front)} on both faces`,
      oneSided: false
    }
  const [a, b] = [of(front), of(back)]
  return {
    factor: [Math.min(a[0], b[0]), Math.min(4 * Math.min(a[1], b[1]), Math.max(a[1], b[1]))],
    words: `front ${name(front)}, back ${name(back)}`,
    oneSided: Math.sqrt(Math.max(a[0] * a[1], b[0] * b[1]) / Math.min(a[0] * a[1], b[0] * b[1])) >= UNLIKE
  }
}
