import { dowelPinOf } from '../../../src/catalogue/dowel-pin.ts'
import { registered } from '../../../src/cuts/pins/registered.ts'
import { boundMm, landFreedomMm, offMm, pitchTakenMm, turnRad } from '../../../src/cuts/pins/two-pins.ts'
import { crossGrainMovement } from '../../../src/timber/movement.ts'
import { deviationsMm } from '../../../src/tolerance/iso286.ts'
import type { Evidence } from '../../evidence.ts'
import { chance } from '../../stack/random.ts'

const pins = { clearance1Mm: 0.05, clearance2Mm: 0.05, pitchMm: 200 }
const derived = {
  model: 'cuts/pins/two-pins',
  source: 'registration on two pins, worked by hand: (c1 + c2)/(2L), c1/2 + r·φ',
  confidence: 'derived',
  tolerance: 1e-9,
  why: 'closed form'
} as const

// A rigid part thrown on two pins by chance and kept where both holes go over them: how far a place lies off at most.
function thrown(c1: number, c2: number, pitch: number, px: number, py: number): number {
  const { span } = chance(11)
  const [free, limit] = [Math.max(c1, c2) / 2, (c1 + c2) / (2 * pitch)]
  let most = 0
  for (let k = 0; k < 120_000; k++) {
    const [dx, dy, a] = [span(-free, free), span(-free, free), span(-limit, limit)]
    const [c, s] = [Math.cos(a) - 1, Math.sin(a)]
    if (Math.hypot(dx, dy) > c1 / 2 || Math.hypot(dx + c * pitch, dy + s * pitch) > c2 / 2) continue
    most = Math.max(most, Math.hypot(dx + c * px - s * py, dy + s * px + c * py))
  }
  return most
}

const simulated = (what: string, c1: number, c2: number, pitch: number, u: number, v: number): Evidence => ({
  model: 'cuts/pins/two-pins',
  what,
  source: 'seeded simulation: 120 000 throws of a rigid part on two pins, those kept that go on',
  confidence: 'computed',
  unit: 'mm',
  published: thrown(c1, c2, pitch, u, v),
  tolerance: 0.08 * offMm({ clearance1Mm: c1, clearance2Mm: c2, pitchMm: pitch }, u, v),
  why: 'throws seldom reach the corner where it is greatest',
  ours: () => offMm({ clearance1Mm: c1, clearance2Mm: c2, pitchMm: pitch }, u, v)
})

export const rows: readonly Evidence[] = [
  {
    ...derived,
    what: 'greatest turn, play 0.05 and 0.05 over 200 mm',
    unit: 'rad',
    published: 0.25e-3,
    ours: () => turnRad(pins)
  },
  {
    ...derived,
    what: 'off at 300 mm from the first pin',
    unit: 'mm',
    published: 0.1,
    ours: () => boundMm(pins, 300)
  },
  {
    ...derived,
    what: 'misfit of the pitch that two round pins take',
    unit: 'mm',
    published: 0.05,
    ours: () => pitchTakenMm(pins)
  },
  {
    ...derived,
    what: 'in-line freedom of a pin with a land of a quarter of 8 mm, hole 8.05: D·c/(2·b)',
    unit: 'mm',
    published: (8.05 * 0.05) / 4,
    tolerance: 0.02,
    why: 'the published form is the first term of ours',
    ours: () => landFreedomMm(8.05, 8, 2)
  },
  {
    ...derived,
    what: 'pins 200 mm apart across the grain, C 0.0027 per %, 2 %',
    unit: 'mm',
    published: 1.1,
    tolerance: 0.05,
    why: 'printed to a tenth',
    ours: () =>
      crossGrainMovement({ dimensionMm: 200, coefficientPerPct: 0.0027, fromPct: 8, toPct: 10 }).centralMm
  },
  simulated('in line, beyond the first pin', 0.05, 0.05, 200, -300, 0),
  simulated('beside the line between the pins', 0.2, 0.1, 550, 100, 110),
  {
    model: 'catalogue/dowel-pin',
    what: 'largest size of a hardened pin of 8 mm: 8 m6',
    source: 'ISO 8734:1997 with ISO 286-2 (m6 read)',
    confidence: 'read',
    unit: 'mm',
    published: 8.015,
    tolerance: 1e-9,
    why: 'exact',
    ours: () => 8 + deviationsMm(8, dowelPinOf(8)!.toleranceClass).upperMm
  },
  {
    model: 'cuts/pins/registered',
    what: 'a square of 200 mm turned by 1° and shifted by 3, -2: the turn found',
    source: 'rotation of the plane',
    confidence: 'exact',
    unit: '°',
    published: 1,
    tolerance: 1e-9,
    why: 'exact places',
    ours: () => {
      const a = Math.PI / 180
      const corners = [
        [-100, -100],
        [100, -100],
        [100, 100],
        [-100, 100]
      ] as const
      return registered(
        corners.map(([x, y]) => ({
          drawn: [x, y] as const,
          measured: [Math.cos(a) * x - Math.sin(a) * y + 3, Math.sin(a) * x + Math.cos(a) * y - 2] as const
        }))
      ).turnDeg
    }
  }
]
