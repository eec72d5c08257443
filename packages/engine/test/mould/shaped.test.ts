import { describe, expect, it } from 'vitest'
import { cutList } from '../../src/mould/cutlist.ts'
import type { ShapedMould } from '../../src/mould/shaped.ts'
import { shapedCutList } from '../../src/mould/shaped.ts'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { circle, polygon, rectangle } from '../../src/shape/build.ts'
import { difference, union } from '../../src/shape/combine.ts'
import { rotate } from '../../src/shape/transform.ts'
import { mouldPart } from '../../src/sheets/page-lists.ts'
import { mouldDetail } from '../../src/sheets/run-mould.ts'
import { worked } from '../cases/asked.ts'
import { planOf } from '../sheets/pieces.ts'

// Checked against closed forms: lengths and areas of circles and of boards drawn on squared paper.

const mould: ShapedMould = {
  wallHeightMm: 40,
  baseThicknessMm: 18,
  wallThicknessMm: 18,
  runPast: 'along x',
  bearers: 0,
  joints: 'inside'
}
const TOL = 0.01

describe('cut list along the line of a mould', () => {
  it('is that of the box for a rectangle along x and y', () => {
    const list = shapedCutList(rectangle(600, 400, 0, TOL, 31, -7), mould, TOL)
    const box = cutList({ ...mould, walls: 'on the base', innerLengthMm: 600, innerWidthMm: 400 })
    expect(list).toEqual(box)
  })

  it('bends one strip of π·300 mm round a circle of 300, however coarse its chords', () => {
    for (const tol of [0.001, 0.01, 0.5]) {
      const list = shapedCutList(circle(300, tol), mould, tol)
      const [base, strip, ...more] = list.boards
      expect(list.follows).toBe('curve')
      expect(more).toEqual([])
      expect(strip).toMatchObject({ name: 'ring or bent strip', count: 1, widthMm: 40, thicknessMm: null })
      // The chords of a circle of the same area are longer than it by a part in 6·(2·tol/r) at most.
      expect(Math.abs(strip!.lengthMm - Math.PI * 300)).toBeLessThan(tol < 0.1 ? 0.05 : 1)
      expect(base!.lengthMm).toBeCloseTo(336, 0)
      expect(base!.widthMm).toBeCloseTo(336, 0)
      expect(list.stripLengthM).toBeCloseTo(0.9425, tol < 0.1 ? 4 : 2)
      expect(list.wallAreaM2).toBe(0)
      // Once round the foot and one joint of the strip; the inside of a drum.
      expect(list.sealantLengthM).toBeCloseTo(0.9425 + 0.04, tol < 0.1 ? 4 : 2)
      expect(list.tapeAreaM2).toBeCloseTo((Math.PI * (150 ** 2 + 300 * 40)) / 1e6, tol < 0.1 ? 5 : 3)
    }
  })

  it('gives a rectangle with two ears a wall an edge, their lengths together its perimeter', () => {
    // 300 × 200; ears of 60 that stand out 37: 2·(300 + 200) + 4·37 = 1148, twelve corners.
    const ear = (x: number) => rectangle(44, 60, 0, TOL, x, 0)
    const list = shapedCutList(union(rectangle(300, 200, 0, TOL), ear(165), ear(-165)), mould, TOL)
    const [base, ...walls] = list.boards
    const sum = (what: (b: (typeof walls)[number]) => number) => walls.reduce((s, b) => s + what(b), 0)
    expect(list.follows).toBe('straight edges')
    expect(sum(b => b.count)).toBe(12)
    expect(sum(b => b.count * b.lengthMm)).toBeCloseTo(1148, 6)
    expect(walls.map(b => [b.count, Math.round(b.lengthMm)])).toEqual([
      [2, 300],
      [4, 70],
      [2, 60],
      [4, 37]
    ])
    expect(base).toMatchObject({ lengthMm: 374 + 36, widthMm: 236 })
    // Eight corners out, four in: board as for any mould of square corners, 4 thicknesses more.
    expect(list.wallAreaM2).toBeCloseTo(((1148 + 4 * 18) * 40) / 1e6, 9)
    expect(list.sealantLengthM).toBeCloseTo((1148 + 12 * 40) / 1000, 9)
    expect(list.says.join(' ')).toMatch(/butt at the corners: .* 18 mm longer/)
  })

  it('mitres a square on its tip: a base that holds the points of its walls', () => {
    const list = shapedCutList(rotate(rectangle(200, 200, 0, TOL), 45), mould, TOL)
    expect(list.boards[1]).toMatchObject({ name: 'wall', count: 4 })
    expect(list.boards[1]!.lengthMm).toBeCloseTo(200, 6)
    expect(list.boards[0]!.lengthMm).toBeCloseTo(236 * Math.SQRT2, 3)
  })

  it('drops corners that turn nowhere', () => {
    const points = [
      [0, 0],
      [100, 0],
      [250, 0],
      [250, 120],
      [130, 120],
      [0, 60]
    ].flat()
    const list = shapedCutList(polygon(Float64Array.from(points)), mould, TOL)
    expect(list.boards.slice(1).reduce((s, b) => s + b.count, 0)).toBe(5)
  })

  it('takes an edge of 4 mm, or more than 40 edges, for a curve', () => {
    const cut = difference(rectangle(300, 200, 0, TOL), rotate(rectangle(4, 4, 0, TOL, 150, 100), 0))
    expect(shapedCutList(cut, mould, TOL).follows).toBe('curve')
    const star = (n: number) =>
      polygon(
        Float64Array.from({ length: 2 * n }, (_, i) => {
          const r = (i >> 1) % 2 === 0 ? 300 : 250
          const a = (2 * Math.PI * (i >> 1)) / n
          return r * (i % 2 === 0 ? Math.cos(a) : Math.sin(a))
        })
      )
    expect(shapedCutList(star(40), mould, TOL).follows).toBe('straight edges')
    expect(shapedCutList(star(42), mould, TOL).follows).toBe('curve')
  })

  it('walls a hole of straight edges, inside which the walls are shorter', () => {
    const frame = difference(rectangle(400, 300, 0, TOL), rectangle(200, 100, 0, TOL))
    const list = shapedCutList(frame, mould, TOL)
    expect(list.boards.slice(1).reduce((s, b) => s + b.count * b.lengthMm, 0)).toBeCloseTo(2000, 6)
    expect(list.wallAreaM2).toBeCloseTo((2000 * 40) / 1e6, 9)
    expect(list.boards[0]).toMatchObject({ lengthMm: 436, widthMm: 336 })
  })
})

const DISC: PieceDocument = {
  castwright: 1,
  name: 'disc',
  outline: { circle: 290 },
  mould: { shape: { circle: 300 } },
  pours: [{ id: 'one', resin: 'deep', depth: 20 }]
}

describe('the mould of a piece', () => {
  it('that is round is listed round on the page and on the run sheet', () => {
    const { plan, work } = planOf(DISC)
    const sheet = mouldDetail(plan, work)
    expect(sheet.table!.rows.map(r => r[0])).toEqual(['Base', 'Ring or bent strip', 'Bearer'])
    expect(sheet.table!.rows[1]![2]).toBe('942.5')
    expect(sheet.does.join(' ')).toMatch(/bent strip follows the curve/)
    expect(sheet.does.join(' ')).not.toMatch(/along x run past|Fix the walls/)
    const at = { mould: [] } as unknown as Parameters<typeof mouldPart>[2]
    const page = mouldPart(plan, work, at)!.text
    expect(page).toContain('942.5')
    expect(page).not.toMatch(/Walls fixed|NaN|null/)
    const line = plan.buy.find(l => l.item === 'bending-strip')!
    expect(line.need).toBeCloseTo(0.95, 9)
    expect(plan.buy.filter(l => l.group === 'mould' && l.unit === 'm²').map(l => l.item)).toEqual([
      'melamine-particleboard-18',
      'release-tape'
    ])
  })

  it('says that short walls are fixed at the ends', () => {
    const { plan, work } = planOf({ ...DISC, outline: { rectangle: [200, 100] }, mould: {} })
    expect(plan.mould.wallFixings).toBeGreaterThan(248)
    const at = { mould: [] } as unknown as Parameters<typeof mouldPart>[2]
    expect(mouldPart(plan, work, at)!.text).toMatch(/Walls fixed<\/dt><dd>at the ends/)
  })

  it('takes what the formers stand in off the water, each height by itself', () => {
    const water = (formers: object[]) =>
      worked({
        piece: {
          ...DISC,
          outline: { rectangle: [200, 100] },
          mould: { margin: 0, formers } as PieceDocument['mould'],
          pours: [{ id: 'one', resin: 'deep', depth: 20 }]
        }
      }).mould
    const free = water([])
    expect(free.waterG).toBeCloseTo((20_000 * free.liquidLevel * 998.2) / 1e6, 6)
    const square = (side: number, from: number, to?: number) => ({
      shape: { rectangle: [side, side] },
      from,
      ...(to === undefined ? {} : { to })
    })
    const one = water([square(40, 0)])
    expect(one.waterG).toBeCloseTo(((20_000 - 1600) * one.liquidLevel * 998.2) / 1e6, 6)
    // One within the other counts once where both stand: 5 to 10 mm.
    const two = water([square(40, 5, 15), square(20, 0, 10)])
    const ml = 20 * two.liquidLevel - 1.6 * 10 - 0.4 * 5
    expect(two.waterG).toBeCloseTo(ml * 0.9982, 6)
  })
})
