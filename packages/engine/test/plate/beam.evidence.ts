import { beamSag } from '../../src/plate/beam.ts'
import { bowMm } from '../../src/plate/bow.ts'
import { tippingMass } from '../../src/plate/tip.ts'
import type { Evidence } from '../evidence.ts'

const even = (lengthMm: number) => [{ lengthMm, stiffnessNmm2: 1e9, loadNPerMm: 1e-3 }]

export const rows: readonly Evidence[] = [
  {
    model: 'plate/beam',
    what: 'even load between supports at its ends, in q·L⁴/(E·I)',
    source: 'Euler-Bernoulli beam, 5/384',
    confidence: 'exact',
    unit: 'q·L⁴/(E·I)',
    published: 5 / 384,
    tolerance: 1e-12,
    why: 'closed form',
    ours: () => beamSag(even(1000), [0, 1000]).betweenMm
  },
  {
    model: 'plate/beam',
    what: 'ends hung over so that they sag as the middle does: supports at 0.2232 of the length; middle less ends',
    source: 'the places at which a metre bar is carried for least sag; instrument handbooks',
    confidence: 'memory',
    unit: 'q·L⁴/(E·I)',
    published: 0,
    tolerance: 2.6e-6,
    why: 'the place is given to four decimals: half a step of the last moves it by 2.5e-6, and it lies at 0.22315',
    ours: () => {
      const sag = beamSag(even(1000), [223.2, 776.8])
      return sag.betweenMm - sag.endMm
    }
  },
  {
    model: 'plate/beam',
    what: 'square plate on its four corners as two strips that each carry all of the load, in q·a⁴/D, ν 0.3',
    source: 'Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells: 0.0255 in the middle',
    confidence: 'memory',
    unit: 'q·a⁴/D',
    published: 0.0255,
    tolerance: 0.0035,
    why: 'two strips know no plate: on the safe side by an eighth',
    ours: () => (2 * beamSag(even(1000), [0, 1000]).betweenMm) / (1 - 0.3 ** 2)
  },
  {
    model: 'plate/bow',
    what: 'bent in the middle 80 of 440 mm alone, 1e-4 per mm: θ·(L/4 − d/8)',
    source: 'geometry, worked by hand',
    confidence: 'derived',
    unit: 'mm',
    published: 0.8,
    tolerance: 1e-9,
    why: 'closed form',
    ours: () => bowMm([0, 1e-4, 0], [180, 80, 180])
  },
  {
    model: 'plate/tip',
    what: '10 kg, 1 m long, on two rails 0.6 m apart: mass on its end that tips it',
    source: 'moments about a rail, worked by hand: 10 · 0.3/0.2',
    confidence: 'derived',
    unit: 'kg',
    published: 15,
    tolerance: 1e-9,
    why: 'closed form',
    ours: () => {
      const corners = (x: number, y: number) =>
        [
          [-x, -y],
          [x, -y],
          [x, y],
          [-x, y]
        ] as const
      return tippingMass(10, [0, 0], corners(0.3, 0.3), corners(0.5, 0.3))
    }
  }
]
