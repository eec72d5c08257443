import { dryingByDiffusion, dryingByRule } from '../../src/timber/drying.ts'
import type { Evidence } from '../evidence.ts'

const model = 'timber/drying'

export const rows: readonly Evidence[] = [
  {
    model,
    what: '2.5 in (63.5 mm) by the rule of a year per inch',
    source: 'common practice; one maker counts three years for two inches',
    confidence: 'practice',
    unit: 'years',
    published: 2.5,
    tolerance: 1e-12,
    why: 'arithmetic',
    ours: () => dryingByRule(63.5, 365).neededYears
  },
  {
    model,
    what: 'core of 64 mm from 14 to 7 % in a room of 6 %, 2e-10 m²/s: leading term ln(32/π)/π²·L²/D',
    source: 'Crank, The Mathematics of Diffusion, mid-plane series; worked by hand: 0.23517 × 237.04 days',
    confidence: 'derived',
    unit: 'days',
    published: 55.743,
    tolerance: 0.001,
    why: 'the second term is e^−20; rounding of the hand calculation',
    ours: () =>
      dryingByDiffusion({
        thicknessMm: 64,
        coreMoisturePct: 14,
        roomMoisturePct: 6,
        diffusionM2PerS: 2e-10
      }).centralDays
  }
]
