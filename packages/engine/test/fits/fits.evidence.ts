import { together } from '../../src/fits/share.ts'
import type { Evidence } from '../evidence.ts'
import { table } from '../evidence.ts'
import { EUROCODE, screwIn } from './screw.ts'

export const rows: readonly Evidence[] = [
  table({
    model: 'fits/pilot',
    what: 'pilot of wood screws 3 to 6 mm in timber of middling density (black walnut) against 0.7·d, share of it',
    source: 'EN 1995-1-1 10.4.5, predrilling for the threaded part',
    confidence: 'memory',
    unit: '1',
    tolerance: 0.1,
    why: 'the rule knows no density; common practice runs a tenth to either side of it, softwood to hardwood',
    cells: EUROCODE.length,
    worst: () => Math.max(...EUROCODE.map(([d, pilot]) => Math.abs(screwIn('walnut-black', d) / pilot - 1)))
  }),
  {
    model: 'fits/share',
    what: 'two independent deviations of ± 0.3 and ± 0.4 together',
    source: 'root sum of squares, statistical tolerancing; 3-4-5 triangle',
    confidence: 'derived',
    unit: 'mm',
    published: 0.5,
    tolerance: 1e-12,
    why: 'exact',
    ours: () =>
      together([
        { cause: 'cut', sideMm: [-0.3, 0, 0.3], sure: false },
        { cause: 'part size', sideMm: [-0.4, 0, 0.4], sure: false }
      ])[2]
  }
]
