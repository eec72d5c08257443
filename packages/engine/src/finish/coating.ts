import type { CoatRecord } from '../catalogue/coat.ts'
import { laidGPerM2, needMl, spreadM2PerL, wetFilmUm } from '../coat/film.ts'
import { standingUm } from '../coat/sag.ts'
import type { Depth } from '../coat/scratch.ts'

/**
 * The coats of a face, one like the other.
 *
 *   minutes a coat = 10 + area × (brush 10, wipe 12, pad 4, spray 4, pour 10 min/m²)
 *
 * Source: films, solids and transfer of the catalogue (practice); minutes: common practice, no published source:
 * time yours. What stands on an edge: for resin the flow of a film without solvent (coat/sag), for all else the
 * thickest wet film that practice lays.
 * Check: 2 × 30 µm on 0.0806 m² at 0.9 take 5.37 ml; a flood of 2.6 mm on 0.0682 m² 197 ml.
 *
 * Limits: minutes of the hand alone: no drying between, no cleaning of guns.
 */
export interface Coating {
  /** Wet and dry film of one coat, µm. */
  readonly wetUm: Depth
  readonly dryUm: Depth
  readonly spreadM2PerL: number
  /** Laid by one coat, what is lost not counted, g/m². */
  readonly laidGPerM2: number
  /** To have ready for one coat, ml and g. */
  readonly eachMl: number
  readonly eachG: number
  readonly eachMin: number
  /** Wet film that stands on an upright edge, µm; null where the coat stays off it. */
  readonly standsUm: number | null
}

const SETUP_MIN = 10
const MIN_PER_M2 = { brush: 10, wipe: 12, pad: 4, spray: 4, pour: 10 } as const
/** Thin epoxy as it is brushed, Pa·s and kg/m³ (practice: 0.5 to 0.9, fresh). */
const BRUSHED_RESIN = { paS: 0.6, kgM3: 1100 } as const

/** One coat of `coats`; `filmMm`: the dry film of all that the document asks for. */
export function coatingOf(
  coat: CoatRecord,
  coats: number,
  filmMm: number | undefined,
  areaM2: number
): Coating {
  const [wetUm, dryUm] = films(coat, coats, filmMm)
  // Of a film the thicker end, so that it does not run out; a flood is as deep as it is poured.
  const takeUm = coat.kind === 'flood' && filmMm === undefined ? wetUm[1] : wetUm[2]
  const eachMl = needMl(areaM2, takeUm, Math.max(0.05, coat.transfer[0]))
  return {
    wetUm,
    dryUm,
    spreadM2PerL: spreadM2PerL(Math.max(0.1, wetUm[1])),
    laidGPerM2: laidGPerM2(wetUm[1], coat.densityGMl),
    eachMl,
    eachG: eachMl * coat.densityGMl,
    eachMin: SETUP_MIN + areaM2 * MIN_PER_M2[coat.way],
    standsUm: standsOf(coat)
  }
}

function films(coat: CoatRecord, coats: number, filmMm: number | undefined): [wet: Depth, dry: Depth] {
  const solids = coat.solidsPct
  if (filmMm !== undefined && coat.kind !== 'penetrating') {
    const dry = (1000 * filmMm) / Math.max(1, coats)
    const [low, high] = solids ?? [100, 100]
    return [
      [wetFilmUm(dry, high), wetFilmUm(dry, (low + high) / 2), wetFilmUm(dry, low)],
      [dry, dry, dry]
    ]
  }
  const wet = spread(coat.wetFilmUm ?? coat.dryFilmUm)
  if (filmMm !== undefined) {
    const dry = (1000 * filmMm) / Math.max(1, coats)
    return [wet, [dry, dry, dry]]
  }
  return [wet, spread(coat.dryFilmUm)]
}

function standsOf(coat: CoatRecord): number | null {
  if (coat.kind !== 'film' || coat.wetFilmUm === null) return null
  // Resin stiffens in hours, not in seconds.
  return coat.carrier === 'none' ? standingUm(BRUSHED_RESIN.paS, BRUSHED_RESIN.kgM3) : coat.wetFilmUm[1]
}

function spread([low, high]: readonly [number, number]): Depth {
  return [low, (low + high) / 2, high]
}
