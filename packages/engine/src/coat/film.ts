import { inRange } from '../quantity/range.ts'

/**
 * What a coat builds, covers and takes.
 *
 *   dry = wet·VS/100            VS   volume solids as sold, %
 *   VS' = VS/(1 + t)            t    thinner added, by volume of the paint
 *   spread = 1000/wet           m²/l; wet in µm
 *   mass   = wet·ρ              g/m²
 *   need   = area·wet/(1000·η)  l; η share of what leaves the tin that ends on the piece
 *
 * Source: definitions of ISO 3233 (volume solids) and ISO 2808 (film thickness), memory; the rest is arithmetic:
 * 1 µm over 1 m² is 1 ml.
 * Check: 100 µm of 40 % are 40 µm dry and cover 10 m²/l; thinned by a quarter 32 µm.
 *
 * Limits: timber that drinks takes more and keeps less as film; open pores take two to five coats to fill.
 */

/** Dry film from wet, µm; `thinner` in parts by volume of the paint. */
export function dryFilmUm(wetUm: number, solidsPct: number, thinner = 0): number {
  return (film(wetUm) * thinnedSolidsPct(solidsPct, thinner)) / 100
}

/** Wet film that dries to a film, µm. */
export function wetFilmUm(dryUm: number, solidsPct: number, thinner = 0): number {
  return film(dryUm) / (thinnedSolidsPct(solidsPct, thinner) / 100)
}

/** Volume solids after thinning, %. */
export function thinnedSolidsPct(solidsPct: number, thinner: number): number {
  return inRange('volume solids', solidsPct, 0.1, 100, '%') / (1 + inRange('thinner', thinner, 0, 10))
}

/** Area of one litre, nothing lost, m²/l. */
export function spreadM2PerL(wetUm: number): number {
  return 1000 / inRange('wet film', wetUm, 0.1, 50_000, 'µm')
}

/** Mass laid on, g/m². */
export function laidGPerM2(wetUm: number, densityGMl: number): number {
  return film(wetUm) * inRange('density', densityGMl, 0.5, 3, 'g/ml')
}

/** What to have ready, ml: what is laid over the share that gets there. */
export function needMl(areaM2: number, wetUm: number, transfer: number): number {
  inRange('area', areaM2, 0, 1000, 'm²')
  return (areaM2 * film(wetUm)) / inRange('share that gets there', transfer, 0.05, 1)
}

function film(um: number): number {
  return inRange('film', um, 0, 50_000, 'µm')
}
