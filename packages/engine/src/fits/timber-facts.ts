import type { Materials } from '../cast/facts.ts'
import type { Floating } from '../cast/floating.ts'
import { grainDegOf } from '../piece/grain.ts'
import type { Shop } from '../piece/shop-schema.ts'
import { coatedArea } from '../stack/solid.ts'
import type { Stack } from '../stack/stack.ts'
import { settledPct, standingAir } from './air.ts'
import type { Cupping } from './cupping.ts'
import { cuppingOf } from './cupping.ts'
import type { HoldDownBy } from './hold-down.ts'
import { holdDownBy } from './hold-down.ts'
import type { RoughThickness } from './rough.ts'
import { roughOf } from './rough.ts'
import type { SealCoat } from './seal.ts'
import { sealOf } from './seal.ts'
import type { Season } from './season.ts'
import { builtIn, extent } from './season.ts'
import type { Stand } from './stand.ts'
import { standOf } from './stand.ts'

/** What is reckoned of a timber besides its moisture. */
export interface TimberFacts {
  readonly timber: number
  readonly stand: Stand
  readonly cupping: Cupping
  readonly rough: RoughThickness | null
  /** null: not sealed, or nothing is cast. */
  readonly seal: SealCoat | null
  readonly holding: HoldDownBy | null
}

/** One entry a timber. */
export function timberFactsOf(
  stack: Stack,
  materials: Materials,
  shop: Shop,
  seasons: readonly Season[],
  floating: readonly Floating[]
): TimberFacts[] {
  const air = standingAir(shop)
  const surfacePct = settledPct(air.tempC, air.humidityPct)
  const cast = stack.piece.pours.findIndex(p => p.kind === 'cast')
  return stack.geometry.timbers.map((solid, i): TimberFacts => {
    const timber = stack.piece.timbers[i]!
    const record = materials.timbers[i]!
    const season = seasons[i]!
    const { hold, densityKgM3 } = floating[i]!
    const lengthMm = extent(solid.upper, grainDegOf(timber, solid.upper))
    const thickMm = Math.max(0.2, solid.high - solid.base)
    // What flattening reaches of this timber.
    const belowMm = Math.min(thickMm, Math.max(0, stack.finishedLow - solid.base))
    const aboveMm = Math.min(thickMm - belowMm, Math.max(0, solid.high - stack.finishedHigh))
    const finishedMm = thickMm - belowMm - aboveMm
    const stand = standOf(timber, record, season, materials, shop, lengthMm, thickMm)
    const cupping = cuppingOf(timber, record, season, surfacePct, thickMm, belowMm, aboveMm, stand.oneSided)
    return {
      timber: i,
      stand,
      cupping,
      rough: roughOf({
        timber,
        record,
        season,
        pithMm: cupping.pithMm,
        finishedMm,
        belowMm,
        aboveMm,
        lengthMm,
        setPct: builtIn(season.dryPct, season.dampPct).wellPct
      }),
      seal:
        cast < 0
          ? null
          : sealOf(
              timber,
              record,
              coatedArea(solid),
              densityKgM3,
              season.moisturePct,
              materials.resins[cast]!.densityGMl * 1000
            ),
      holding: holdDownBy(
        timber.held,
        hold.holdDownG,
        thickMm,
        Math.min(1.5, Math.max(0.1, densityKgM3 / 1000 / (1 + Math.min(season.moisturePct, 100) / 100)))
      )
    }
  })
}
