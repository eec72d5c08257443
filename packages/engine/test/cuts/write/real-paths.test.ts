import { describe, expect, it } from 'vitest'
import { flattenPath } from '../../../src/cuts/area/flatten-path.ts'
import { outlinePath } from '../../../src/cuts/area/outline-path.ts'
import { pocketPath } from '../../../src/cuts/area/pocket-path.ts'
import { reliefPath, reliefs } from '../../../src/cuts/area/relief-path.ts'
import { slotPath } from '../../../src/cuts/area/slot-path.ts'
import type { NoPath } from '../../../src/cuts/cut-job.ts'
import { borePath } from '../../../src/cuts/line/bore.ts'
import { vCarvePath } from '../../../src/cuts/line/v-carve.ts'
import type { Toolpath } from '../../../src/cuts/toolpath.ts'
import { airCut } from '../../../src/cuts/write/air-cut.ts'
import type { ProgramInput } from '../../../src/cuts/write/program.ts'
import { passesOf, restart } from '../../../src/cuts/write/restart.ts'
import { testCut } from '../../../src/cuts/write/test-cut.ts'
import { writeProgram } from '../../../src/cuts/write/write-program.ts'
import { circle, rectangle } from '../../../src/shape/build.ts'
import { difference } from '../../../src/shape/combine.ts'
import { flat, job } from '../area/painted.ts'
import { dialect, program, run } from './sample.ts'
import { scan } from './scan.ts'

const pathOf = (path: Toolpath | NoPath): Toolpath => {
  if ('says' in path) throw new Error(path.says)
  return path
}
const plate = rectangle(120, 80, 6, 0.02, 0, 0)
const pocket = difference(plate, circle(20, 0.02, 10, 5))
const vee = flat(12, { form: 'v', angleDeg: 60, plunges: true })

/** A path of each maker of paths, with the cutter it was made for. */
const PATHS = [
  ['pocket with an island', flat(6), pocketPath(job(flat(6), 9), pocket), 0],
  ['pocket with an allowance', flat(6), pocketPath(job(flat(6), 9, { allowanceMm: 0.3 }), pocket), 0],
  ['pocket in lines', flat(6), pocketPath(job(flat(6), 9, {}, { arcs: false }), pocket), 0],
  ['outline with tabs', flat(8), outlinePath(job(flat(8), 28), plate, { side: 'outside', tabs: { count: 4, widthMm: 8, thickMm: 3 } }), 0],
  ['flattening', flat(50), flattenPath(job(flat(50), 1.4, { stepMm: 30 }), plate, { alongDeg: 0, beyondMm: 3 }), 0],
  ['flattening one way', flat(50), flattenPath(job(flat(50), 1.4, { stepMm: 30 }), plate, { alongDeg: 30, beyondMm: 3, oneWay: true }), 0],
  ['slot', flat(6), slotPath(job(flat(6), 5), Float64Array.of(0, 0, 40, 0, 40, 20), 6.5), 0],
  ['bores', flat(6), borePath(job(flat(6), 12), [{ x: 0, y: 0, diameterMm: 16, through: false }, { x: 30, y: 0, diameterMm: 6, through: false }]), 0],
  ['corners', flat(4), reliefPath(job(flat(4), 3), reliefs(rectangle(30, 20, 0, 0.02, 0, 0), 4, 0.01)), 0],
  ['figures', vee, vCarvePath(rectangle(4, 20, 0, 0.02, 0, 0), job(vee, 6)), 0]
] as const // biome-ignore format: one row a path

describe('the paths of the makers of paths', () => {
  it.each(PATHS)('%s is written, tested, lifted and begun again at every pass', (name, shape, made, top) => {
    const path = 'path' in made ? made.path : made
    const whole = program(
      [
        run(pathOf(path as Toolpath | NoPath), {
          shape,
          parts: [{ name, path: pathOf(path as Toolpath | NoPath), topMm: top }]
        })
      ],
      {
        clearMm: job(flat(6), 1).clearMm,
        stock: { minX: -60, maxX: 60, minY: -40, maxY: 40, minZ: -28, maxZ: 0 },
        checkAt: { x: 0, y: 0, topMm: 0 }
      }
    )
    const all: ProgramInput[] = [whole, airCut(whole), testCut(whole).program!]
    const passes = passesOf(whole)
    expect(passes.length).toBeGreaterThan(0)
    for (const at of passes.slice(0, 40)) all.push(restart(whole, at))
    for (const p of all)
      for (const d of [dialect(), dialect({ cycles: true, units: 'inch' })]) scan(writeProgram(p, d).text)
  })
})
