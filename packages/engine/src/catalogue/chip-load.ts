/** What a cutter meets, by how it is cut: timber by density at 12 %, sheet of fibre or veneer, cast resin. */
export type CutMaterial = 'softwood' | 'hardwood' | 'dense' | 'board' | 'resin'

type Range = readonly [low: number, high: number]

/**
 * Chip per tooth, mm, of carbide end mills by diameter.
 *
 * Source: common workshop practice, no published table behind it: ranges for two flutes (resin: one or two polished
 * flutes) on a small router that is rigid enough.
 * Check: the rows themselves, in evidence.
 * Limits: a starting point. Dense timber is taken as the lower half of hardwood. Maker's data of a cutter goes before.
 */
export const CHIP_LOAD_MM: readonly {
  readonly diameterMm: number
  readonly softwood: Range
  readonly hardwood: Range
  readonly board: Range
  readonly resin: Range
  readonly rpm: Range
}[] = [
  {
    diameterMm: 1,
    softwood: [0.01, 0.02],
    hardwood: [0.008, 0.015],
    board: [0.01, 0.03],
    resin: [0.008, 0.015],
    rpm: [18_000, 24_000]
  },
  // Practice gives one range for 1.5 to 2.
  {
    diameterMm: 1.5,
    softwood: [0.02, 0.05],
    hardwood: [0.015, 0.04],
    board: [0.02, 0.06],
    resin: [0.015, 0.03],
    rpm: [18_000, 24_000]
  },
  {
    diameterMm: 2,
    softwood: [0.02, 0.05],
    hardwood: [0.015, 0.04],
    board: [0.02, 0.06],
    resin: [0.015, 0.03],
    rpm: [18_000, 24_000]
  },
  {
    diameterMm: 3,
    softwood: [0.05, 0.1],
    hardwood: [0.04, 0.08],
    board: [0.05, 0.12],
    resin: [0.03, 0.07],
    rpm: [16_000, 22_000]
  },
  {
    diameterMm: 4,
    softwood: [0.08, 0.15],
    hardwood: [0.06, 0.12],
    board: [0.08, 0.2],
    resin: [0.05, 0.1],
    rpm: [16_000, 20_000]
  },
  {
    diameterMm: 6,
    softwood: [0.15, 0.3],
    hardwood: [0.1, 0.25],
    board: [0.2, 0.4],
    resin: [0.08, 0.18],
    rpm: [12_000, 18_000]
  },
  {
    diameterMm: 8,
    softwood: [0.2, 0.4],
    hardwood: [0.15, 0.3],
    board: [0.25, 0.5],
    resin: [0.1, 0.2],
    rpm: [12_000, 16_000]
  },
  {
    diameterMm: 12,
    softwood: [0.35, 0.55],
    hardwood: [0.3, 0.5],
    board: [0.4, 0.65],
    resin: [0.2, 0.3],
    rpm: [10_000, 16_000]
  }
]

/** Of V bits and engraving; of bits that flatten, 20 to 50 mm across. Practice as above. */
export const V_CHIP_MM: Range = [0.02, 0.08]
export const SURFACING_CHIP_MM: Range = [0.15, 0.4]
export const SURFACING_RPM: Range = [10_000, 14_000]

/**
 * Energy of cutting, N/mm² (= J/cm³), at a chip of about 0.1 mm, and how it grows as the chip thins:
 *
 *   kc(h) = kc(0.1)·(h/0.1)^−m
 *
 * Source: orders of magnitude from memory, low confidence; the form with its power of the chip after sawing studies
 * on pine (force = chip × width × constant × factors); m 0.3 to 0.6 of wood. Of resin m is taken low: no source.
 * Limits: density alone tells force only roughly; a dull edge takes 1.3 to 2 times as much.
 */
export const CUTTING_ENERGY: Readonly<
  Record<CutMaterial, { readonly kcNmm2: Range; readonly power: number }>
> = {
  softwood: { kcNmm2: [10, 25], power: 0.45 },
  hardwood: { kcNmm2: [20, 45], power: 0.45 },
  dense: { kcNmm2: [40, 90], power: 0.45 },
  board: { kcNmm2: [25, 60], power: 0.45 },
  resin: { kcNmm2: [100, 250], power: 0.3 }
}
