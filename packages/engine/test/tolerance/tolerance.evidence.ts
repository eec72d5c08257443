import { acrossAfterFilmMm, depthAfterFilmMm } from '../../src/tolerance/film.ts'
import { deviationsMm, fitMm, standardToleranceMm } from '../../src/tolerance/iso286.ts'
import type { Evidence } from '../evidence.ts'
import { table } from '../evidence.ts'
import { BANDS, LIMITS, TIMES_I, unitUm } from './iso286-table.ts'

const fit = (what: string, published: number, ours: () => number): Evidence => ({
  model: 'tolerance/iso286',
  what,
  source: 'ISO 286-1: clearance of a hole and a shaft from their limits, worked independently',
  confidence: 'derived',
  unit: 'mm',
  published,
  tolerance: 1e-9,
  why: 'sums of whole µm',
  ours
})

const film = (what: string, published: number, ours: () => number): Evidence => ({
  model: 'tolerance/film',
  what,
  source: 'geometry of an even film, 3 coats of 25 µm dry (ISO 2808), worked independently',
  confidence: 'derived',
  unit: 'mm',
  published,
  tolerance: 1e-9,
  why: 'exact sums',
  ours
})

export const rows: readonly Evidence[] = [
  table({
    model: 'tolerance/iso286',
    what: 'both limits of classes of holes and shafts, 3 to 60 mm',
    source: 'ISO 286-2, tables of limits as handbooks print them',
    confidence: 'memory',
    unit: 'µm',
    tolerance: 1e-9,
    why: 'whole µm',
    cells: 2 * LIMITS.length,
    worst: () =>
      Math.max(
        ...LIMITS.flatMap(([size, name, lower, upper]) => {
          const d = deviationsMm(size, name)
          return [Math.abs(1000 * d.lowerMm - lower), Math.abs(1000 * d.upperMm - upper)]
        })
      )
  }),
  table({
    model: 'tolerance/iso286',
    what: 'grades 5 to 13, above 3 to 80 mm, against the formula i = 0.45·∛D + 0.001·D they were rounded from, share of each',
    source: 'ISO 286-1, formula of the standard tolerance unit',
    confidence: 'memory',
    unit: '1',
    tolerance: 0.1,
    why: 'the standard rounds to whole µm, and the largest to 5 and 10: half of 1 µm is a tenth of the smallest cell',
    cells: BANDS.length * Object.keys(TIMES_I).length,
    worst: () =>
      Math.max(
        ...BANDS.flatMap(band =>
          Object.entries(TIMES_I).map(([grade, times]) => {
            const um = times * unitUm(band)
            return Math.abs(1000 * standardToleranceMm(band[1], Number(grade)) - um) / um
          })
        )
      )
  }),
  fit('6 H7/m6, least', -0.012, () => fitMm(6, 'H7', 'm6').leastMm),
  fit('6 H7/m6, greatest', 0.008, () => fitMm(6, 'H7', 'm6').greatestMm),
  fit('25 H7/g6, greatest', 0.041, () => fitMm(25, 'H7', 'g6').greatestMm),
  film('a hole', -0.15, () => acrossAfterFilmMm(10, 0.075, 'hole') - 10),
  film('a peg', 0.15, () => acrossAfterFilmMm(10, 0.075, 'peg') - 10),
  film('a depth by its floor', -0.075, () => depthAfterFilmMm(10, 0.075, 0) - 10)
]
