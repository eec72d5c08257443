import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type BoardPiece, type Box, type CutList, cutList } from '../../src/mould/cutlist.ts'

const box: Box = {
  innerLengthMm: 600,
  innerWidthMm: 400,
  wallHeightMm: 55,
  baseThicknessMm: 18,
  wallThicknessMm: 16,
  walls: 'on the base',
  runPast: 'along x',
  bearers: 3,
  joints: 'inside'
}
const piece = (list: CutList, name: BoardPiece['name']): BoardPiece => list.boards.find(b => b.name === name)!

const boxes = fc.record({
  innerLengthMm: fc.double({ min: 50, max: 3000, noNaN: true }),
  innerWidthMm: fc.double({ min: 50, max: 1500, noNaN: true }),
  wallHeightMm: fc.double({ min: 10, max: 200, noNaN: true }),
  baseThicknessMm: fc.double({ min: 6, max: 40, noNaN: true }),
  wallThicknessMm: fc.double({ min: 3, max: 40, noNaN: true }),
  walls: fc.constantFrom('on the base' as const, 'beside the base' as const),
  runPast: fc.constantFrom('along x' as const, 'along y' as const),
  bearers: fc.constantFrom(0, 2, 5),
  joints: fc.constantFrom('inside' as const, 'outside' as const)
})

describe('cut list of a box', () => {
  it('with walls on the base, those along x running past', () => {
    const list = cutList(box)
    expect(piece(list, 'base')).toMatchObject({ count: 1, lengthMm: 632, widthMm: 432, thicknessMm: 18 })
    expect(piece(list, 'wall along x')).toMatchObject({
      count: 2,
      lengthMm: 632,
      widthMm: 55,
      thicknessMm: 16
    })
    expect(piece(list, 'wall along y')).toMatchObject({ count: 2, lengthMm: 400, widthMm: 55 })
    expect(list.bearers).toEqual({ count: 3, lengthMm: 432, spacingMm: 316 })
  })

  it('with walls beside the base, those along y running past', () => {
    const list = cutList({ ...box, walls: 'beside the base', runPast: 'along y' })
    expect(piece(list, 'base')).toMatchObject({ lengthMm: 600, widthMm: 400 })
    expect(piece(list, 'wall along x')).toMatchObject({ lengthMm: 600, widthMm: 73 })
    expect(piece(list, 'wall along y')).toMatchObject({ lengthMm: 432, widthMm: 73 })
    expect(list.bearers).toMatchObject({ lengthMm: 400, spacingMm: 300 })
  })

  // Independent: the pieces together are the outer block less the hollow.
  it('has just the volume of the outer block less its inside, whatever stands where', () => {
    fc.assert(
      fc.property(boxes, b => {
        const list = cutList(b)
        const volume = list.boards.reduce(
          (sum, p) => sum + p.count * p.lengthMm * p.widthMm * p.thicknessMm!,
          0
        )
        const outer =
          (b.innerLengthMm + 2 * b.wallThicknessMm) *
          (b.innerWidthMm + 2 * b.wallThicknessMm) *
          (b.wallHeightMm + b.baseThicknessMm)
        const inside = b.innerLengthMm * b.innerWidthMm * b.wallHeightMm
        expect(volume / (outer - inside)).toBeCloseTo(1, 9)
        expect(list.baseAreaM2 + list.wallAreaM2).toBeCloseTo(
          list.boards.reduce((sum, p) => sum + (p.count * p.lengthMm * p.widthMm) / 1e6, 0),
          9
        )
      }),
      { seed: 20260111, numRuns: 200 }
    )
  })

  it('lists every face that resin reaches for release: five inner faces and the rim', () => {
    const list = cutList(box)
    expect(list.tapeAreaM2).toBeCloseTo(0.24 + 2 * (0.6 + 0.4) * 0.055, 12)
    expect(list.releaseAreaM2 - list.tapeAreaM2).toBeCloseTo(0.632 * 0.432 - 0.24, 12)
  })

  it('seals round the foot and up the corners, inside, outside or both', () => {
    const inside = cutList(box).sealantLengthM
    expect(inside).toBeCloseTo(2 * (0.6 + 0.4) + 4 * 0.055, 12)
    const outside = cutList({ ...box, joints: 'outside' }).sealantLengthM
    expect(outside).toBeCloseTo(2 * (0.632 + 0.432) + 4 * 0.055, 12)
    expect(cutList({ ...box, joints: 'inside and outside' }).sealantLengthM).toBeCloseTo(inside + outside, 12)
    expect(cutList({ ...box, joints: 'tape only' }).sealantLengthM).toBe(0)
  })

  it('stands without bearers on a bench, but not on one', () => {
    expect(cutList({ ...box, bearers: 0 }).bearers).toBeNull()
    expect(() => cutList({ ...box, bearers: 1 })).toThrow(/1 bearer carries no base/)
    expect(() => cutList({ ...box, bearers: 2.5 })).toThrow(/whole number/)
  })

  it('refuses sizes that make no box', () => {
    expect(() => cutList({ ...box, innerWidthMm: 0 })).toThrow(/inner width is 0 mm/)
    expect(() => cutList({ ...box, wallHeightMm: Number.NaN })).toThrow(/NaN/)
  })
})
