import { openPoredOf } from '../catalogue/timber.ts'
import type { TimberRecord } from '../catalogue/timber-record.ts'
import type { Timber } from '../piece/piece-schema.ts'
import { airFraction, resinUptakeBoundGPerM2 } from '../timber/density.ts'

/** The coat that seals a timber before the pour. */
export interface SealCoat {
  readonly areaM2: number
  /** Resin with hardener, g: low, middle, high; the high end is what to have. */
  readonly massG: readonly [low: number, central: number, high: number]
  readonly gPerM2: readonly [low: number, high: number]
  /** Why: "open pores, charred". */
  readonly because: string
  /** What one square metre could drink if every void filled a millimetre deep, g: no coat takes more. */
  readonly boundGPerM2: number
}

/**
 * A brushed seal coat, g of mixed resin a square metre: a film of 0.1 to 0.2 mm on fine-pored timber, up to 0.3 on open
 * pores that drink (common practice, no source; near the coat's own range in the catalogue). Charred timber takes half as
 * much again (judgement).
 */
const G_PER_M2 = { fine: [110, 220], open: [160, 330] } as const
const CHARRED = 1.5

/** Accessible depth for the bound, mm: what vessels cut open along the grain let in. */
const BOUND_DEPTH_MM = 1

/** Seal coat of one timber; null when it is not sealed. `coatedMm2` is all that resin will touch. */
export function sealOf(
  timber: Timber,
  record: TimberRecord,
  coatedMm2: number,
  densityKgM3: number,
  moisturePct: number,
  resinKgM3: number
): SealCoat | null {
  if (timber.sealed === 'no' || coatedMm2 <= 0) return null
  const pores = openPoredOf(record)
  // Pores nobody knows of count as open: that end runs out.
  const open = pores?.open ?? true
  const [low, high] = open ? G_PER_M2.open : G_PER_M2.fine
  const charred = timber.charred > 0 || timber.charredTop > 0
  const by = charred ? CHARRED : 1
  const areaM2 = coatedMm2 / 1e6
  const moist = Math.min(moisturePct, 100)
  const gravity = Math.min(1.5, Math.max(0.1, densityKgM3 / 1000 / (1 + moist / 100)))
  return {
    areaM2,
    massG: [areaM2 * low * by, (areaM2 * (low + high) * by) / 2, areaM2 * high * by],
    gPerM2: [low * by, high * by],
    because: `${pores === null ? 'pores not known' : open ? 'open pores' : 'fine pores'}${charred ? ', charred' : ''}`,
    boundGPerM2: resinUptakeBoundGPerM2(airFraction(gravity, moist), BOUND_DEPTH_MM, resinKgM3)
  }
}
