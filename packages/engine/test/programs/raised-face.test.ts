import { describe, expect, test } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { checkPiece, checkShop } from '../../src/piece/read.ts'
import { proveSet } from '../../src/programs/prove-set.ts'
import { workOf } from '../../src/work.ts'
import { SHOP } from './machine-piece.ts'
import { setIn } from './made.ts'

/** A board 120 × 80 × 20, a flood of 2 mm over its flattened front, then a pocket 5 deep. Invented. */
const board = (flood: boolean): PieceDocument => ({
  castwright: 1,
  name: 'Flooded board (invented)',
  outline: { rectangle: [120, 80] },
  mould: { margin: 0 },
  flatten: { back: 0, front: 1 },
  timbers: [{ id: 'board', species: 'maple-sugar', outline: { rectangle: [120, 80] }, thickness: 20 }],
  pours: flood
    ? [{ id: 'flood', kind: 'flood', face: 'front', resin: 'medium', depth: 2 }]
    : [{ id: 'seal', kind: 'seal', resin: 'thin', depth: 0.3 }],
  cuts: [{ id: 'pocket', face: 'front', shape: { rectangle: [40, 30], corner: 4 }, depth: 5 }]
})

describe('a cut in a face that resin was poured over since it was flattened', () => {
  const set = setIn(board(true))
  const pocket = set.programs.find(p => p.made[0]!.operation.kind === 'pocket')!
  // Heights count from the flattened face: the flood stands 2 above it, the pocket goes to 3 under it.
  test('is made from the top of the flood, looks at its height there and crosses above it', () => {
    const { job } = pocket.made[0]!.operation
    expect(job.topMm).toBeCloseTo(2, 6)
    expect(job.floorMm).toBeCloseTo(-3, 6)
    expect(pocket.input.checkAt.topMm).toBeCloseTo(2, 6)
    expect(pocket.input.clearMm).toBeGreaterThan(2)
    expect(pocket.input.notes.join(' ')).toMatch(/the face stands 2(\.0*)? mm above the zero of heights/)
  })
  test('proves clean', () => {
    for (const { proof } of proveSet(set)) expect(proof.reports).toEqual([])
  })
  test('says nothing of it where nothing was poured over', () => {
    const notes = setIn(board(false)).programs.flatMap(p => p.input.notes)
    expect(notes.join(' ')).not.toContain('above the zero of heights')
  })
})

describe('a path that the machine does not travel', () => {
  // The casting is as long as the travel: the surfacing cutter has to run out past both of its ends.
  const short = { ...SHOP, machine: { ...SHOP.machine!, x: 121, y: 100 } }
  test('is not made a program of: the flattening that has to run past the ends', () => {
    const set = setIn(board(false), short)
    expect(set.programs.some(p => p.made[0]!.operation.kind === 'flatten')).toBe(false)
    const says = set.notMade.map(n => `${n.name}: ${n.says}`).join('\n')
    expect(says).toMatch(
      /flatten the front: Its path goes [\d.]+ mm farther along [xy] than the machine travels/
    )
  })
  test('while a cut within it is', () => {
    const set = setIn(board(false), short)
    expect(set.programs.map(p => p.made[0]!.operation.kind)).toContain('pocket')
    for (const { proof } of proveSet(set))
      expect(proof.reports.map(r => r.kind)).not.toContain('outside the machine')
  })
})

test('a piece of neither timber nor a pour into a mould is refused: nothing stands that a program could cut', () => {
  const { timbers: _, ...nothing } = board(true)
  const input = { piece: checkPiece(nothing, 'piece'), shop: checkShop(SHOP, 'shop').value }
  expect(() => workOf(input)).toThrow(/no timber, and no pour into a mould/)
})
