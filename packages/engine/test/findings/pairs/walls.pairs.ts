import type { PieceDocument } from '../../../src/piece/piece-schema.ts'
import type { Pair } from '../harness.ts'
import { PLAIN } from '../harness.ts'

type Cut = NonNullable<PieceDocument['cuts']>[number]

const pocket: Cut = { id: 'tray', face: 'back', shape: { rectangle: [30, 30], at: [-110, 0] }, depth: 6 }
const beside = (more: Partial<Cut>): Pair['sound'] => ({
  piece: {
    ...PLAIN,
    cuts: [pocket, { ...pocket, id: 'dish', shape: { rectangle: [30, 30], at: [-76, 0] }, ...more }]
  }
})

export const pairs: readonly Pair[] = [
  {
    id: 'wall-beside',
    about: 'two pockets with half a millimetre of wall between them',
    sound: beside({}),
    edit: { op: 'replace', path: '/cuts/1/shape/at', value: [-79.5, 0] },
    severity: 'caution'
  },
  {
    id: 'wall-beside',
    about: 'a ridge of 2 mm between shallow recesses, cut deep on both sides',
    sound: {
      piece: {
        ...PLAIN,
        cuts: [pocket, { ...pocket, id: 'dish', shape: { rectangle: [30, 30], at: [-78, 0] }, depth: 1.5 }]
      }
    },
    edit: { op: 'replace', path: '/cuts/1/depth', value: 6 },
    severity: 'caution'
  },
  {
    id: 'island-outside',
    about: 'an island placed as if counted from the middle of its pocket',
    sound: { piece: { ...PLAIN, cuts: [{ ...pocket, islands: [{ rectangle: [8, 8], at: [-110, 0] }] }] } },
    edit: { op: 'replace', path: '/cuts/0/islands/0/at', value: [0, 0] },
    severity: 'caution'
  }
]
