import { RESINS } from '../../src/catalogue/resin.ts'
import type { ResinModel } from '../../src/resin/model.ts'

/**
 * Kinetic sets that serve as inputs of checks. None is literature: the first three were reconstructed from
 * two recalled anchors each (DSC peak at 10 K/min, gel time of a thin film at 25 °C, ±30 %), the classes were
 * fitted to practice. What is checked is that our solvers give the same answers as independent codes did
 * from the same numbers.
 */
const R = 1.380649e-23 * 6.02214076e23

interface SetInput {
  readonly a1PerS: number
  readonly e1: number
  readonly a2PerS: number
  readonly e2: number
  readonly heatJG: number
  readonly gel: number
  readonly tg: readonly [number, number]
  readonly eta?: readonly [number, number]
}

function model(set: SetInput): ResinModel {
  const at25 = (a: number, e: number): number => a * Math.exp(-e / (R * 298.15))
  const k2 = at25(set.a2PerS, set.e2)
  const [eta25PaS, etaKJ] = set.eta ?? [0.7, 55]
  return {
    kinetics: {
      k2At25PerS: k2,
      k1OverK2At25: at25(set.a1PerS, set.e1) / k2,
      e1JPerMol: set.e1,
      e2JPerMol: set.e2,
      m: 1,
      n: 2,
      heatJPerKg: set.heatJG * 1000,
      gelConversion: set.gel,
      tg0C: set.tg[0],
      tgInfC: set.tg[1],
      lambda: 0.42,
      diffusion: { offsetK: 15, widthK: 6 }
    },
    flow: { eta25PaS, etaEJPerMol: etaKJ * 1000, c1: 1.5, c2: 1 },
    bulk: { liquidKgM3: 1100, curedKgM3: 1157, kLiquidWmK: 0.17, kSlopeWmK: 0.04, cpJkgK: 1800 }
  }
}

/** Reconstructed sets of three ambient amines (m = 1, n = 2, k1/k2 = 0.05 at 25 °C). */
export const AMINES = {
  polyetheramine: model({
    a1PerS: 2.927e5,
    e1: 62_450,
    a2PerS: 5.202e5,
    e2: 56_450,
    heatJG: 415,
    gel: 0.6,
    tg: [-42, 90]
  }),
  isophoronediamine: model({
    a1PerS: 1.843e5,
    e1: 58_280,
    a2PerS: 3.276e5,
    e2: 52_280,
    heatJG: 450,
    gel: 0.59,
    tg: [-30, 150]
  }),
  triethylenetetramine: model({
    a1PerS: 5.628e5,
    e1: 59_280,
    a2PerS: 1.0e6,
    e2: 53_280,
    heatJG: 485,
    gel: 0.5,
    tg: [-30, 125]
  })
} as const

/** First fit of the classes: hotter and later than the catalogue's; kept as regression inputs. */
export const FIRST_FIT = {
  a: model({
    a1PerS: 2.438e4,
    e1: 58_000,
    a2PerS: 3.611e4,
    e2: 52_000,
    heatJG: 330,
    gel: 0.6,
    tg: [-45, 58],
    eta: [0.3, 52]
  }),
  b: model({
    a1PerS: 1.596e5,
    e1: 58_000,
    a2PerS: 1.419e5,
    e2: 52_000,
    heatJG: 380,
    gel: 0.58,
    tg: [-40, 78],
    eta: [0.7, 55]
  }),
  c: model({
    a1PerS: 3.886e5,
    e1: 56_000,
    a2PerS: 2.585e5,
    e2: 51_000,
    heatJG: 350,
    gel: 0.55,
    tg: [-38, 60],
    eta: [1.1, 57]
  })
} as const

const classOf = (id: string): ResinModel => {
  const found = RESINS.find(r => r.id === id)?.model
  if (!found) throw new Error(`no resin "${id}" with a model`)
  return found
}

/** The catalogue's classes. */
export const CLASSES = { deep: classOf('deep'), medium: classOf('medium'), thin: classOf('thin') } as const

export const ALL_SETS: readonly (readonly [name: string, resin: ResinModel])[] = [
  ...Object.entries(AMINES),
  ...Object.entries(FIRST_FIT).map(([k, v]) => [`first fit ${k}`, v] as const),
  ...Object.entries(CLASSES)
]

/** The same without diffusion limit and with other constants of the bulk. */
export function altered(
  resin: ResinModel,
  bulk: Partial<ResinModel['bulk']>,
  kinetics: Partial<ResinModel['kinetics']> = {}
): ResinModel {
  return { ...resin, bulk: { ...resin.bulk, ...bulk }, kinetics: { ...resin.kinetics, ...kinetics } }
}
