import type { ResinRecord } from '../../catalogue/resin.ts'
import type { Band } from '../bands.ts'
import { GAS_CONSTANT, ZERO_CELSIUS_K } from '../constant.ts'
import { H_CUP } from '../cup.ts'
import { cureRate } from '../cure.ts'
import { filmGelS } from '../gel.ts'
import type { ResinModel } from '../model.ts'
import type { CupFit } from './cup-fit.ts'
import { effect, INSIDE, LAG_S, N_EXPECTED, PARAMETERS, type ParameterName } from './cup-parameter.ts'
import { NINETY, predictionBands } from './prediction.ts'

/** One fitted parameter, with its 90 % band. */
export interface Learned {
  readonly name: ParameterName
  readonly about: string
  readonly unit: string
  readonly value: number
  readonly low: number
  readonly high: number
  /** What the class has. */
  readonly classValue: number
  /** 1 − σ/σ of the prior: 0 nothing learned, 1 known. */
  readonly learned: number
}

/** What a fit says beyond its model. */
export interface CupReport {
  readonly parameters: readonly Learned[]
  /** Correlation of the parameters, in their order. */
  readonly correlation: readonly (readonly number[])[]
  /** How many times faster than the class a thin film gels at 22 °C, with its 90 % band. */
  readonly faster: Band
  /** Heat of reaction, J/g, with its 90 % band. */
  readonly heatJG: Band
  /** The band of later predictions, in the place of the class's. */
  readonly band: ResinRecord['band']
  /** Share of times either way that the cup leaves by itself; the band is never wider than the class's. */
  readonly alone: number
  /** Whether the speed was learned: else the class stands. */
  readonly speedLearned: boolean
  readonly heatLearned: boolean
}

/** Room at which speeds are compared, °C: that of the classes' tables. */
const COMPARED_AT_C = 22
/** A parameter is learned when its doubt is below this share of the prior's. */
const LEARNED_BELOW = 0.6
/** The band of times is never taken wider or narrower than this: corners must stay resins; batches differ by some % (practice). */
const WIDEST = 0.5
const NARROWEST = 0.04
/** Conversion at which the heat given off is compared: near the greatest rate. */
const COMPARED_CONVERSION = 0.35

/** Reads a fit. `record` is the class it was fitted from. */
export function cupReport(fit: CupFit, record: Pick<ResinRecord, 'band'>): CupReport {
  const [slow, hot, heat] = predictionBands(fit, ({ model }) => [
    Math.log(filmGelS(model.kinetics, COMPARED_AT_C)),
    Math.log(heatPower(model)),
    Math.log(model.kinetics.heatJPerKg / 1000)
  ]) as readonly [Band, Band, Band]
  const classLog = Math.log(filmGelS(fit.base.kinetics, COMPARED_AT_C))
  const sigma = fit.covariance.map((row, i) => Math.sqrt(row[i]!))
  const learned = (name: ParameterName): boolean =>
    sigma[PARAMETERS.findIndex(p => p.name === name)]! < LEARNED_BELOW
  // The wider of the two: a doubt of the heat given off acts on a peak as the same doubt of the speed.
  const wide = Math.max(half(slow), half(hot))
  const alone = Math.max(NARROWEST, Math.exp(wide) - 1)
  const time = Math.min(WIDEST, record.band.time, alone)
  return {
    parameters: PARAMETERS.map((p, i): Learned => {
      const at = (x: number): number => inUnit(fit, p.name, x)
      const x = fit.theta[i]!
      const ends = [at(x - NINETY * sigma[i]!), at(x + NINETY * sigma[i]!)]
      return {
        name: p.name,
        about: p.about,
        unit: p.unit,
        value: at(x),
        low: Math.min(...ends),
        high: Math.max(...ends),
        classValue: at(0),
        learned: Math.max(0, 1 - sigma[i]!)
      }
    }),
    correlation: fit.covariance.map((row, i) => row.map((c, j) => c / (sigma[i]! * sigma[j]!))),
    faster: {
      central: Math.exp(classLog - slow.central),
      low: Math.exp(classLog - slow.high),
      high: Math.exp(classLog - slow.low)
    },
    heatJG: { central: Math.exp(heat.central), low: Math.exp(heat.low), high: Math.exp(heat.high) },
    band: {
      time,
      depth: Math.min(record.band.depth, Math.max(NARROWEST, Math.exp(half(hot) / 2) - 1)),
      peakK: record.band.peakK * Math.min(1, time / record.band.time)
    },
    alone,
    speedLearned: half(slow) < LEARNED_BELOW * NINETY * PARAMETERS[0]!.width,
    heatLearned: learned('heat')
  }
}

function half(band: Band): number {
  return (band.high - band.low) / 2
}

/** Heat given off times its growth with temperature, (E/RT²)·H·rate, up to a factor: what decides a peak (Frank-Kamenetskii). */
function heatPower({ kinetics }: ResinModel): number {
  const tempK = COMPARED_AT_C + ZERO_CELSIUS_K
  return (
    (kinetics.e2JPerMol / (GAS_CONSTANT * tempK * tempK)) *
    kinetics.heatJPerKg *
    cureRate(kinetics, tempK, COMPARED_CONVERSION)
  )
}

/** A parameter in its unit at θ. */
function inUnit(fit: CupFit, name: ParameterName, x: number): number {
  const theta = PARAMETERS.map(p => (p.name === name ? x : 0))
  const e = effect(theta, name)
  const { kinetics, flow } = fit.base
  switch (name) {
    case 'activity':
      return e
    case 'heat':
      return (kinetics.heatJPerKg / 1000) * e
    case 'ratio':
      return kinetics.k1OverK2At25 * e
    case 'energy':
      return kinetics.e2JPerMol / 1000 + e
    case 'm':
      return kinetics.m + e
    case 'n':
      return kinetics.n + N_EXPECTED + e
    case 'gel':
      return kinetics.gelConversion + e
    case 'thickness':
      return flow.eta25PaS * e
    case 'rise':
      return flow.c1 + e
    case 'flow':
      return flow.etaEJPerMol / 1000 + e
    case 'film':
      return H_CUP * e
    case 'inside':
      return INSIDE * e
    case 'lag':
      return LAG_S * e
    case 'clock':
      return e
    case 'start':
      return fit.expected.startC + e * fit.expected.startDoubt
    case 'room':
      return fit.expected.roomC + e
  }
}
