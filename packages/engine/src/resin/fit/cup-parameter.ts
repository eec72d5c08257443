import type { ResinModel } from '../model.ts'

/**
 * What a cup test is fitted by, and what is believed of each before it.
 *
 * θ counts in prior standard deviations from the class: θ = 0 is the class as recorded, with what is expected of n and of conduction in a cup. Factors act by their
 * logarithm. Each width says where it comes from; "90 %" is ±1.645 of it.
 */
export type ParameterName =
  | 'activity'
  | 'heat'
  | 'ratio'
  | 'energy'
  | 'm'
  | 'n'
  | 'gel'
  | 'thickness'
  | 'rise'
  | 'flow'
  | 'film'
  | 'inside'
  | 'lag'
  | 'clock'
  | 'start'
  | 'room'

export interface Parameter {
  readonly name: ParameterName
  /** What it is, for people. */
  readonly about: string
  readonly unit: string
  /** `factor`: on the class's value by exp; `shift`: added. */
  readonly acts: 'factor' | 'shift'
  /** One prior standard deviation: of the logarithm, or in the unit. */
  readonly width: number
  readonly basis: string
}

/** Resin's own first (they go into every later prediction), then those of this cup and thermometer. */
export const PARAMETERS: readonly Parameter[] = [
  {
    name: 'activity',
    about: 'speed of the reaction, times the class',
    unit: '1',
    acts: 'factor',
    width: 0.52,
    basis: 'the laminating variant of the medium class is 2.36 times faster (fitted): taken as the 90 % end'
  },
  {
    name: 'heat',
    about: 'heat of reaction',
    unit: 'J/g',
    acts: 'factor',
    width: 0.22,
    basis: 'formulated clear systems 300-450 J/g (memory), classes 210-340 (fitted): a factor 1.44 at 90 %'
  },
  {
    name: 'ratio',
    about: 'how soon it begins to warm',
    unit: '1',
    acts: 'factor',
    width: 0.5,
    basis: 'reconstructed amines 0.05, classes 0.06-0.25 (fitted): a factor 2.3 at 90 %'
  },
  {
    name: 'energy',
    about: 'how much warmth speeds it',
    unit: 'kJ/mol',
    acts: 'shift',
    width: 4,
    basis: 'published for amine systems 44-62 kJ/mol (abstracts read): 6.6 at 90 %'
  },
  {
    name: 'm',
    about: 'how fast it gathers speed as it cures',
    unit: '1',
    acts: 'shift',
    width: 0.12,
    basis: 'published m + n 2.1-3 (abstracts read): 0.2 at 90 %'
  },
  {
    name: 'n',
    about: 'how slowly it finishes',
    unit: '1',
    acts: 'shift',
    width: 0.2,
    basis:
      'published m + n 2.1-3 (abstracts read) lie below the classes’ 3: 0.1 below the class, 0.33 at 90 %'
  },
  {
    name: 'gel',
    about: 'share cured at the gel',
    unit: '1',
    acts: 'shift',
    width: 0.03,
    basis: 'Flory-Stockmayer 0.50-0.65 by functionality; classes 0.55-0.60: 0.05 at 90 %'
  },
  {
    name: 'thickness',
    about: 'fresh viscosity, with what a maker calls strings',
    unit: 'Pa·s',
    acts: 'factor',
    width: 0.5,
    basis:
      'mixed systems 200-400, 500-900, 800-1500 mPa·s by class (memory), and strings called from 1.5 to 6 Pa·s (practice): a factor 2.3 at 90 %'
  },
  {
    name: 'rise',
    about: 'how steeply it thickens',
    unit: '1',
    acts: 'shift',
    width: 0.5,
    basis: 'exponents 1.5-4 (read second-hand), classes 3-4 (fitted): 0.8 at 90 %'
  },
  {
    name: 'flow',
    about: 'how much warmth thins it',
    unit: 'kJ/mol',
    acts: 'shift',
    width: 4,
    basis: 'thin diluted systems 50-60, undiluted 75-90 kJ/mol (memory); classes 52-57: 6.6 at 90 %'
  },
  {
    name: 'film',
    about: 'heat shed by the cup',
    unit: 'W/(m²·K)',
    acts: 'factor',
    width: 0.2,
    basis: 'computed 8-12.7 for still air with radiation, less where the cup insulates: a factor 1.4 at 90 %'
  },
  {
    name: 'inside',
    about: 'heat led within the cup against a still ball of it',
    unit: '1',
    acts: 'factor',
    width: 0.35,
    basis:
      'a cylinder of the same V/A is cooler in the middle, as a ball that leads 1.8 times better (0.5·q·L²/k against 0.9), and a liquid mixes itself, up to 3 times: 0.8 to 2.4 at 90 %'
  },
  {
    name: 'lag',
    about: 'lag of the thermometer',
    unit: 's',
    acts: 'factor',
    width: 0.6,
    basis: 'bare junction to probe in a tube, 12-90 s (practice)'
  },
  {
    name: 'clock',
    about: 'from mixing to the clock’s zero',
    unit: 'min',
    acts: 'shift',
    width: 0.5,
    basis:
      'mixing takes three to six minutes, and the clock is started somewhere in them (practice): 0.8 min at 90 %'
  },
  {
    name: 'start',
    about: 'temperature at the start',
    unit: '°C',
    acts: 'shift',
    width: 1,
    basis: 'a thermometer that has not settled: 1.6 K at 90 %'
  },
  {
    name: 'room',
    about: 'temperature of the room',
    unit: '°C',
    acts: 'shift',
    width: 0.6,
    basis: 'two household thermometers agree within 1 K (practice), 90 %'
  }
]

/** Where n is expected, from the class's. */
export const N_EXPECTED = -0.1
/** So many, from the first on, go into later predictions: the resin's ten, and what cups of this maker do. */
export const CUP_PARAMETERS = 12
/** Conduction within a cup that the class stands for, times that of a still ball. */
export const INSIDE = 1.35
/** Lag that the class stands for, s. */
export const LAG_S = 33
/** Film coefficient that the class stands for is cup.ts's. |θ| of no parameter may pass this: activity 0.1 to 10. */
export const BOUND = 4.43

/** Parameters that leave the course of the cup as it is: what is read off it moves. */
const OFF_COURSE: ReadonlySet<ParameterName> = new Set(['gel', 'thickness', 'rise', 'flow', 'lag', 'clock'])

const INDEX = new Map(PARAMETERS.map((p, i) => [p.name, i]))

/** A parameter's factor or shift at θ. */
export function effect(theta: ArrayLike<number>, name: ParameterName): number {
  const i = INDEX.get(name)!
  const { acts, width } = PARAMETERS[i]!
  const x = (theta[i] ?? 0) * width
  return acts === 'factor' ? Math.exp(x) : x
}

/** Where θ counts a parameter. */
export function indexOf(name: ParameterName): number {
  return INDEX.get(name)!
}

/** The class's model with its rate law at θ, activity left out: that is a factor on both rates. */
export function modelAt(base: ResinModel, theta: ArrayLike<number>, activity = true): ResinModel {
  const { kinetics: k, flow } = base
  const shiftJ = effect(theta, 'energy') * 1000
  return {
    ...base,
    kinetics: {
      ...k,
      k2At25PerS: k.k2At25PerS * (activity ? effect(theta, 'activity') : 1),
      k1OverK2At25: k.k1OverK2At25 * effect(theta, 'ratio'),
      e1JPerMol: k.e1JPerMol + shiftJ,
      e2JPerMol: k.e2JPerMol + shiftJ,
      m: Math.max(0.3, k.m + effect(theta, 'm')),
      n: Math.max(0.8, k.n + N_EXPECTED + effect(theta, 'n')),
      heatJPerKg: k.heatJPerKg * effect(theta, 'heat'),
      gelConversion: Math.min(0.8, Math.max(0.3, k.gelConversion + effect(theta, 'gel')))
    },
    flow: {
      ...flow,
      eta25PaS: flow.eta25PaS * effect(theta, 'thickness'),
      etaEJPerMol: flow.etaEJPerMol + effect(theta, 'flow') * 1000,
      c1: Math.max(0.5, flow.c1 + effect(theta, 'rise'))
    }
  }
}

/** The same resin as it leads heat in this maker's cup. */
export function inCup(model: ResinModel, theta: ArrayLike<number>): ResinModel {
  const times = INSIDE * effect(theta, 'inside')
  const { bulk } = model
  return {
    ...model,
    bulk: { ...bulk, kLiquidWmK: bulk.kLiquidWmK * times, kSlopeWmK: bulk.kSlopeWmK * times }
  }
}

/** What decides the course of a cup, as a key: the same key, the same course. */
export function courseKey(theta: ArrayLike<number>): string {
  return PARAMETERS.map((p, i) => (OFF_COURSE.has(p.name) ? '' : theta[i])).join(' ')
}
