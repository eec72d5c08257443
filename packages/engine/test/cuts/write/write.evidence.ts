import { writtenArc } from '../../../src/cuts/write/arc.ts'
import { numbersOf } from '../../../src/cuts/write/number.ts'
import type { Dialect } from '../../../src/piece/dialect-field.ts'
import type { Evidence } from '../../evidence.ts'
import { arcsDrawn, radiiApart } from './arcs-drawn.ts'
import { dialect } from './sample.ts'

const model = 'cuts/write'
const source = 'RS274/NGC interpreter version 3, NISTIR 6556 (2000), 3.5.3.2'

const radii = (what: string, unit: string, most: number, change: Partial<Dialect>): Evidence => ({
  model,
  what: `start and end radius of 4,000 arcs drawn by lot, ${what}: worst difference`,
  source,
  confidence: 'read',
  unit,
  published: 0,
  tolerance: most,
  why: 'the rule of the standard for an arc by its middle',
  cells: 4000,
  ours: () => radiiApart(arcsDrawn(change, 4000, 0.05, 2000))
})

/** Worst sagitta of the chords of a quarter of 50 mm radius, mm, from the places alone. */
function sagitta(): number {
  const numbers = numbersOf(dialect({ decimals: 6 }))
  const from = { x: 50, y: 0, z: 0 }
  const arc = { kind: 'arc', x: 0, y: 50, z: 0, cx: 0, cy: 0, clockwise: false, feedMmMin: 1 } as const
  let at = from
  let most = 0
  for (const w of writtenArc(from, from, arc, numbers, 0.01, false)) {
    most = Math.max(most, 50 - Math.hypot((at.x + w.x) / 2, (at.y + w.y) / 2))
    at = w
  }
  return most
}

export const rows: readonly Evidence[] = [
  radii('2 decimals of a mm', 'mm', 0.002, { decimals: 2 }),
  radii('3 decimals of a mm', 'mm', 0.002, {}),
  radii('3 decimals of an inch', 'in', 0.0002, { units: 'inch', decimals: 3 }),
  radii('4 decimals of an inch', 'in', 0.0002, { units: 'inch' }),
  {
    model,
    what: 'the worked arc G17 G2 X10 Y16 I3 J4 from (7, 7): I',
    source,
    confidence: 'read',
    unit: 'mm',
    published: 3,
    tolerance: 1e-12,
    why: 'three decimals hold it exactly',
    ours: () => {
      const from = { x: 7, y: 7, z: 0 }
      const arc = { kind: 'arc', x: 10, y: 16, z: 9, cx: 10, cy: 11, clockwise: true, feedMmMin: 1 } as const
      const [w] = writtenArc(from, from, arc, numbersOf(dialect()), 0.01, true)
      return w?.kind === 'arc' && w.j === 4 && w.z === 9 ? w.i : Number.NaN
    }
  },
  {
    model,
    what: 'sagitta of the chords of a quarter circle of 50 mm at a tolerance of 0.01 mm: e = R(1 − cos(δ/2)), 40 chords',
    source: 'closed form: 90° by 2·acos(1 − 0.01/50) = 2.29° is 39.3, so 40 chords of 2.25°',
    confidence: 'exact',
    unit: 'mm',
    published: 50 * (1 - Math.cos(Math.PI / 160)),
    tolerance: 2e-6,
    why: 'six decimals',
    ours: sagitta
  }
]
