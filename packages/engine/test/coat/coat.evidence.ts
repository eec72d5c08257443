import { dryFilmUm, laidGPerM2, needMl, spreadM2PerL, thinnedSolidsPct } from '../../src/coat/film.ts'
import { capillaryMm, puddleMm } from '../../src/coat/flood.ts'
import { tensionTimeS, weightTimeS } from '../../src/coat/levelling.ts'
import { sagMmPerS } from '../../src/coat/sag.ts'
import type { Evidence } from '../evidence.ts'

const PUDDLE = 'h = 2·a·sin(θ/2) of a wide puddle (de Gennes, Brochard-Wyart, Quéré), worked by hand'
const ORCHARD = 'Orchard (1962), time constant by surface tension, worked by hand'

const row = (
  model: string,
  what: string,
  source: string,
  published: number,
  unit: string,
  tolerance: number,
  ours: () => number,
  confidence: Evidence['confidence'] = 'derived'
): Evidence => ({
  model,
  what,
  source,
  confidence,
  unit,
  published,
  tolerance,
  why: 'digits printed',
  ours
})

const orchard = (filmMm: number, waveMm: number, eta: number, tensionNM: number) =>
  tensionTimeS({ filmMm, tensionNM, densityKgM3: 1100 }, waveMm, eta)

export const rows: readonly Evidence[] = [
  row('coat/flood', 'capillary length of epoxy, γ 0.035', PUDDLE, 1.8, 'mm', 0.006, () =>
    capillaryMm(0.035, 1100)
  ),
  row('coat/flood', 'capillary length of epoxy, γ 0.045', PUDDLE, 2.04, 'mm', 0.006, () =>
    capillaryMm(0.045, 1100)
  ),
  row(
    'coat/flood',
    'capillary length of water at 20 °C',
    'textbook value, 72.8 mN/m',
    2.73,
    'mm',
    0.006,
    () => capillaryMm(0.0728, 998.2),
    'memory'
  ),
  ...(
    [
      [20, 0.67],
      [45, 1.47],
      [60, 1.93],
      [90, 2.72],
      [120, 3.33]
    ] as const
  ).map(([deg, mm]) =>
    row('coat/flood', `puddle at a contact angle of ${deg}°, γ 0.040`, PUDDLE, mm, 'mm', 0.01, () =>
      puddleMm(0.04, 1100, deg)
    )
  ),
  row('coat/levelling', 'ripple of 5 mm on 1 mm of 1 Pa·s', ORCHARD, 0.03, 's', 0.005, () =>
    orchard(1, 5, 1, 0.04)
  ),
  row('coat/levelling', 'ripple of 5 mm on 0.1 mm of 0.5 Pa·s, γ 0.035', ORCHARD, 17, 's', 0.5, () =>
    orchard(0.1, 5, 0.5, 0.035)
  ),
  row('coat/levelling', 'brush marks of 2 mm on 0.1 mm of 1 Pa·s, γ 0.035', ORCHARD, 0.9, 's', 0.05, () =>
    orchard(0.1, 2, 1, 0.035)
  ),
  row(
    'coat/levelling',
    'wave at which weight and tension level alike, γ 0.040: 2π capillary lengths',
    'ratio of the two time constants is (L/2πa)²',
    12.1,
    'mm',
    0.1,
    () => {
      const film = { filmMm: 1, tensionNM: 0.04, densityKgM3: 1100 }
      // Tension over weight goes with L²: from any wave to the one where it is 1.
      return 20 / Math.sqrt(tensionTimeS(film, 20, 1) / weightTimeS(film, 20, 1))
    }
  ),
  row(
    'coat/sag',
    'surface of 0.2 mm of 1 Pa·s on an upright face',
    'ρ·g·h²/(2·η), worked by hand',
    0.2,
    'mm/s',
    0.005,
    () => sagMmPerS(200, 1, 1000)
  ),
  row(
    'coat/film',
    '100 µm wet of 40 % volume solids, dry',
    'ISO 2808 and 3233, definition',
    40,
    'µm',
    1e-9,
    () => dryFilmUm(100, 40),
    'memory'
  ),
  row('coat/film', 'the same thinned by a quarter', 'VS/(1 + t)', 32, '%', 1e-9, () =>
    thinnedSolidsPct(40, 0.25)
  ),
  row('coat/film', 'spreading rate of 80 µm wet', '1000/WFT', 12.5, 'm²/l', 1e-9, () => spreadM2PerL(80)),
  row(
    'coat/film',
    'mass of 1 mm of resin of 1.1 g/ml',
    '1 mm over 1 m² is 1 l: 1.1 kg',
    1100,
    'g/m²',
    1e-6,
    () => laidGPerM2(1000, 1.1)
  ),
  row('coat/film', '1.2 m² at 100 µm, 60 % arriving', 'area × WFT/(1000 × transfer)', 200, 'ml', 1e-9, () =>
    needMl(1.2, 100, 0.6)
  )
]
