import { inRange } from '../quantity/range.ts'
import { FULL, QUICK, runColumn } from './column.ts'
import type { LayerHistory } from './column-history.ts'
import { resinOf } from './column-result.ts'
import { ZERO_CELSIUS_K } from './constant.ts'
import { crossingS } from './conversion.ts'
import { cureRate } from './cure.ts'
import { semenovNumber } from './frank-kamenetskii.ts'
import type { ResinModel } from './model.ts'
import type { Effort } from './slab.ts'
import { conversionAtViscosity, freshViscosityPaS, HONEY_PAS } from './thickening.ts'
import { fillOf, type Vessel } from './vessel.ts'

/**
 * A batch that stands in its vessel: how long it lasts and how hot it gets.
 *
 *   lumped   m·cp·dT/dt = m·H·dα/dt − h·A·(T − T_room)         one temperature throughout
 *   sphere   the sphere of the same V/A, R = 3·V/A, through column.ts, film h outside
 *
 * The lumped form is good while Bi = h·(V/A)/k is below 0.1 (textbook bound); a cup of 100 g is already
 * near 0.4. The two bracket a real cup: the sphere's core gels first and runs hottest, a liquid that mixes
 * itself is nearer to lumped. The sphere is the default because it is the earlier of the two.
 *
 * Source: energy balance (exact); equivalent sphere, practice of the estimate.
 * Check: first gel of 100 g, 500 g and 1 kg of three resin sets as a sphere, and of 100 g, 1 kg and 5 kg of
 * the catalogue's classes as a lumped ball, both computed by independent codes (test).
 *
 * Limits: the vessel's wall holds no heat and does not insulate; a shallow tray is a slab, not a sphere;
 * stirring and the liquid's own movement are left out.
 */
export interface BodyProblem {
  readonly resin: ResinModel
  /** Volume over the surface that sheds heat, mm. */
  readonly volumePerAreaMm: number
  readonly roomC: number
  /** Temperature of the mix at the start; the room's if not given (a warm bath raises it). */
  readonly startC?: number
  /** By the Biot number if not given: `lumped` under 0.1, else `sphere`. */
  readonly mode?: 'lumped' | 'sphere'
  /** Film coefficient, W/(m²·K); {@link H_CUP} if not given. */
  readonly hWm2K?: number
  readonly rateFactor?: number
  /** Length of the run, h; 72 if not given. */
  readonly untilH?: number
  /** `full` if not given. */
  readonly effort?: Effort
}

export interface CupProblem extends Omit<BodyProblem, 'volumePerAreaMm'> {
  readonly massG: number
  readonly vessel: Vessel
}

export interface CupHistory {
  /** First gel anywhere, min; null if not within the run. */
  readonly gelMin: number | null
  readonly peakC: number
  readonly peakMin: number
  /**
   * When the mean has reacted so far that it has twice its fresh viscosity, and 10 Pa·s, both at the room's
   * temperature: what it will be like once poured out, min; null if not within the run. In the warm cup
   * itself it still looks thinner.
   */
  readonly doubleMin: number | null
  readonly honeyMin: number | null
  /** When the hottest point passes {@link HOT_C}, min; null if it does not. */
  readonly hotMin: number | null
  /** By when the batch must be out: the earliest of working time, hot and gel; null if none comes. */
  readonly minutesOut: number | null
  /** Which of them that is. */
  readonly because: 'thick' | 'hot' | 'gel' | null
  /** h·(V/A)/k, and whether one temperature throughout would do. */
  readonly biot: number
  readonly lumpedApplies: boolean
  /** The form that was run. */
  readonly mode: 'lumped' | 'sphere'
  /** Heat made less heat kept and lost, over heat made: what the balance fails to close by. */
  readonly energyClosure: number
  /** Semenov number at the room's temperature and the greatest rate there; above 1/e suspect a runaway (screening). */
  readonly semenov: number
  readonly sphereRadiusMm: number
  readonly history: LayerHistory
}

/** Air about a cup, convection and radiation, W/(m²·K): computed 9.2-12.7 up, 8-12 sideways; 9 as for slabs. */
export const H_CUP = 9
/** A batch hotter than this is on its way to gel and must not be carried about, °C. Practice. */
export const HOT_C = 60
/** Below this Biot number one temperature describes the body; textbook bound (Incropera & DeWitt, section 5.1). */
const LUMPED_BIOT = 0.1

const SPHERE_CELLS: Readonly<Record<Effort, number>> = { full: 40, quick: 16 }
/** Stands for "no resistance inside", W/(m·K). */
const NO_RESISTANCE = 1e6

/** A thinner film, V/A in mm, keeps the room's temperature just as this one does. */
const THINNEST_MM = 0.01

/** Runs a batch in its vessel; top and base count as surface. Throws when it does not go in. */
export function cupHistory(cup: CupProblem): CupHistory {
  const { massG, vessel, ...rest } = cup
  const fill = fillOf(vessel, (massG / cup.resin.bulk.liquidKgM3) * 1000)
  return bodyHistory({ ...rest, volumePerAreaMm: Math.max(THINNEST_MM, fill.volumePerAreaMm) })
}

/** Runs a body of mix of any shape, given by its volume over its surface. */
export function bodyHistory(body: BodyProblem): CupHistory {
  const { resin, roomC, volumePerAreaMm } = body
  const h = body.hWm2K ?? H_CUP
  const effort = body.effort ?? 'full'
  inRange('room temperature in °C', roomC, -20, 60)
  inRange('film coefficient in W/(m²·K)', h, 0.1, 1000)
  inRange('volume over surface in mm', volumePerAreaMm, THINNEST_MM, 10_000)
  const biot = (h * volumePerAreaMm) / 1000 / resin.bulk.kLiquidWmK
  const lumped = (body.mode ?? (biot < LUMPED_BIOT ? 'lumped' : 'sphere')) === 'lumped'
  const sphereRadiusMm = 3 * volumePerAreaMm
  const result = runColumn({
    shape: lumped ? 'slab' : 'sphere',
    layers: [
      {
        kind: 'resin',
        // One cell without resistance is the lumped mass: as deep as V/A, it loses heat through one face.
        thicknessMm: lumped ? volumePerAreaMm : sphereRadiusMm,
        cells: lumped ? 1 : SPHERE_CELLS[effort],
        resin: lumped ? withoutResistance(resin) : resin,
        startC: body.startC ?? roomC,
        rateFactor: body.rateFactor ?? 1
      }
    ],
    floor: { kind: 'insulated' },
    top: { kind: 'convective', hWm2K: h, ambientC: roomC },
    untilS: (body.untilH ?? 72) * 3600,
    control: effort === 'full' ? FULL : QUICK
  })
  const { history, firstGelS, peakC, peakAtS } = resinOf(result)
  const minutes = (s: number | null): number | null => (s === null ? null : s / 60)
  const { gelConversion } = resin.kinetics
  const atConversion = (levelPaS: number): number | null =>
    minutes(
      crossingS(
        history.timeS,
        history.meanConversion,
        conversionAtViscosity(resin.flow, gelConversion, roomC, levelPaS)
      )
    )
  const doubleMin = atConversion(2 * freshViscosityPaS(resin.flow, roomC))
  const honeyMin = atConversion(HONEY_PAS)
  const gelMin = minutes(firstGelS)
  const hotMin = minutes(crossingS(history.timeS, history.maxC, HOT_C))
  return {
    gelMin,
    peakC,
    peakMin: peakAtS / 60,
    doubleMin,
    honeyMin,
    hotMin,
    ...earliest(doubleMin, hotMin, gelMin),
    biot,
    lumpedApplies: biot < LUMPED_BIOT,
    mode: lumped ? 'lumped' : 'sphere',
    energyClosure: result.energy.closure,
    semenov: semenovNumber({
      eJPerMol: resin.kinetics.e2JPerMol,
      tempK: roomC + ZERO_CELSIUS_K,
      heatWm3:
        resin.bulk.liquidKgM3 *
        resin.kinetics.heatJPerKg *
        greatestRate(resin, roomC) *
        (body.rateFactor ?? 1),
      volumePerAreaM: volumePerAreaMm / 1000,
      hWm2K: h
    }),
    sphereRadiusMm,
    history
  }
}

function withoutResistance(resin: ResinModel): ResinModel {
  return { ...resin, bulk: { ...resin.bulk, kLiquidWmK: NO_RESISTANCE, kSlopeWmK: 0 } }
}

function earliest(
  thick: number | null,
  hot: number | null,
  gel: number | null
): Pick<CupHistory, 'minutesOut' | 'because'> {
  let out: Pick<CupHistory, 'minutesOut' | 'because'> = { minutesOut: null, because: null }
  for (const [because, at] of [
    ['thick', thick],
    ['hot', hot],
    ['gel', gel]
  ] as const)
    if (at !== null && (out.minutesOut === null || at < out.minutesOut)) out = { minutesOut: at, because }
  return out
}

/** The greatest rate at one temperature over all conversions, 1/s: what an unmoved heat balance must bear. */
function greatestRate(resin: ResinModel, tempC: number): number {
  let greatest = 0
  for (let i = 0; i < 100; i++)
    greatest = Math.max(greatest, cureRate(resin.kinetics, tempC + ZERO_CELSIUS_K, i / 100))
  return greatest
}
