import type { PieceDocument } from '../../../src/piece/piece-schema.ts'
import type { Pair } from '../harness.ts'
import { PLAIN } from '../harness.ts'

type Cut = NonNullable<PieceDocument['cuts']>[number]
type Marking = NonNullable<PieceDocument['markings']>[number]

const inlay = (gap: number): PieceDocument => {
  const cut: Cut = {
    id: 'leaf',
    kind: 'inlay',
    face: 'front',
    shape: { rectangle: [40, 24], corner: 4, at: [100, 0] },
    finishedDepth: 6,
    plug: { gap, thickness: 8 }
  }
  return { ...PLAIN, cuts: [cut] }
}
const scale = (more: Partial<Marking>): PieceDocument => ({
  ...PLAIN,
  markings: [
    {
      id: 'scale',
      linear: { from: [60, 40], to: [140, 40], length: 8, at: [0, 0.5, 1] },
      width: 1.4,
      filled: [{ pigment: 'black-paste', percent: 4 }],
      ...more
    }
  ]
})
const groove = (depth: number): PieceDocument => ({
  ...PLAIN,
  cuts: [
    {
      id: 'line',
      kind: 'groove',
      face: 'front',
      along: {
        points: [
          [70, -60],
          [130, -60]
        ]
      },
      profile: 'v',
      finishedDepth: depth
    }
  ]
})
const shop = {
  castwright: 1,
  machine: { x: 800, y: 600 },
  cutters: [{ id: 'v', kind: 'v-60', diameter: 6, length: 5, angle: 60 }]
} as const

export const pairs: readonly Pair[] = [
  {
    id: 'glue-trapped',
    about: 'a plug made to close its pocket to 0.05 mm all round',
    sound: { piece: inlay(0.1) },
    edit: { op: 'replace', path: '/cuts/0/plug/gap', value: 0.05 },
    severity: 'caution'
  },
  {
    id: 'figures-crowd',
    about: 'figures of a scale made 3 mm high',
    sound: { piece: scale({ numerals: [{ text: '86', at: [100, 60], height: 8 }] }) },
    edit: { op: 'replace', path: '/markings/0/numerals/0/height', value: 3 },
    severity: 'caution'
  },
  {
    id: 'line-over-cutter',
    about: 'a V groove cut deeper than the V is wide',
    sound: { piece: groove(3), shop: { ...shop, cutters: [...shop.cutters] } },
    edit: { op: 'replace', path: '/cuts/0/finishedDepth', value: 6 },
    severity: 'caution'
  },
  {
    id: 'line-over-cutter',
    about: 'a scale of another angle than the V of the shop',
    sound: { piece: scale({}), shop: { ...shop, cutters: [...shop.cutters] } },
    edit: { op: 'add', path: '/markings/0/angle', value: 45 },
    severity: 'caution'
  }
]
