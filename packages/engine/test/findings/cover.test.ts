import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { checkPiece, checkShop } from '../../src/piece/read.ts'
import type { CutCover } from '../../src/stack/cover.ts'
import { workOf } from '../../src/work.ts'
import { PLAIN } from './harness.ts'

type Cuts = NonNullable<PieceDocument['cuts']>

// In the timber on the right of the plain panel, finished 18 mm thick.
const covers = (...cuts: Cuts): readonly CutCover[] =>
  workOf({
    piece: checkPiece({ ...PLAIN, cuts }, 'piece'),
    shop: checkShop({ castwright: 1 }, 'shop').value,
    effort: 'preview'
  }).covers
const at = (side: number, y = 0) => ({
  rectangle: [side, side] as [number, number],
  at: [100, y] as [number, number]
})
const pocket = { id: 'pocket', face: 'back', shape: at(40), depth: 10 } as Cuts[number]
const bore = { id: 'bore', kind: 'bore', face: 'front', shape: { circle: 8, at: [100, 0] } } as Cuts[number]

describe('what a cut leaves', () => {
  it('is the finished thickness less its depth', () => {
    expect(covers(pocket)[0]!.floor).toMatchObject({ met: null })
    expect(covers(pocket)[0]!.floor!.mm).toBeCloseTo(18 - 10, 9)
    expect(covers(pocket)[0]!.left!.mm).toBeCloseTo(8, 9)
  })

  it('is negative by as much as it comes out, and then nothing is left', () => {
    const [cover] = covers({ ...pocket, depth: 19.5 })
    expect(cover!.floor!.mm).toBeCloseTo(-1.5, 9)
    expect(cover!.left!.mm).toBe(0)
  })

  it('leaves a bore right through out: that is meant to come out', () => {
    const both = covers(pocket, { ...bore, through: true })
    expect(both.find(c => c.cut === 0)!.floor!.mm).toBeCloseTo(8, 9)
    expect(both.find(c => c.cut === 1)!.floor).toBeNull()
    expect(both.find(c => c.cut === 1)!.left!.mm).toBe(0)
  })

  it('counts a blind bore from the other face, and names it', () => {
    const both = covers(pocket, { ...bore, depth: 6 })
    for (const cut of [0, 1]) {
      const { floor } = both.find(c => c.cut === cut)!
      expect(floor!.mm).toBeCloseTo(18 - 10 - 6, 9)
      expect(floor!.met).toBe(1 - cut)
    }
  })

  it('does not take a deeper pocket of the same face for a hole in a shallow one', () => {
    const both = covers(pocket, { ...pocket, id: 'step', shape: at(60), depth: 4 })
    expect(both.map(c => c.floor!.mm).sort((a, b) => a - b)).toEqual([
      expect.closeTo(8, 9),
      expect.closeTo(14, 9)
    ])
  })

  it('looks at the edges of a wide flat groove, not at its middle alone', () => {
    const along = {
      points: [
        [70, 0],
        [130, 0]
      ] as [number, number][]
    }
    const groove: Cuts[number] = { id: 'groove', kind: 'groove', face: 'back', along, width: 20, depth: 10 }
    // A bore from the front beside the middle line, within the groove.
    const aside = { ...bore, shape: { circle: 4, at: [100, 9] as [number, number] }, depth: 5 }
    const both = covers(groove, aside)
    expect(both.find(c => c.cut === 0)!.floor!.mm).toBeCloseTo(3, 9)
    expect(both.find(c => c.cut === 1)!.floor!.mm).toBeCloseTo(3, 9)
  })

  it('says what it goes through: material of the face, and where the floor lies', () => {
    const layers: PieceDocument = {
      ...PLAIN,
      timbers: [],
      pours: [
        { id: 'a', resin: 'deep', depth: 6 },
        { id: 'b', resin: 'deep', depth: 6 },
        { id: 'c', resin: 'deep', depth: 8 }
      ],
      cuts: [{ ...pocket, depth: 8 }]
    }
    const work = workOf({
      piece: checkPiece(layers, 'piece'),
      shop: checkShop({ castwright: 1 }, 'shop').value,
      effort: 'preview'
    })
    // From the flattened back at 1.0 up to 9.0: through a (to 6.0) and 3.0 into b (to 12.0).
    const [way] = work.covers[0]!.ways
    expect(way!.passed.map(p => p.material)).toEqual([{ kind: 'pour', index: 0 }])
    expect(way!.into).toEqual({ kind: 'pour', index: 1 })
    expect(way!.mm).toBeCloseTo(3, 9)
    expect(way!.ahead.map(m => m.index)).toEqual([1, 2])
  })
})
