import { LABEL_ROOM_C } from './constant.ts'
import { isothermalTimeS } from './conversion.ts'
import { cupHistory } from './cup.ts'
import { conversionAtGlass } from './glass.ts'
import { CAUTION_ABOVE_C } from './limits.ts'
import type { ResinModel } from './model.ts'
import { BOARD_18, peakHorizonS, runSlab } from './slab.ts'

/** What a label says of a resin; any of it may be left out. */
export interface LabelFigures {
  /** ASTM D2471-99: of a stated mass, from mixing until it begins to set. */
  readonly potLife?: { readonly minutes: number; readonly massG: number; readonly tempC: number }
  /** A thin film's gel time. */
  readonly gelTime?: { readonly minutes: number; readonly tempC: number }
  /** Until a thin film is hard. */
  readonly hardTime?: { readonly minutes: number; readonly tempC: number }
  /** Greatest depth of one pour, mm. */
  readonly greatestDepthMm?: number
  /** Fresh mix at 25 °C, Pa·s. */
  readonly viscosityPaS?: number
  /** Density of the liquid mix, kg/m³. */
  readonly densityKgM3?: number
}

export type RateFigure = 'potLife' | 'gelTime' | 'hardTime' | 'greatestDepth'

/** The figures that speak of the rate, how a message calls them, and how well a label keeps them (one sigma of the rate's logarithm, practice). */
export const RATE_FIGURES: readonly {
  readonly figure: RateFigure
  readonly called: string
  readonly sigma: number
}[] = [
  // "Until it begins to set" is told from doubling of viscosity to gel, a factor of 1.5 apart.
  { figure: 'potLife', called: 'pot life', sigma: 0.2 },
  { figure: 'gelTime', called: 'gel time', sigma: 0.2 },
  // Hard to the touch, to sand, to load: labels mean any of them.
  { figure: 'hardTime', called: 'hard time', sigma: 0.4 },
  // A depth goes as the root to the first power of the rate; labels keep 20 % back.
  { figure: 'greatestDepth', called: 'greatest depth', sigma: 0.3 }
]

/** Factor on both rates within which a class is still the class. */
export const LEAST_FACTOR = 0.1
export const MOST_FACTOR = 10

/** Why no factor meets a figure: even the fastest is too slow for it, or even the slowest too fast. */
export type OutOfReach = 'faster' | 'slower'

/** The model with what a label fixes by itself: density and fresh viscosity. */
export function labelBase(resin: ResinModel, label: LabelFigures): ResinModel {
  const { densityKgM3, viscosityPaS } = label
  const { bulk, flow } = resin
  const times = (densityKgM3 ?? bulk.liquidKgM3) / bulk.liquidKgM3
  return {
    ...resin,
    bulk:
      densityKgM3 === undefined
        ? bulk
        : { ...bulk, liquidKgM3: densityKgM3, curedKgM3: bulk.curedKgM3 * times },
    flow: viscosityPaS === undefined ? flow : { ...flow, eta25PaS: viscosityPaS }
  }
}

/** The model with both rates and its heat scaled. */
export function scaled(resin: ResinModel, factor: number, heat: number): ResinModel {
  const { kinetics } = resin
  return {
    ...resin,
    kinetics: {
      ...kinetics,
      k2At25PerS: kinetics.k2At25PerS * factor,
      heatJPerKg: kinetics.heatJPerKg * heat
    }
  }
}

/**
 * The factor on both rates at which a model meets one figure of its label, by bisection of the logarithm to
 * half a per cent; or which way it is out of reach, 1/`reach` to `reach`. undefined where the label does not say it.
 *
 *   potLife        first gel of the mass in a cup as wide as high                                cup.ts
 *   gelTime        film at one temperature until gel: t ∝ 1/factor, so by division               conversion.ts
 *   hardTime       the same until its glass transition passes the room by 5 K: a glass           glass.ts
 *   greatestDepth  the depth peaks at 60 °C on an 18 mm board in a room of 23 °C                 slab.ts
 *
 * Check: each class gives itself back from its own figures (tests).
 *
 * Limits: one figure, one factor. Activation energies, exponents and k1/k2 stay the class's.
 */
export function factorFor(
  resin: ResinModel,
  label: LabelFigures,
  figure: RateFigure,
  reach: number = MOST_FACTOR
): number | OutOfReach | undefined {
  switch (figure) {
    case 'potLife':
      return label.potLife && potLifeFactor(resin, label.potLife, reach)
    case 'gelTime':
      return label.gelTime && filmFactor(resin, label.gelTime, resin.kinetics.gelConversion, reach)
    case 'hardTime': {
      if (!label.hardTime) return undefined
      const { kinetics } = resin
      const hard = conversionAtGlass(kinetics, label.hardTime.tempC + HARD_OVER_ROOM_K)
      const conversion = Math.min(MOST_HARD, Math.max(kinetics.gelConversion, hard))
      return filmFactor(resin, label.hardTime, conversion, reach)
    }
    case 'greatestDepth':
      return label.greatestDepthMm === undefined
        ? undefined
        : depthFactor(resin, label.greatestDepthMm, reach)
  }
}

/** Hard: the glass transition has passed the room by so much, K (practice, as for leaving the mould). */
const HARD_OVER_ROOM_K = 5
/** Beyond this conversion no resin gets at room temperature. */
const MOST_HARD = 0.95
const LONGEST_H = 24 * 60

function potLifeFactor(
  resin: ResinModel,
  { minutes, massG, tempC }: NonNullable<LabelFigures['potLife']>,
  reach: number
): number | OutOfReach {
  const volumeMl = (massG / resin.bulk.liquidKgM3) * 1000
  // A cup as wide as the batch is high, with room to stir.
  const diameterMm = Math.cbrt((4 * volumeMl * 1000) / Math.PI)
  const vessel = { diameterMm, capacityMl: volumeMl * 1.5 }
  const untilH = Math.min(LONGEST_H, (minutes / 60) * 1.01)
  return edge(
    factor =>
      (cupHistory({ resin, massG, vessel, roomC: tempC, rateFactor: factor, effort: 'quick', untilH })
        .gelMin ?? Number.POSITIVE_INFINITY) <= minutes,
    reach
  )
}

function filmFactor(
  resin: ResinModel,
  { minutes, tempC }: { readonly minutes: number; readonly tempC: number },
  conversion: number,
  reach: number
): number | OutOfReach {
  const factor = isothermalTimeS(resin.kinetics, tempC, conversion) / (minutes * 60)
  return factor > reach ? 'faster' : factor < 1 / reach ? 'slower' : factor
}

function depthFactor(resin: ResinModel, depthMm: number, reach: number): number | OutOfReach {
  return edge(factor => {
    const pour = { resin, depthMm, bed: BOARD_18, roomC: LABEL_ROOM_C, rateFactor: factor }
    return runSlab(pour, peakHorizonS(pour), 'quick').resin.peakC > CAUTION_ABOVE_C
  }, reach)
}

/** The factor from which on something holds. */
function edge(holds: (factor: number) => boolean, reach: number): number | OutOfReach {
  if (!holds(reach)) return 'faster'
  if (holds(1 / reach)) return 'slower'
  let low = 1 / reach
  let high = reach
  while (high / low > 1.005) {
    const mid = Math.sqrt(low * high)
    if (holds(mid)) high = mid
    else low = mid
  }
  return Math.sqrt(low * high)
}
