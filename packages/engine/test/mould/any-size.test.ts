import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { worked } from '../cases/asked.ts'

// A piece that the reader takes gets a mould, however odd its size: ranges of models must not reach the maker.

const mould = (size: [number, number], depth: number, more: object = {}, pours = 1) => {
  const [x, y] = [size[0] / 2, size[1] / 2]
  const piece: PieceDocument = {
    castwright: 1,
    name: 'odd',
    outline: {
      polygon: [
        [-x, -y],
        [x, -y],
        [x, y],
        [-x, y]
      ]
    },
    mould: { margin: 0, ...more },
    pours: Array.from({ length: pours }, (_, i) => ({ id: `p${i}`, resin: 'deep', depth }))
  }
  return worked({ piece }).mould
}

describe('moulds of any size', () => {
  it('a hairline between two boards', () => {
    const plan = mould([600, 0.5], 12, { corners: [0, 1, 1, 0] })
    expect(plan.innerWidth).toBeCloseTo(0.5, 9)
    expect(plan.cutList.boards[0]!.widthMm).toBeCloseTo(0.5 + 36, 9)
    expect(plan.waterG).toBeCloseTo((600 * 0.5 * plan.liquidLevel * 998.2) / 1e6, 6)
  })

  it('a counter of 15 m', () => {
    const plan = mould([15_000, 600], 10, { corners: [0, 2, 2, 0] })
    expect(plan.bearers).toBeGreaterThan(100)
    expect(plan.cutList.boards[1]!.lengthMm).toBeCloseTo(15_036, 6)
  })

  it('a pillar of five pours of 400', () => {
    const plan = mould([200, 200], 400, {}, 5)
    expect(plan.leastWall).toBeCloseTo(plan.liquidLevel + 10, 6)
    expect(plan.liquidLevel).toBeGreaterThan(2000)
  })

  it('walls that are not there', () => {
    const plan = mould([200, 200], 10, { wall: 0 })
    expect(plan.freeboard).toBeCloseTo(-plan.liquidLevel, 9)
  })

  it('a speck', () => {
    expect(mould([1, 1], 1).areaMm2).toBeCloseTo(1, 9)
  })
})
