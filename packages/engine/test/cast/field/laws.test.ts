import { describe, expect, it } from 'vitest'
import type { FieldMaterial, FieldProblem, ResinMaterial } from '../../../src/cast/field/field-problem.ts'
import type { FieldResult } from '../../../src/cast/field/field-result.ts'
import { fieldRun, runField } from '../../../src/cast/field/field-run.ts'
import { runColumn } from '../../../src/resin/column.ts'
import { resinOf } from '../../../src/resin/column-result.ts'
import { altered, CLASSES } from '../../resin/sets.ts'
import { KERNELS } from './kernels.ts'
import { type MouldCase, problemOf } from './mould-case.ts'

const BOARD: FieldMaterial = { kind: 'inert', kWmK: 0.12, rhoCpJm3K: 1.19e6, startC: 21 }
const TIMBER: FieldMaterial = { kind: 'inert', kWmK: 0.16, rhoCpJm3K: 1.02e6, startC: 21 }
const pour = (atS: number, more: Partial<ResinMaterial> = {}): ResinMaterial => ({
  kind: 'resin',
  resin: CLASSES.deep,
  atS,
  startC: 23,
  rateFactor: 4,
  ...more
})
const H = 3600

/** A lopsided mould: island off the middle, two pours, one corner off. */
const LOPSIDED: MouldCase = {
  size: [13, 10, 8],
  dxM: 0.01,
  dyM: 0.012,
  dzM: [0.009, 0.009, 0.004, 0.004, 0.004, 0.004, 0.004, 0.004],
  cell: (ix, iy, iz) => {
    if (ix < 3 && iy < 2) return -1
    if (iz < 2 || ix === 0 || iy === 0 || ix === 12 || iy === 9 || (ix < 4 && iy < 3)) return 0
    if (iz < 4 && ix > 6 && ix < 11 && iy > 4) return 1
    return iz < 5 ? 2 : iz < 7 ? 3 : -1
  },
  materials: [BOARD, TIMBER, pour(0), pour(5 * H)],
  films: { floor: 5, side: 7, up: 10, down: 5, sideways: 8 },
  ambientC: t => 21 + 2 * Math.sin((2 * Math.PI * t) / 86_400),
  untilS: 12 * H
}

/** Largest difference of two results over all cells; `there` says where a cell lies in the second. */
function apart(
  a: FieldResult,
  b: FieldResult,
  [nx, ny, nz]: MouldCase['size'],
  there: (ix: number, iy: number) => readonly [number, number] = (ix, iy) => [ix, iy]
): { readonly tempK: number; readonly peakK: number; readonly gel: number } {
  let [tempK, peakK, gel] = [0, 0, 0]
  for (let iy = 0; iy < ny; iy++)
    for (let ix = 0; ix < nx; ix++)
      for (let iz = 0; iz < nz; iz++) {
        const p = a.at(ix, iy, iz)
        const q = b.at(...there(ix, iy), iz)
        expect(Number.isNaN(p.tempC)).toBe(Number.isNaN(q.tempC))
        if (Number.isNaN(p.tempC)) continue
        tempK = Math.max(tempK, Math.abs(p.tempC - q.tempC))
        peakK = Math.max(peakK, Math.abs(p.peakC - q.peakC))
        if (p.gelS > 0) gel = Math.max(gel, Math.abs(q.gelS / p.gelS - 1))
      }
  return { tempK, peakK, gel }
}

const bytes = (r: FieldResult): string =>
  JSON.stringify([r, LOPSIDED.dzM.map((_, iz) => [...r.peakMap(iz)].map(String))], (_, v) =>
    v instanceof Float64Array ? [...v] : v
  )

describe('laws of the cast', () => {
  const [nx, ny] = LOPSIDED.size
  const straight = runField(problemOf(LOPSIDED))

  it('mirrored moulds give mirrored results', () => {
    const flips: readonly (readonly [string, (ix: number, iy: number) => readonly [number, number]])[] = [
      ['x', (ix, iy) => [nx - 1 - ix, iy]],
      ['y', (ix, iy) => [ix, ny - 1 - iy]]
    ]
    for (const [name, flip] of flips) {
      const mirrored = {
        ...LOPSIDED,
        cell: (ix: number, iy: number, iz: number) => LOPSIDED.cell(...flip(ix, iy), iz)
      }
      const off = apart(straight, runField(problemOf(mirrored)), LOPSIDED.size, flip)
      expect(off.tempK, name).toBeLessThan(1e-6)
      expect(off.peakK, name).toBeLessThan(1e-6)
      expect(off.gel, name).toBeLessThan(1e-8)
    }
  })

  it('a mould turned by a quarter gives the same, but for the order of the sweeps', () => {
    const turned: MouldCase = {
      ...LOPSIDED,
      size: [ny, nx, LOPSIDED.size[2]],
      dxM: LOPSIDED.dyM,
      dyM: LOPSIDED.dxM,
      cell: (ix, iy, iz) => LOPSIDED.cell(iy, ix, iz)
    }
    const off = apart(straight, runField(problemOf(turned)), LOPSIDED.size, (ix, iy) => [iy, ix])
    expect(off.peakK).toBeLessThan(0.05)
    expect(off.gel).toBeLessThan(5e-4)
  })

  for (const [name, make] of KERNELS) {
    it(`same input, same bytes; in one go or step by step: ${name} kernel`, () => {
      const once = bytes(runField(problemOf(LOPSIDED), make))
      expect(bytes(runField(problemOf(LOPSIDED), make))).toBe(once)
      const run = fieldRun(problemOf(LOPSIDED), make)
      let last = 0
      while (!run.advance(1)) {
        // a look at it on the way must not change it
        if (run.progress() - last > 0.2) run.result()
        expect(run.progress()).toBeGreaterThanOrEqual(last)
        last = run.progress()
      }
      expect(bytes(run.result())).toBe(once)
    })

    it(`two runs side by side do not disturb each other: ${name} kernel`, () => {
      const a = fieldRun(problemOf(LOPSIDED), make)
      const b = fieldRun(problemOf({ ...LOPSIDED, materials: [BOARD, TIMBER, pour(0), pour(8 * H)] }), make)
      for (let done = false; !done; ) {
        done = a.advance(3)
        done = b.advance(2) && done
      }
      expect(bytes(a.result())).toBe(bytes(runField(problemOf(LOPSIDED), make)))
    })
  }

  it('both kernels agree: 0.02 °C, gel 0.05 %', () => {
    const other = runField(problemOf(LOPSIDED), KERNELS[1]![1])
    const off = apart(straight, other, LOPSIDED.size)
    expect(off.tempK).toBeLessThan(0.02)
    expect(off.peakK).toBeLessThan(0.02)
    expect(off.gel).toBeLessThan(5e-4)
    straight.pours.forEach((p, i) => {
      const q = other.pours[i]!
      expect(Math.abs(p.peakC - q.peakC)).toBeLessThan(0.02)
      expect(Math.abs(q.meanGelS! / p.meanGelS! - 1)).toBeLessThan(5e-4)
      expect(Math.abs(q.mostGelS! / p.mostGelS! - 1)).toBeLessThan(5e-4)
      expect(q.history.timeS.length).toBe(p.history.timeS.length)
    })
  })

  it('the order in which materials are listed does not matter', () => {
    const order = [3, 1, 0, 2]
    const shuffled: MouldCase = {
      ...LOPSIDED,
      materials: order.map(i => LOPSIDED.materials[i]!),
      cell: (ix, iy, iz) => order.indexOf(LOPSIDED.cell(ix, iy, iz))
    }
    const result = runField(problemOf(shuffled))
    const off = apart(straight, result, LOPSIDED.size)
    expect(off.tempK).toBe(0)
    expect(off.gel).toBe(0)
    // pours are listed as their materials are: the later pour first
    expect(result.pours[0]!.peakC).toBe(straight.pours[1]!.peakC)
  })

  it('released, lost and stored heat balance, and each is what the pours hold', () => {
    const { energy } = straight
    expect(Math.abs(energy.closure)).toBeLessThan(1e-9)
    // 350 kJ/kg or so, times what has cured: between half and all of it
    const volumeM3 = 0.01 * 0.012 * 0.004 * countOf(LOPSIDED, m => m >= 2)
    const { bulk, kinetics } = CLASSES.deep
    const mostJ = volumeM3 * bulk.liquidKgM3 * kinetics.heatJPerKg
    expect(energy.releasedJ).toBeGreaterThan(mostJ / 2)
    expect(energy.releasedJ).toBeLessThan(mostJ)
  })
})

function countOf(c: MouldCase, which: (material: number) => boolean): number {
  const [nx, ny, nz] = c.size
  let n = 0
  for (let iy = 0; iy < ny; iy++)
    for (let ix = 0; ix < nx; ix++) for (let iz = 0; iz < nz; iz++) if (which(c.cell(ix, iy, iz))) n++
  return n
}

describe('the cast beside the column', () => {
  for (const [name, make] of KERNELS)
    it(`a pour without sides on a board is the column's own: ${name} kernel`, () => {
      const heights = [...Array.from({ length: 6 }, () => 0.003), ...Array.from({ length: 16 }, () => 0.0025)]
      // six by five columns, all alike: nothing may flow between them
      const mould: MouldCase = {
        size: [6, 5, 22],
        dxM: 0.005,
        dyM: 0.005,
        dzM: heights,
        cell: (_x, _y, iz) => (iz < 6 ? 0 : 1),
        materials: [BOARD, pour(0, { rateFactor: 1.5, liquidMultiplier: 2 })],
        films: { floor: 6, side: 0, up: 9, down: 0, sideways: 0 },
        ambientC: () => 21,
        untilS: 30 * H
      }
      const field = runField(problemOf(mould), make)
      const column = resinOf(
        runColumn({
          shape: 'slab',
          layers: [
            { kind: 'inert', thicknessMm: 18, cells: 6, kWmK: 0.12, rhoCpJm3K: 1.19e6, startC: 21 },
            {
              kind: 'resin',
              thicknessMm: 40,
              cells: 16,
              resin: CLASSES.deep,
              rateFactor: 1.5,
              kLiquidMultiplier: 2,
              startC: 23
            }
          ],
          floor: { kind: 'convective', hWm2K: 6, ambientC: 21 },
          top: { kind: 'convective', hWm2K: 9, ambientC: 21 },
          untilS: 30 * H
        })
      )
      const p = field.pours[0]!
      expect(column.peakC).toBeGreaterThan(45)
      expect(Math.abs(p.peakC - column.peakC), `${p.peakC} ${column.peakC}`).toBeLessThan(0.25)
      expect(Math.abs(p.peakAtMm - column.peakAtMm)).toBeLessThan(2.6)
      for (const key of ['firstGelS', 'halfGelS', 'allGelS'] as const)
        expect(Math.abs(p[key]! / column[key]! - 1), key).toBeLessThan(3e-3)
      // alike everywhere on the plan
      expect(Math.abs(field.at(0, 0, 12).tempC - field.at(5, 4, 12).tempC)).toBeLessThan(1e-3)
    })
})

describe('refinement', () => {
  it('cells halved twice: what is left shrinks in order 1.8 and more', () => {
    const block = (per: number): FieldProblem =>
      problemOf(
        {
          size: [5 * per, 4 * per, 5 * per],
          dxM: 0.02 / per,
          dyM: 0.02 / per,
          dzM: Array.from({ length: 5 * per }, () => 0.008 / per),
          cell: (ix, iy, iz) => {
            const [x, y, z] = [Math.floor(ix / per), Math.floor(iy / per), Math.floor(iz / per)]
            return x === 0 || x === 4 || y === 0 || y === 3 || z === 0 ? 0 : 1
          },
          materials: [
            BOARD,
            pour(0, { resin: altered(CLASSES.deep, { kSlopeWmK: 0 }, { diffusion: null }), rateFactor: 3 })
          ],
          films: { floor: 6, side: 8, up: 10, down: 5, sideways: 8 },
          ambientC: () => 21,
          untilS: 12 * H
        },
        { errorK: 0.01, change: 0.005, longestS: 900 }
      )
    const means = [2, 4, 8].map(per => runField(block(per), KERNELS[1]![1]).pours[0]!.meanGelS!)
    const order = Math.log2((means[0]! - means[1]!) / (means[1]! - means[2]!))
    expect(order, means.join(' ')).toBeGreaterThan(1.8)
    expect(Math.abs(means[2]! / means[1]! - 1), means.join(' ')).toBeLessThan(1e-2)
  })
})

describe('what it refuses', () => {
  const problem = problemOf(LOPSIDED)
  it('cells that do not fill the grid, values out of range, heat from outside in the other kernel', () => {
    expect(() => runField({ ...problem, nx: 12 })).toThrow('1040 cells for a grid of 12 by 10 by 8')
    expect(() => runField({ ...problem, dxM: 0 })).toThrow('width of a cell')
    expect(() => runField({ ...problem, untilS: Number.NaN })).toThrow('length of the run')
    expect(() => runField({ ...problem, films: { ...problem.films, up: -1 } })).toThrow('film coefficient')
    expect(() => runField({ ...problem, materials: [BOARD, TIMBER, pour(0), pour(99 * H)] })).toThrow(
      'moment of a pour'
    )
    expect(() => runField({ ...problem, source: () => undefined }, KERNELS[1]![1])).toThrow('plain one')
  })
})
