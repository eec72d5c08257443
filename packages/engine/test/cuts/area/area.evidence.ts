import { arcsOf } from '../../../src/cuts/area/arc-fit.ts'
import { flattenPath } from '../../../src/cuts/area/flatten-path.ts'
import { outlinePath } from '../../../src/cuts/area/outline-path.ts'
import { pocketPath } from '../../../src/cuts/area/pocket-path.ts'
import { reliefs } from '../../../src/cuts/area/relief-path.ts'
import { restRegion } from '../../../src/cuts/area/rest-region.ts'
import { slotPath } from '../../../src/cuts/area/slot-path.ts'
import { strips } from '../../../src/cuts/area/strips.ts'
import { spanLength } from '../../../src/cuts/area/track.ts'
import { circle, rectangle } from '../../../src/shape/build.ts'
import { area } from '../../../src/shape/measure.ts'
import type { Evidence } from '../../evidence.ts'
import { cutLength, flat, job, painted, pathOf } from './painted.ts'

const geometry = 'plane geometry, exact expression'
const board = rectangle(100, 60, 0, 0.01)
const RAD = Math.PI / 180

/** Area painted at the floor of a pocket, mm². */
function cleared(moves: Parameters<typeof painted>[0], radius: number, half: number, floor: number): number {
  const picture = painted(moves, radius, [-half, -half, half, half], 0.1)
  return picture.z.reduce((sum, z) => sum + (z <= floor + 1e-9 ? 0.01 : 0), 0)
}

export const rows: readonly Evidence[] = [
  {
    model: 'cuts/area/rest-region',
    what: 'left by a cutter of 10 mm in the four corners of a rectangle: (4 − π)·r²',
    source: geometry,
    confidence: 'exact',
    unit: 'mm²',
    published: (4 - Math.PI) * 25,
    tolerance: 0.3,
    why: 'chords of the disc within 0.005 mm, play of 0.01 mm along 80 mm of edge rolled',
    ours: () => {
      const r = rectangle(40, 30, 0, 0.01)
      return area(r) - area(restRegion(r, 10).cleared)
    }
  },
  {
    model: 'cuts/area/pocket-path',
    what: 'area cleared of a square of 40 mm by a cutter of 6: 1600 − (4 − π)·9',
    source: `${geometry}; discs painted on a grid of 0.1 mm`,
    confidence: 'exact',
    unit: 'mm²',
    published: 1600 - (4 - Math.PI) * 9,
    tolerance: 4,
    why: 'the painting: half a cell of 0.1 mm along 160 mm of wall, a quarter of it by chance',
    ours: () => cleared(pathOf(pocketPath(job(flat(6), 4), rectangle(40, 40, 0, 0.01))).moves, 3, 21, -4)
  },
  {
    model: 'cuts/area/pocket-path',
    what: 'area cleared of a disc of 30 mm by a cutter of 8: π·15²',
    source: `${geometry}; discs painted on a grid of 0.1 mm`,
    confidence: 'exact',
    unit: 'mm²',
    published: Math.PI * 225,
    tolerance: 3,
    why: 'the painting: half a cell of 0.1 mm along 94 mm of wall, a quarter of it by chance; path within 0.04 mm',
    ours: () => cleared(pathOf(pocketPath(job(flat(8), 4), circle(30, 0.002))).moves, 4, 16, -4)
  },
  {
    model: 'cuts/area/outline-path',
    what: 'way round a board of 100 × 60 mm by a cutter of 6, one pass of 3 mm from 1 mm over it at 3°: 4/sin 3° + 320 + 6π',
    source: geometry,
    confidence: 'exact',
    unit: 'mm',
    published: 4 / Math.sin(3 * RAD) + 320 + 6 * Math.PI,
    tolerance: 0.1,
    why: 'corners within 0.04 mm as arcs',
    ours: () => cutLength(pathOf(outlinePath(job(flat(6), 3), board, { side: 'outside' })).moves)
  },
  {
    model: 'cuts/area/slot-path',
    what: 'way of a slot 30 mm long, as wide as its cutter, 4 mm deep from 1 mm over it at 3°: 5/sin 3° + 60',
    source: geometry,
    confidence: 'exact',
    unit: 'mm',
    published: 5 / Math.sin(3 * RAD) + 60,
    tolerance: 1e-6,
    why: 'lines only',
    ours: () => cutLength(pathOf(slotPath(job(flat(6), 4), Float64Array.of(0, 0, 30, 0), 6)).moves)
  },
  {
    model: 'cuts/area/flatten-path',
    what: 'way over a board of 100 × 60 mm, rows of 10 mm by a bit of 25, 2 mm past: 2 + 6·129 + 5·10',
    source: geometry,
    confidence: 'exact',
    unit: 'mm',
    // 60 high: middles from −30 − 12.5 + 10 on, six of them until one reaches 17.5; 2 down from 1 over the top.
    published: 2 + 6 * 129 + 5 * 10,
    tolerance: 1e-6,
    why: 'lines only',
    ours: () =>
      cutLength(
        pathOf(
          flattenPath(job(flat(25, { form: 'surfacing' }), 1, { stepMm: 10 }), board, {
            alongDeg: 0,
            beyondMm: 2
          })
        ).moves
      )
  },
  {
    model: 'cuts/area/relief-path',
    what: 'middle of the bore of 6 mm that relieves a square corner, from either side: r/√2',
    source: geometry,
    confidence: 'exact',
    unit: 'mm',
    published: 3 / Math.SQRT2,
    tolerance: 1e-9,
    why: 'arithmetic',
    ours: () => 50 - Math.abs(reliefs(board, 6, 0.02)[0]!.cx)
  },
  {
    model: 'cuts/area/arc-fit',
    what: 'length of a circle of 80 mm drawn as chords and fitted with arcs: 80π',
    source: geometry,
    confidence: 'exact',
    unit: 'mm',
    published: 80 * Math.PI,
    tolerance: 0.03,
    why: 'chords within 0.01 mm of the circle: the radius by no more, 2π times it at worst',
    ours: () => {
      const ring = circle(80, 0.01).rings[0]!
      return arcsOf(Float64Array.from([...ring, ring[0]!, ring[1]!]), 0.02).reduce(
        (sum, s) => sum + spanLength(s),
        0
      )
    }
  },
  {
    model: 'cuts/area/strips',
    what: 'strips of a piece 2000 mm long on a travel of 800 with 50 of overlap: ⌈1950/750⌉, each (2000 + 100)/3 mm',
    source: 'arithmetic',
    confidence: 'exact',
    unit: 'mm',
    published: 700,
    tolerance: 1e-9,
    why: 'arithmetic',
    ours: () => {
      const [first] = strips(-1000, 1000, 800, 50)
      return first!.toMm - first!.fromMm
    }
  }
]
