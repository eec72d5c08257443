import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { ids } from './harness.ts'

/** Findings on the mould as a made thing. */
const OF_THE_MOULD = [
  'wall-low',
  'base-sags',
  'out-of-level',
  'mould-gap',
  'water-test',
  'joint-side',
  'divider-unsealed',
  'no-release',
  'mould-softens'
]

/** A board with a mould about it in which nothing is right. */
const board: PieceDocument = {
  castwright: 1,
  name: 'a board with an inlay',
  outline: { rectangle: [300, 200] },
  mould: {
    margin: 2,
    wall: 5,
    moved: true,
    base: 'hdpe-sheet',
    bearers: 900,
    corners: [0, 4, 0, 0],
    joints: 'tape only',
    liner: 'none',
    waterTest: false,
    dams: [
      {
        line: [
          [0, -50],
          [0, 50]
        ],
        sealed: false
      }
    ],
    ears: [{ rectangle: [40, 30], at: [165, 0] }],
    formers: [{ shape: { circle: 10, at: [175, 0] }, released: false }]
  },
  flatten: { back: 1, front: 1 },
  timbers: [
    { id: 'board', species: 'maple-sugar', outline: { rectangle: [300, 200] }, thickness: 24, moisture: 8.5 }
  ],
  pours: [{ id: 'inlay', kind: 'inlay', into: ['line'], resin: 'medium', fill: 'cut' }],
  cuts: [{ id: 'line', face: 'front', shape: { rectangle: [120, 12] }, depth: 8 }],
  finish: { both: { coat: 'hardwax-oil' } }
}

const ofTheMould = (piece: PieceDocument) => ids({ piece }).filter(id => OF_THE_MOULD.includes(id))

describe('findings on the mould', () => {
  it('are none where nothing is cast: no mould is made', () => {
    expect(ofTheMould(board)).toEqual([])
  })

  it('stand again where the order of the document makes one', () => {
    const steps: PieceDocument['steps'] = [
      { do: 'make mould' },
      { do: 'set timber' },
      { do: 'demould' },
      { do: 'cut', what: 'line' },
      { do: 'pour', what: 'inlay' },
      { do: 'coat', face: 'both' },
      { do: 'deliver' }
    ]
    // What asks for resin in it or its heat has nothing to ask of.
    const silent = ['water-test', 'mould-softens']
    expect(ofTheMould({ ...board, steps }).sort()).toEqual(
      OF_THE_MOULD.filter(id => !silent.includes(id)).sort()
    )
  })

  it('stand where something is cast', () => {
    const cast: PieceDocument = {
      ...board,
      pours: [...board.pours, { id: 'round', resin: 'medium', depth: 6 }]
    }
    expect(ofTheMould(cast)).toEqual(
      expect.arrayContaining(['wall-low', 'water-test', 'joint-side', 'no-release'])
    )
  })
})
