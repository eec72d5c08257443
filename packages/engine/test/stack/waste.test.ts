import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { area } from '../../src/shape/measure.ts'
import { hasWaste, wasteReachMm, wasteRound } from '../../src/stack/waste.ts'
import { plainPiece, stackOf } from './build.ts'

function wasteOf(document: PieceDocument): { mm2: number; reach: number; has: boolean } {
  const { piece, geometry } = stackOf(document)
  return {
    mm2: area(wasteRound(piece, geometry)),
    reach: wasteReachMm(piece, geometry),
    has: hasWaste(piece, geometry)
  }
}

describe('the waste round the outline', () => {
  it('is none where the mould is the outline', () => {
    expect(wasteOf(plainPiece())).toEqual({ mm2: 0, reach: 0, has: false })
  })

  it('is the margin of the mould: its frame, its reach at the corners by Pythagoras', () => {
    const { mm2, reach } = wasteOf(plainPiece({ mould: { margin: 6 } }))
    expect(mm2).toBeCloseTo(312 * 212 - 300 * 200, 3)
    expect(reach).toBeCloseTo(Math.hypot(6, 6), 6)
  })

  it('is what a square mould holds beside a round outline', () => {
    const { mm2 } = wasteOf(plainPiece({ outline: { circle: 200 } }))
    // The circle is flattened to 0.01 mm: its area falls short by less than that along its edge.
    expect(Math.abs(mm2 - (200 ** 2 - Math.PI * 100 ** 2))).toBeLessThan(0.01 * Math.PI * 200)
  })

  it('counts ears of the mould', () => {
    const ear = { rectangle: [40, 30] as [number, number], at: [165, 0] as [number, number] }
    const { mm2, reach } = wasteOf(plainPiece({ mould: { margin: 0, ears: [ear] } }))
    expect(mm2).toBeCloseTo(35 * 30, 3)
    expect(reach).toBeCloseTo(35, 6)
  })

  it('is none once a cut of kind outline, or one right through it all, takes it off', () => {
    const rim = { difference: [{ rectangle: [320, 220] }, { rectangle: [300, 200] }] } as never
    const half = { rectangle: [320, 20], at: [0, 105] } as never
    const cut = (more: object) =>
      wasteOf(plainPiece({ mould: { margin: 5 }, cuts: [{ face: 'front', ...more } as never] })).has
    expect(cut({ kind: 'outline', shape: rim, through: true })).toBe(false)
    expect(cut({ shape: rim, through: true })).toBe(false)
    expect(cut({ shape: rim, depth: 5 })).toBe(true)
    expect(cut({ shape: half, through: true })).toBe(true)
  })

  it('of boards that are not cast is what they have outside of the outline', () => {
    const boards = (size: [number, number]): PieceDocument =>
      plainPiece({
        mould: { margin: 8 },
        timbers: [{ id: 'board', species: 'maple-sugar', outline: { rectangle: size }, thickness: 24 }],
        pours: [{ id: 'inlay', resin: 'medium', kind: 'inlay', into: ['line'], fill: 'cut' }],
        cuts: [{ id: 'line', face: 'front', shape: { circle: 30 }, depth: 8 }]
      })
    expect(wasteOf(boards([300, 200])).has).toBe(false)
    expect(wasteOf(boards([310, 200])).mm2).toBeCloseTo(10 * 200, 3)
  })
})
