import {
  amineHydrogenEquivalent,
  blendEew,
  leastBatchG,
  mixFromVolumes,
  mixHeatJPerKg,
  partsPerHundred,
  ratioErrorFromScale,
  volumeRatio,
  volumeWeighedError
} from '../../src/resin/stoichiometry.ts'
import { type Evidence, table } from '../evidence.ts'
import { worst } from './rows.ts'

const model = 'resin/stoichiometry'

/** AHEW and phr for a resin of EEW 190 g/eq. */
const PHR_190: readonly (readonly [name: string, ahew: number, phr: number])[] = [
  ['EDA', 15.0, 7.9],
  ['DETA', 20.6, 10.8],
  ['TETA', 24.4, 12.8],
  ['MXDA', 34.1, 17.9],
  ['IPDA', 42.6, 22.4],
  ['PACM', 52.6, 27.7],
  ['polyoxypropylene diamine of 60 g/eq', 60, 31.6],
  ['polyoxypropylene diamine of 110 g/eq', 110, 57.9]
]

/** J/g of mix at 95, 105 and 110 kJ/mol of epoxide, EEW 190. */
const HEATS: readonly (readonly [ahew: number, heats: readonly [number, number, number]])[] = [
  [15.0, [463, 512, 537]],
  [20.6, [451, 499, 522]],
  [24.4, [443, 490, 513]],
  [34.1, [424, 469, 491]],
  [42.6, [408, 451, 473]],
  [52.6, [392, 433, 453]],
  [60, [380, 420, 440]],
  [110, [317, 350, 367]]
]

export const rows: readonly Evidence[] = [
  {
    model,
    what: 'AHEW of DETA, 103 g/mol with 5 active hydrogens',
    source: 'worked example of an epoxy handbook page',
    confidence: 'read',
    unit: 'g/eq',
    published: 20.6,
    tolerance: 0.01,
    why: 'printed to one decimal, exact division',
    ours: () => amineHydrogenEquivalent(103, 5)
  },
  {
    model,
    what: 'phr of DETA with a resin of EEW 200',
    source: 'worked example of an epoxy handbook page',
    confidence: 'read',
    unit: 'phr',
    published: 10.3,
    tolerance: 0.01,
    why: 'printed to one decimal, exact',
    ours: () => partsPerHundred(20.6, 200)
  },
  {
    model,
    what: 'EEW of 80 % (189) + 10 % (183) + 10 % filler',
    source: 'worked example of an epoxy handbook page; the filler counts in the mass',
    confidence: 'read',
    unit: 'g/eq',
    published: 209,
    tolerance: 0.5,
    why: 'printed to whole numbers',
    ours: () =>
      blendEew([
        { mass: 80, eew: 189 },
        { mass: 10, eew: 183 },
        { mass: 10, eew: null }
      ])
  },
  {
    model,
    what: 'phr of an amine of AHEW 43 with that blend',
    source: 'worked example of an epoxy handbook page',
    confidence: 'read',
    unit: 'phr',
    published: 20.6,
    tolerance: 0.05,
    why: 'printed to one decimal',
    ours: () => partsPerHundred(43, 209)
  },
  {
    model,
    what: 'stoichiometric phr of a technical triethylenetetramine (27.5 g/eq) with DGEBA of EEW 187',
    source: 'Polímeros (SciELO), DGEBA/aliphatic polyamines, abstract',
    confidence: 'read',
    unit: 'phr',
    published: 14.7,
    tolerance: 0.05,
    why: 'printed to one decimal',
    ours: () => partsPerHundred(27.5, 187)
  },
  {
    model,
    what: 'heat of reaction of that mix from 106.6 kJ/eq',
    source: 'same abstract: measured 486 J/g',
    confidence: 'read',
    unit: 'J/g',
    published: 486,
    tolerance: 12,
    why: 'the measured value lies 2 % under the molar one; nothing in the formula to mend it',
    ours: () => mixHeatJPerKg(106.6e3, 187, 27.5) / 1000
  },
  table({
    model,
    what: 'phr of eight amines with EEW 190',
    source: 'phr = 100·AHEW/EEW, worked out beforehand',
    confidence: 'computed',
    unit: 'phr',
    tolerance: 0.06,
    why: 'printed to one decimal',
    cells: PHR_190.length,
    worst: () => worst(PHR_190.map(([, ahew, phr]) => [partsPerHundred(ahew, 190), phr]))
  }),
  table({
    model,
    what: 'heat of reaction of eight amines with EEW 190 at 95, 105, 110 kJ/mol',
    source: 'H = ΔH/(EEW + AHEW), worked out beforehand',
    confidence: 'computed',
    unit: 'J/g',
    tolerance: 1.5,
    why: 'printed to whole numbers, AHEW to one decimal',
    cells: 3 * HEATS.length,
    worst: () =>
      worst(
        HEATS.flatMap(([ahew, heats]) =>
          ([95, 105, 110] as const).map(
            (kJ, i) => [mixHeatJPerKg(kJ * 1000, 190, ahew) / 1000, heats[i]!] as const
          )
        )
      )
  }),
  {
    model,
    what: 'TETA 7.79 : 1 by mass as a ratio by volume, densities 1.16 and 0.98',
    source: 'mass ratio times density of hardener over resin',
    confidence: 'computed',
    unit: ': 1',
    published: 6.58,
    tolerance: 0.005,
    why: 'printed to two decimals',
    ours: () => volumeRatio(7.79, 1.16, 0.98)
  },
  {
    model,
    what: 'EEW 195 with AHEW 80 by mass',
    source: 'phr = 100·AHEW/EEW',
    confidence: 'computed',
    unit: ': 1',
    published: 2.44,
    tolerance: 0.005,
    why: 'printed to two decimals',
    ours: () => 100 / partsPerHundred(80, 195)
  },
  {
    model,
    what: 'hardener too much when a coating of 1 : 1 by volume = 100 : 83 by mass is weighed 1 : 1',
    source: 'case told by a maker of resins',
    confidence: 'read',
    unit: '%',
    published: 20,
    tolerance: 0.6,
    why: '1/0.83 is 20.5 %; told as "20 %"',
    ours: () => 100 * volumeWeighedError(mixFromVolumes(1, 1, 1, 0.83))
  },
  {
    model,
    what: 'error of part B when 8 g are mixed 2.2 : 1 on a scale of 1 g steps',
    source: 'half a step over 2.5 g',
    confidence: 'derived',
    unit: '%',
    published: 20,
    tolerance: 1e-9,
    why: 'exact',
    ours: () => 100 * ratioErrorFromScale(8 / 3.2, 1)
  },
  {
    model,
    what: 'least batch at 2.2 : 1 on a scale of 1 g steps for 5 %',
    source: 'part B of 10 g, so 32 g',
    confidence: 'derived',
    unit: 'g',
    published: 32,
    tolerance: 1e-9,
    why: 'exact',
    ours: () => leastBatchG({ massA: 2.2, massB: 1, densityAGMl: 1.1, densityBGMl: 1 }, 1, 0.05)
  }
]
