import { expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import type { Given } from '../findings/harness.ts'
import { mended, PLAIN } from '../findings/harness.ts'
import { cutter } from '../proving/program.ts'
import { slab, swept } from '../proving/sweep/slab.ts'
import { asked, theOne, worked } from './asked.ts'

// Round coasters, inlaid, turned in their round seat between two cuts.

const coaster: PieceDocument = {
  ...PLAIN,
  outline: { circle: 100 },
  mould: { margin: 4 },
  timbers: [],
  pours: [{ id: 'clear', resin: 'deep', depth: 14 }],
  cuts: [
    { id: 'leaf', face: 'front', shape: { circle: 40, at: [12, 0] }, finishedDepth: 3 },
    { id: 'foot', face: 'back', shape: { circle: 60 }, finishedDepth: 2 }
  ]
}
const given: Given = { piece: coaster, shop: { castwright: 1, machine: { x: 400, y: 300, error: 0.02 } } }

it('C79 a round piece in a round seat: nothing ties its two cuts, and ears that lock it are offered', () => {
  const found = theOne(given, 'pins-none')
  expect(found.severity).toBe('caution')
  const locked = mended(given, found.fix!)
  expect(asked(locked, 'pins-none')).toEqual([])
  // Two pins, apart by more than the piece is wide: it cannot turn about one of them.
  const { pins } = worked(locked).pins
  expect(pins.length).toBe(2)
})

it('C79 two bits set 0.1 mm apart in height move the wall by 0.1·tan(half angle)', () => {
  // As told: 0.03 mm at 30 degrees, 0.06 at 60.
  const wide = (angleDeg: number, deep: number) => {
    const block = slab(0.05, 40, 16, 10)
    const v = cutter({ form: 'v', angleDeg, diameterMm: 6, tipMm: 0.2, fluteMm: 20 })
    const turn = 0.05
    swept(block, v, [
      [-30, -30 * turn, -deep],
      [30, 30 * turn, -deep]
    ])
    let open = 0
    for (let j = 0; j < block.ny; j++)
      for (let i = 0; i < block.nx; i++) {
        if (Math.abs(block.xOf(i)) > 15) continue
        block.ensure(i, j, i, j)
        if (block.top[j * block.nx + i]! < -1e-3) open++
      }
    return (open * 0.05 ** 2 * Math.cos(Math.atan(turn))) / 30
  }
  for (const [angle, told] of [
    [30, 0.03],
    [60, 0.06]
  ] as const) {
    // Ten times the error, so that the size of the cells does not blur it.
    const moved = (wide(angle, 3) - wide(angle, 2)) / 2 / 10
    expect(moved, `${angle} degrees`).toBeCloseTo(0.1 * Math.tan((angle * Math.PI) / 360), 3)
    expect(Math.round(moved * 100) / 100).toBe(told)
  }
})
