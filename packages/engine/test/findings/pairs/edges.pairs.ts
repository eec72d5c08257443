import type { PieceDocument } from '../../../src/piece/piece-schema.ts'
import type { Pair } from '../harness.ts'
import { PLAIN } from '../harness.ts'

const piece: PieceDocument = {
  ...PLAIN,
  cuts: [{ id: 'dish', face: 'front', shape: { rectangle: [40, 40], corner: 4, at: [100, 0] }, depth: 4 }]
}
const shop = { castwright: 1 as const, machine: { x: 800, y: 600 } }
const edge = (side: string, measured: number[][], more: object = {}) => ({
  id: `edge-${side}-01`,
  at: '2026-11-28T09:00Z',
  kind: 'edge',
  face: 'front',
  side,
  measured,
  radius: 3,
  ...more
})
// The casting is 312 x 212 about the zero: touched true with a tip of 6 mm.
const near = edge('near', [
  [-120, -109],
  [120, -109]
])
const left = edge('left', [
  [-159, -60],
  [-159, 60]
])

export const pairs: readonly Pair[] = [
  {
    id: 'lies-unsure',
    about: 'an edge read 2 mm off at one end, against the edge square to it',
    sound: { piece, shop, readings: [near, left] },
    on: 'readings',
    edit: { op: 'replace', path: '/0/measured/1/1', value: -107 },
    severity: 'caution',
    noFix: 'what was touched is touched again'
  },
  {
    id: 'lies-unsure',
    about: 'two edges of one direction: the piece slides along them',
    sound: { piece, shop, readings: [near, left] },
    on: 'readings',
    edit: {
      op: 'replace',
      path: '/1',
      value: edge('far', [
        [-120, 109],
        [120, 109]
      ])
    },
    severity: 'caution',
    noFix: 'another edge is touched'
  },
  {
    id: 'lies-unsure',
    about: 'an edge where the piece has none',
    sound: { piece, shop, readings: [near, left] },
    on: 'readings',
    edit: {
      op: 'add',
      path: '/2',
      value: edge('far', [[0, 0]], {
        side: undefined,
        along: [
          [-20, 10],
          [20, 10]
        ]
      })
    },
    severity: 'caution',
    noFix: 'the edge is named right'
  }
]
