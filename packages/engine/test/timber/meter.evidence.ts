import { MEAN_DEPTH, temperatureCorrectionPct } from '../../src/timber/meter.ts'
import type { Evidence } from '../evidence.ts'

const model = 'timber/meter'

export const rows: readonly Evidence[] = [
  {
    model,
    what: 'figure of 12 % in timber at 0 °C: points to add',
    source: 'Pfaff and Garrahan 1986, worked independently with six figures',
    confidence: 'memory',
    unit: '%',
    published: 2.0146,
    tolerance: 0.00005,
    why: 'four decimals',
    ours: () => temperatureCorrectionPct(12, 0)
  },
  {
    model,
    what: 'change of the figure a degree about 25 °C, 12 %',
    source: 'trade rule for resistance meters: 0.06 to 0.1 % less a degree above 20 °C',
    confidence: 'practice',
    unit: '% a K',
    published: -0.08,
    tolerance: 0.02,
    why: 'the width of the rule',
    ours: () => temperatureCorrectionPct(12, 30) / 10
  },
  {
    model,
    what: 'depth of the pins that reads the mean of a drying board',
    source: 'trade rule for pin meters: a fifth to a quarter of the thickness',
    confidence: 'practice',
    unit: 'of the thickness',
    published: 0.225,
    tolerance: 0.025,
    why: 'the width of the rule',
    ours: () => MEAN_DEPTH
  }
]
