import { readProgram } from '../../../src/proving/read/read-program.ts'
import type { Evidence } from '../../evidence.ts'

const STANDARD = 'NIST RS274/NGC interpreter version 3 (NISTIR 6556, 2000)'
const exact = { tolerance: 1e-12, why: 'a few roundings of a double' } as const

/** The last place that a program comes to along an axis, or the middle of its last arc. */
function last(text: string, of: 'x' | 'y' | 'z' | 'a' | 'b'): number {
  const { motions } = readProgram(`G21 G90 F100\n${text}\nM2`)
  return motions[of][motions.count - 1]!
}
const holeRow = (what: string, published: number, index: number): Evidence => ({
  model: 'proving/read',
  what,
  source: `${STANDARD}, 3.5.16.1`,
  confidence: 'read',
  unit: 'mm',
  published,
  ...exact,
  ours: () => readProgram('G21 F100\nG0 X1 Y2 Z3\nG90 G81 G98 X4 Y5 Z1.5 R2.8\nM2').motions.z[index]!
})

export const rows: readonly Evidence[] = [
  {
    model: 'proving/read',
    what: 'middle along x of G17 G2 X10 Y16 I3 J4 Z9 from (7, 7)',
    source: `${STANDARD}, 3.5.3.2`,
    confidence: 'read',
    unit: 'mm',
    published: 10,
    ...exact,
    ours: () => last('G0 X7 Y7 Z0\nG17 G2 X10 Y16 I3 J4 Z9', 'a')
  },
  {
    model: 'proving/read',
    what: 'the same along y',
    source: `${STANDARD}, 3.5.3.2`,
    confidence: 'read',
    unit: 'mm',
    published: 11,
    ...exact,
    ours: () => last('G0 X7 Y7 Z0\nG17 G2 X10 Y16 I3 J4 Z9', 'b')
  },
  holeRow('G81 at (1, 2, 3): height over the hole', 3, 1),
  holeRow('the same: down to the retract plane', 2.8, 2),
  holeRow('the same: depth', 1.5, 3),
  holeRow('the same: out again', 3, 4),
  {
    model: 'proving/read',
    what: 'the third hole of G91 G81 G98 X4 Y5 Z-0.6 R1.8 L3 from (1, 2, 3), along x',
    source: `${STANDARD}, 3.5.16.1`,
    confidence: 'memory',
    unit: 'mm',
    published: 13,
    ...exact,
    ours: () => last('G0 X1 Y2 Z3\nG91 G81 G98 X4 Y5 Z-0.6 R1.8 L3', 'x')
  },
  {
    model: 'proving/read',
    what: 'the value of [2.0 / 3 * 1.5 - 5.5 / 11.0]',
    source: `${STANDARD}, 3.3.2.3`,
    confidence: 'memory',
    unit: '1',
    published: 0.5,
    ...exact,
    ours: () => last('G0 Y0 Z0 X[2.0 / 3 * 1.5 - 5.5 / 11.0]', 'x')
  },
  {
    model: 'proving/read',
    what: 'an inch in mm',
    source: 'International yard and pound agreement, 1959',
    confidence: 'exact',
    unit: 'mm',
    published: 25.4,
    tolerance: 0,
    why: 'exact by definition',
    ours: () => last('G20 G0 X1 Y0 Z0', 'x')
  }
]
