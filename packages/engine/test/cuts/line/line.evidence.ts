import { borePath, pointMm } from '../../../src/cuts/line/bore.ts'
import { groovePath } from '../../../src/cuts/line/groove.ts'
import { vCarvePath } from '../../../src/cuts/line/v-carve.ts'
import { vFloor } from '../../../src/cuts/line/v-cutter.ts'
import { circle, polygon, rectangle } from '../../../src/shape/build.ts'
import { area } from '../../../src/shape/measure.ts'
import { medialAxis } from '../../../src/shape/medial-axis.ts'
import { textRegion } from '../../../src/stack/figure-outline.ts'
import { inlayPair } from '../../../src/stack/inlay-plug.ts'
import type { Evidence } from '../../evidence.ts'
import { cutterOf, jobOf, leftAt, pathOf, tipPlaces } from './carved.ts'

const TAN30 = Math.tan(Math.PI / 6)

// The widest place of the middle lines, and all their length.
const widest = (axis: readonly Float64Array[]) =>
  axis.reduce((most, b) => Math.max(most, ...b.filter((_, k) => k % 3 === 2)), 0)
const long = (axis: readonly Float64Array[]) =>
  axis.reduce((sum, b) => {
    let own = 0
    for (let k = 3; k < b.length; k += 3) own += Math.hypot(b[k]! - b[k - 3]!, b[k + 1]! - b[k - 2]!)
    return sum + own
  }, 0)

// Volume of what a path leaves open under the face, mm³, by a raster; the slow twin of the tests.
function carvedMm3(
  path: Parameters<typeof tipPlaces>[0],
  cutter: Parameters<typeof leftAt>[1],
  box: readonly [number, number, number, number],
  cell: number
): number {
  const points: [number, number][] = []
  for (let x = box[0] + cell / 2; x < box[2]; x += cell)
    for (let y = box[1] + cell / 2; y < box[3]; y += cell) points.push([x, y])
  return leftAt(tipPlaces(path, cell / 2), cutter, points).reduce((sum, z) => sum - z * cell * cell, 0)
}

const mayFloor = (job: ReturnType<typeof jobOf>): number => {
  const floor = vFloor(job, 60)
  return typeof floor === 'number' ? floor : Number.NaN
}

export const rows: readonly Evidence[] = [
  {
    model: 'cuts/line/bore',
    what: 'height of the point of a drill of 118°, of its diameter',
    source: 'D/(2·tan(σ/2)); usual tables give 0.300 D',
    confidence: 'derived',
    unit: '1',
    published: 0.3,
    tolerance: 0.0005,
    why: 'the table has three digits',
    ours: () => pointMm(1, 118)
  },
  {
    model: 'cuts/line/bore',
    what: 'volume of a bore Ø 12, 5 deep, milled with a cutter of 6',
    source: 'cylinder, πD²h/4',
    confidence: 'exact',
    unit: 'mm³',
    published: 180 * Math.PI,
    tolerance: 4,
    why: 'a raster of 0.1 mm along an edge 38 mm long',
    ours: () => {
      const job = jobOf(cutterOf('flat', 6), -5)
      const path = pathOf(borePath(job, [{ x: 0, y: 0, diameterMm: 12, through: false }]))
      return carvedMm3(path, job.cutter, [-7, -7, 7, 7], 0.1)
    }
  },
  {
    model: 'cuts/line/groove',
    what: 'volume of a V groove of 60°, 2 deep and 20 long, with its two half cones',
    source: 'prism d²·tan 30°·l and cone π(d·tan 30°)²d/3',
    confidence: 'exact',
    unit: 'mm³',
    published: 4 * TAN30 * 20 + (Math.PI * (2 * TAN30) ** 2 * 2) / 3,
    tolerance: 0.4,
    why: 'a raster of 0.1 mm over sloping sides',
    ours: () => {
      const job = jobOf(cutterOf('v', 8), -2)
      const path = pathOf(
        groovePath(job, [Float64Array.of(0, 0, 20, 0)], { kind: 'v', widthMm: 0, angleDeg: 60 })
      )
      return carvedMm3(path, job.cutter, [-2, -2, 22, 2], 0.1)
    }
  },
  {
    model: 'cuts/line/groove',
    what: 'volume of a round groove 6 wide, 3 deep and 20 long, with its round ends, by a ball of 6',
    source: 'half cylinder πr²l/2 and half ball 2πr³/3',
    confidence: 'exact',
    unit: 'mm³',
    published: (Math.PI * 9 * 20) / 2 + (2 * Math.PI * 27) / 3,
    tolerance: 1.5,
    why: 'a raster of 0.1 mm with upright sides at the face',
    ours: () => {
      const job = jobOf(cutterOf('ball', 6), -3)
      const path = pathOf(
        groovePath(job, [Float64Array.of(0, 0, 20, 0)], { kind: 'round', widthMm: 6, angleDeg: 60 })
      )
      return carvedMm3(path, job.cutter, [-4, -4, 24, 4], 0.1)
    }
  },
  {
    model: 'cuts/line/v-cutter',
    what: 'depth of a line 1.4 wide by a V of 60° with a tip of 0.2',
    source: '(w − tip)/(2·tan(θ/2))',
    confidence: 'derived',
    unit: 'mm',
    published: 1.2 / (2 * TAN30),
    tolerance: 1e-9,
    why: 'the same formula, from the sharp depth',
    ours: () => -mayFloor(jobOf(cutterOf('v', 6, { tipMm: 0.2 }), -1.4 / (2 * TAN30)))
  },
  {
    model: 'shape/medial-axis',
    what: 'radius in the middle of a triangle of 3, 4 and 5 by ten',
    source: 'incircle, (a + b − c)/2',
    confidence: 'exact',
    unit: 'mm',
    published: 10,
    tolerance: 1e-6,
    why: 'Newton’s method to the last digits',
    ours: () => widest(medialAxis(polygon(Float64Array.of(0, 0, 40, 0, 0, 30)), 0.01))
  },
  {
    model: 'shape/medial-axis',
    what: 'length of the middle lines of a rectangle 40 by 20',
    source: 'spine 20 and four diagonals of a square of 10',
    confidence: 'exact',
    unit: 'mm',
    published: 20 + 40 * Math.SQRT2,
    tolerance: 1e-6,
    why: 'straight lines between exact places',
    ours: () => long(medialAxis(rectangle(40, 20, 0, 0.01), 0.01))
  },
  {
    model: 'shape/medial-axis',
    what: 'length of the middle line of a ring 40 and 20 across',
    source: 'circle of 15',
    confidence: 'exact',
    unit: 'mm',
    published: 30 * Math.PI,
    tolerance: 0.6,
    why: 'a line within 0.01 mm of the circle may be longer by its waves',
    ours: () => long(medialAxis(polygon(circle(40, 0.002).rings[0]!, [circle(20, 0.002).rings[0]!]), 0.01))
  },
  {
    model: 'cuts/line/v-carve',
    what: 'volume of a square 12 by 12 cut out with a V of 60°',
    source: 'pyramid, a³/(6·tan 30°)',
    confidence: 'exact',
    unit: 'mm³',
    published: 12 ** 3 / (6 * TAN30),
    tolerance: 3,
    why: 'a raster of 0.1 mm over sloping sides, middle lines within 0.01 mm',
    ours: () => {
      const job = jobOf(cutterOf('v', 14), -12)
      const made = vCarvePath(rectangle(12, 12, 0, 0.01), job)
      return 'says' in made ? Number.NaN : carvedMm3(made.path, job.cutter, [-7, -7, 7, 7], 0.1)
    }
  },
  {
    model: 'stack/inlay-plug',
    what: 'area of the plug of a rectangle 40 by 30, cutter 6, gap 0.2',
    source: 'sides less twice the gap, corners of 3 − 0.2: ab − (4 − π)r²',
    confidence: 'exact',
    unit: 'mm²',
    published: 39.6 * 29.6 - (4 - Math.PI) * 2.8 ** 2,
    tolerance: 0.3,
    why: 'offsets within 0.0025 mm along 138 mm',
    ours: () => area(inlayPair(rectangle(40, 30, 0, 0.01), 6, 0.2, 0.01).plug)
  },
  {
    model: 'stack/figure-text',
    what: 'area of a zero against that of one twice as high, as a share',
    source: 'areas go with the square of the height',
    confidence: 'exact',
    unit: '1',
    published: 0.25,
    tolerance: 0.0005,
    why: 'curves flattened to the same tolerance at both sizes',
    ours: () =>
      area(textRegion('0', { x: 0, y: 0 }, 8, 0.002)) / area(textRegion('0', { x: 0, y: 0 }, 16, 0.002))
  }
]
