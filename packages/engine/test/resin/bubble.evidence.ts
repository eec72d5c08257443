import {
  CLEAN_OVER_STOKES,
  capillaryLengthMm,
  clearAfterMin,
  holdsBubbleBelowMm,
  laplacePa,
  stokesRiseMmS
} from '../../src/resin/bubble.ts'
import { type Evidence, table } from '../evidence.ts'
import { worst } from './rows.ts'

const model = 'resin/bubble'

/** mm/s of 0.1, 0.5, 1 and 3 mm at four viscosities, liquid of 1100 kg/m³. */
const RISE: readonly (readonly [paS: number, mmS: readonly [number, number, number, number]])[] = [
  [0.3, [0.02, 0.5, 2.0, 18]],
  [0.7, [0.0086, 0.21, 0.86, 7.7]],
  [1.1, [0.0055, 0.14, 0.55, 4.9]],
  [10, [6e-4, 0.015, 0.06, 0.54]]
]

const constant = (paS: number) => ({ min: [0, 1e6], viscosityPaS: [paS, paS] })

/**
 * Speed of a ball of fluid in another by Hadamard and Rybczynski in its whole form, m/s:
 * Stokes·3(1 + λ)/(2 + 3λ), λ viscosity inside over outside; air in resin λ → 0.
 */
function hadamard(diameterM: number, paS: number, rho: number, lambda: number): number {
  return (((rho * 9.80665 * diameterM ** 2) / (18 * paS)) * 3 * (1 + lambda)) / (2 + 3 * lambda)
}

export const rows: readonly Evidence[] = [
  table({
    model,
    what: 'rise of bubbles of 0.1 to 3 mm in 0.3 to 10 Pa·s',
    source: 'Stokes, worked out beforehand by another code',
    confidence: 'computed',
    unit: '1',
    tolerance: 0.03,
    why: 'relative; printed to two figures',
    cells: 16,
    worst: () =>
      worst(
        RISE.flatMap(([paS, speeds]) =>
          [0.1, 0.5, 1, 3].map((d, i) => [stokesRiseMmS(d, paS, 1100), speeds[i]!] as const)
        ),
        true
      )
  }),
  {
    model,
    what: 'time of 0.1 mm through 25 mm at 0.7 Pa·s',
    source: 'Stokes, worked out beforehand',
    confidence: 'computed',
    unit: 'min',
    published: 49,
    tolerance: 0.6,
    why: 'printed to whole minutes',
    ours: () => clearAfterMin(constant(0.7), 25, 0.1, 1100)!
  },
  {
    model,
    what: 'clean bubble over Stokes',
    source: 'Hadamard 1911, Rybczynski 1911: 3(1 + λ)/(2 + 3λ), air in resin λ = 2.6e-5',
    confidence: 'memory',
    unit: '1',
    published: hadamard(1e-3, 0.7, 1100, 1.8e-5 / 0.7) / hadamard(1e-3, 0.7, 1100, 1e12),
    tolerance: 1e-4,
    why: 'the air’s own viscosity is left out',
    ours: () => CLEAN_OVER_STOKES
  },
  {
    model,
    what: 'excess pressure of a bubble of 0.1 mm',
    source: 'Laplace, 42 mN/m, worked out beforehand',
    confidence: 'computed',
    unit: 'kPa',
    published: 1.7,
    tolerance: 0.05,
    why: 'printed to one decimal',
    ours: () => laplacePa(0.1) / 1000
  },
  {
    model,
    what: 'capillary length of liquid epoxy',
    source: '√(γ/ρg) with 42 mN/m and 1100 kg/m³, worked out beforehand',
    confidence: 'computed',
    unit: 'mm',
    published: 2.0,
    tolerance: 0.05,
    why: 'printed to one decimal',
    ours: () => capillaryLengthMm(1100)
  },
  {
    model,
    what: 'widest closed upright tube of water that holds a bubble: 72.8 mN/m, 998 kg/m³',
    source: 'Bretherton 1961: Bond number 0.842, R = 2.50 mm; tubes of about 5 mm hold one',
    confidence: 'memory',
    unit: 'mm',
    published: 5.0,
    tolerance: 0.05,
    why: 'recalled to two figures',
    ours: () => holdsBubbleBelowMm(998, 0.0728)
  }
]
