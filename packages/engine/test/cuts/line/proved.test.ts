import { expect, it } from 'vitest'
import { machiningOf } from '../../../src/cuts/operation/machining.ts'
import type { PieceDocument } from '../../../src/piece/piece-schema.ts'
import { checkPiece, checkShop } from '../../../src/piece/read.ts'
import { programSet } from '../../../src/programs/program-set.ts'
import { proveSet } from '../../../src/programs/prove-set.ts'
import { workOf } from '../../../src/work.ts'

/** A small board with one of every cut along a line, figures of both kinds, on both faces. */
const piece: PieceDocument = {
  castwright: 1,
  name: 'a board of lines',
  outline: { rectangle: [120, 80] },
  mould: { margin: 6, bearers: 250 },
  flatten: { back: 1, front: 1 },
  timbers: [
    { id: 'board', species: 'ash-white', outline: { rectangle: [126, 86] }, thickness: 20, moisture: 8.5 }
  ],
  pours: [{ id: 'rest', resin: 'deep', fill: 'timber' }],
  cuts: [
    {
      id: 'hang',
      kind: 'keyhole',
      face: 'back',
      along: {
        points: [
          [30, 10],
          [30, 24]
        ]
      },
      width: 5,
      head: 11,
      lip: 4,
      depth: 9
    },
    { id: 'hole', kind: 'bore', face: 'front', shape: { circle: 6.4, at: [-45, 25] }, depth: 9 },
    { id: 'wide', kind: 'counterbore', face: 'front', around: 'hole', shape: { circle: 13 }, depth: 4 },
    {
      id: 'leaf',
      kind: 'inlay',
      face: 'front',
      shape: {
        polygon: [
          [0, -30],
          [24, -30],
          [24, -20],
          [12, -20],
          [12, -8],
          [0, -8]
        ]
      },
      finishedDepth: 4,
      plug: { thickness: 6 }
    },
    {
      id: 'vee',
      kind: 'groove',
      face: 'front',
      along: {
        points: [
          [-50, -30],
          [-30, -30],
          [-30, -10]
        ]
      },
      profile: 'v',
      finishedDepth: 2
    },
    {
      id: 'round',
      kind: 'groove',
      face: 'front',
      along: {
        points: [
          [-20, -30],
          [-10, -15]
        ]
      },
      width: 6,
      profile: 'round',
      finishedDepth: 4
    },
    {
      id: 'slot',
      kind: 'groove',
      face: 'front',
      along: {
        points: [
          [35, -30],
          [50, 5]
        ]
      },
      width: 8,
      finishedDepth: 4
    }
  ],
  markings: [
    {
      id: 'scale',
      linear: { from: [-25, 5], to: [20, 5], length: 6, at: [0, 0.5, 1] },
      width: 1,
      sandedAfter: 0.3,
      numerals: [{ text: '10', at: [-2, 18], height: 8 }]
    },
    {
      id: 'big',
      lines: [
        [
          [20, 22],
          [40, 22]
        ]
      ],
      width: 1,
      figures: 'outline',
      numerals: [{ text: '2R', at: [30, 32], height: 12 }]
    },
    {
      id: 'rear',
      face: 'back',
      lines: [
        [
          [-40, -20],
          [-20, -20]
        ]
      ],
      width: 1,
      numerals: [{ text: '7', at: [-30, -30], height: 8 }]
    }
  ]
}
const cutters = [
  { id: 'key', kind: 'keyhole-cutter', diameter: 11, length: 12, head: 4, neck: 5 },
  { id: 'six', kind: 'flat-end-mill', diameter: 6, length: 25 },
  { id: 'three', kind: 'flat-end-mill', diameter: 3, length: 12 },
  { id: 'vee', kind: 'v-60', diameter: 12, length: 10, tip: 0.1 },
  { id: 'ball', kind: 'ball-nose', diameter: 6, length: 20 },
  { id: 'face', kind: 'surfacing-bit', diameter: 25, length: 6 },
  { id: 'drill', kind: 'drill', diameter: 8, length: 60 }
]

it('every cut along a line, made, written, read back and swept, leaves the board of the stack', () => {
  const work = workOf({
    piece: checkPiece(piece, 'piece'),
    shop: checkShop({ castwright: 1, machine: { x: 800, y: 600 }, cutters }, 'shop').value,
    readings: [],
    files: {},
    effort: 'preview'
  })
  const machining = machiningOf({ ...work, ...work.stack })!
  const set = programSet(machining)
  expect(set.notMade).toEqual([])
  const kinds = new Set(machining.operations.map(o => o.kind))
  for (const kind of ['keyhole', 'bore', 'pocket', 'groove', 'marking', 'figures'] as const)
    expect(kinds.has(kind), kind).toBe(true)
  for (const { programs, proof } of proveSet(set)) {
    const names = programs.map(p => p.file).join(', ')
    expect(
      programs.flatMap(p => p.complaints),
      names
    ).toEqual([])
    expect(proof.reports, names).toEqual([])
    expect(proof.comparison?.cutAway.mostMm ?? 0, names).toBeLessThan(0.1)
    expect(proof.comparison?.left.mostMm ?? 0, names).toBeLessThan(0.2)
  }
})
