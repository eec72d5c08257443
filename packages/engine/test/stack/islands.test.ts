import { describe, expect, it } from 'vitest'
import { shiftEntry } from '../../src/draw/entry-shift.ts'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { checkPiece } from '../../src/piece/read.ts'
import { area } from '../../src/shape/measure.ts'
import { PLAIN } from '../findings/harness.ts'
import { stackOf } from './build.ts'

type Cut = NonNullable<PieceDocument['cuts']>[number]

const pocket: Cut = {
  id: 'pocket',
  face: 'back',
  shape: { rectangle: [60, 40], at: [100, 0] },
  islands: [
    { rectangle: [20, 10], at: [90, 0] },
    { rectangle: [4, 4], at: [120, 10] }
  ],
  depth: 6
}
const of = (cut: Cut): PieceDocument => ({ ...PLAIN, cuts: [cut] })

describe('islands of a cut', () => {
  it('are not cut', () => {
    expect(area(stackOf(of(pocket)).geometry.cutRegions[0]!)).toBeCloseTo(60 * 40 - 200 - 16, 6)
  })

  it('move along with the cut when it is copied elsewhere', () => {
    const moved = structuredClone(pocket)
    shiftEntry(moved as unknown as Record<string, unknown>, -10, 5)
    expect(moved.islands!.map(s => s.at)).toEqual([
      [80, 5],
      [110, 15]
    ])
  })

  it('that leave nothing to cut, or stand without a shape, are refused', () => {
    expect(() => stackOf(of({ ...pocket, islands: [{ rectangle: [80, 60], at: [100, 0] }] }))).toThrow(
      /islands.*nothing to cut/
    )
    const { shape: _shape, ...line } = pocket
    expect(() =>
      checkPiece(
        of({
          ...line,
          along: {
            points: [
              [90, 0],
              [110, 0]
            ]
          },
          width: 6
        }),
        'piece'
      )
    ).toThrow(/islands only in a cut with a `shape`/)
    expect(() => checkPiece(of({ ...pocket, tabs: true, skin: 0.5 }), 'piece')).toThrow(
      /one of the two: tabs, or a skin/
    )
  })
})
