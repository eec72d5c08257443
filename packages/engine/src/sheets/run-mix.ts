import type { TintPigment } from '../cast/facts.ts'
import { fillOfMarking } from '../cast/fill.ts'
import type { ResinMix } from '../catalogue/resin.ts'
import { mixLots } from '../cost/mix-lots.ts'
import type { Work } from '../findings/work.ts'
import type { Lengths } from '../piece/lengths.ts'
import { formatVolume, scaleWords } from '../quantity/format.ts'
import { capital } from './model.ts'
import type { RunAmounts, RunShare } from './run-part.ts'

/** Decimals that a scale of steps of `resolution` grams shows. */
function scalePlaces(resolution: number): number {
  return Math.max(0, Math.ceil(-Math.log10(resolution) - 1e-9))
}

/** Mass to the nearest step of the scale, g. */
export function weighed(g: number, resolution: number): number {
  return Number((Math.round(g / resolution) * resolution).toFixed(scalePlaces(resolution)))
}

/** Millilitres as a cup can be read: tenths below 20. */
export function mlWords(ml: number): string {
  return formatVolume(ml).replace(/ m?l$/, '')
}

/**
 * What goes into each of `batches` equal vessels of a mix of `mixedG` grams in all. Tint counts inside the
 * mass, and the rest keeps A : B by mass.
 */
export function mixAmounts(input: {
  readonly mixedG: number
  readonly batches: number
  readonly mix: ResinMix
  readonly tint: readonly TintPigment[]
  readonly resolution: number
  readonly blanks: number
  readonly vessel: string
  readonly lot: string | null
}): RunAmounts {
  const { mixedG, batches, mix, tint, resolution } = input
  const batchG = mixedG / batches
  const resinG = batchG * (1 - tint.reduce((sum, t) => sum + t.share, 0))
  const aG = (resinG * mix.massA) / (mix.massA + mix.massB)
  const bG = resinG - aG
  const places = scalePlaces(resolution)
  const share = (name: string, g: number, ml: number | null): RunShare => {
    const scant = ml === null && g < LEAST_STEPS * resolution
    const shown = scant ? Number(g.toPrecision(2)) : weighed(g, resolution)
    return { name, g: shown, words: scant ? String(shown) : scaleWords(shown, places), ml }
  }
  const shares = [
    share('Part A', aG, aG / mix.densityAGMl),
    share('Part B', bG, bG / mix.densityBGMl),
    ...tint.map(t => share(t.pigment.name, batchG * t.share, null))
  ]
  const totalG = weighed(
    shares.reduce((sum, s) => sum + s.g, 0),
    resolution
  )
  const { blanks, vessel, lot } = input
  return { batches, shares, totalG, mixedG, places, blanks, vessel, lot }
}

/** Steps of the scale under which a pigment is not weighed by itself: ten steps are 5 % at half a step. */
const LEAST_STEPS = 10

/**
 * Pigments that the scale cannot weigh, each with the way round it: one part in nine of A, weighed out of
 * that. 5 % is the error of half a step in ten.
 */
export function scantTints(
  tint: readonly TintPigment[],
  batchG: number,
  resolution: number
): readonly string[] {
  const places = scalePlaces(resolution)
  return tint.flatMap(t => {
    const g = batchG * t.share
    if (g >= LEAST_STEPS * resolution) return []
    const exact = `${Number(g.toPrecision(2))} g`
    if (10 * g < LEAST_STEPS * resolution)
      return [
        `${capital(t.pigment.name)}: ${exact} is too little for this scale, thinned or not. Use a finer one.`
      ]
    const stock = Math.max(LEAST_STEPS * resolution, 2 * g)
    return [
      `${capital(t.pigment.name)}: ${exact} is too little for this scale. Stir ${scaleWords(weighed(stock, resolution), places)} g of it into ${scaleWords(weighed(9 * stock, resolution), places)} g of part A, weigh ${scaleWords(weighed(10 * g, resolution), places)} g of that, and take ${scaleWords(weighed(9 * g, resolution), places)} g less of part A.`
    ]
  })
}

/** What a marking's lines hold and what is mixed to fill them, after `fill.ts`. */
export interface FillMix {
  readonly linesMl: number
  readonly amounts: RunAmounts
  readonly resin: string
}

/** The mix for a filled marking as it is weighed. */
export function fillMix(work: Work, marking: number): FillMix {
  const { resin, tint, linesMl, mixedG } = fillOfMarking(work.stack, work.materials, work.shop, marking)
  const fill = work.piece.markings.slice(0, marking).filter(m => m.filled !== undefined).length
  return {
    linesMl,
    resin: resin.name,
    amounts: mixAmounts({
      mixedG,
      batches: 1,
      mix: resin.mix,
      tint,
      resolution: work.shop.scale.resolution,
      blanks: 1,
      vessel: 'small cup',
      lot: mixLots(work.needs, work.shop, { fill })?.sure ?? null
    })
  }
}

/** "2500 ml vessel, 160 mm wide". */
export function vesselWords(capacityMl: number, diameterMm: number | null, L: Lengths): string {
  const wide = diameterMm === null ? '' : `, ${L.of(diameterMm, 0)} ${L.unit} wide`
  return `${formatVolume(capacityMl)} vessel${wide}`
}

/** "One batch", "2 batches for 14 blanks together, each". */
export function batchesTitle({ batches, blanks }: RunAmounts): string {
  const together = blanks > 1 ? ` for ${blanks} blanks together` : ''
  return batches === 1 ? `One batch${together}` : `${batches} batches${together}, each`
}
