import type { PieceDocument } from '../../../src/piece/piece-schema.ts'
import type { Pair } from '../harness.ts'
import { PLAIN } from '../harness.ts'

type Pour = PieceDocument['pours'][number]
type Marking = NonNullable<PieceDocument['markings']>[number]

const tinted = (pigment: string, percent: number, more: Partial<Pour> = {}): PieceDocument => ({
  ...PLAIN,
  pours: [{ id: 'colour', resin: 'deep', depth: 20, tint: [{ pigment, percent }], ...more } as Pour]
})
const marbled = (one: string, other: string): PieceDocument => ({
  ...PLAIN,
  pours: [
    {
      id: 'swirl',
      resin: 'deep',
      depth: 20,
      marbling: [
        { share: 50, tint: [{ pigment: one, percent: 2 }] },
        { share: 50, tint: [{ pigment: other, percent: 2 }] }
      ]
    }
  ]
})
const scale = (more: Partial<Marking> = {}): PieceDocument => ({
  ...PLAIN,
  markings: [
    {
      id: 'scale',
      linear: { from: [80, -60], to: [80, 60], length: 8, at: [0, 0.5, 1] },
      sandedAfter: 0.3,
      filled: [{ pigment: 'black-paste', percent: 3 }],
      ...more
    } as Marking
  ]
})
const pocketed = (depth: number): PieceDocument => ({
  ...PLAIN,
  timbers: PLAIN.timbers!.map(t => ({ ...t, thickness: 30 })),
  pours: [
    { id: 'green', resin: 'deep', depth: 18, tint: [{ pigment: 'green-paste', percent: 2 }], opaque: true },
    { id: 'clear', resin: 'deep', height: 30 }
  ],
  cuts: [{ id: 'bay', face: 'back', shape: { rectangle: [60, 60] }, depth, for: 'clock' }],
  hardware: [{ id: 'clock', kind: 'quartz-movement', in: 'bay', depth: 16, thread: 20, fitting: 'loose' }]
})

// A magnet, 3 mm thick, on the floor of a green layer that is to hide it.
const magnetIn = (depth: number): PieceDocument => ({
  ...PLAIN,
  pours: [
    { id: 'green', resin: 'deep', depth, tint: [{ pigment: 'green-paste', percent: 2 }], opaque: true },
    { id: 'clear', resin: 'deep', height: 20 }
  ],
  hardware: [{ id: 'magnet', kind: 'magnet-disc', at: [0, 0], castIn: 'green' }]
})

const flooded = (percent: number): PieceDocument => ({
  ...PLAIN,
  pours: [
    ...PLAIN.pours,
    {
      id: 'coat',
      kind: 'flood',
      resin: 'thin',
      depth: 3,
      tint: [{ pigment: 'black-paste', percent }],
      opaque: true
    }
  ]
})

export const pairs: readonly Pair[] = [
  {
    id: 'opaque-cover',
    about: 'a bay as deep as its movement under a green layer: the layer grows, the bay stays',
    sound: { piece: pocketed(12) },
    edit: { op: 'replace', path: '/cuts/0/depth', value: '16.5 mm' },
    severity: 'stop'
  },
  {
    id: 'opaque-cover',
    about: 'a black flood over ash, that the document says hides it',
    sound: { piece: flooded(3) },
    edit: { op: 'replace', path: '/pours/1/tint/0/percent', value: 0.05 },
    severity: 'stop'
  },
  {
    id: 'opaque-cover',
    about: 'a magnet in a green layer that is to hide it, and is as deep as the magnet and a little more',
    sound: { piece: magnetIn(12) },
    edit: { op: 'replace', path: '/pours/0/depth', value: 4 },
    severity: 'stop',
    noFix: 'where the part lies is the maker’s to say'
  },
  {
    id: 'tint-over-cap',
    about: 'twice as much white paste as the mix takes',
    sound: { piece: tinted('white-paste', 5) },
    edit: { op: 'replace', path: '/pours/0/tint/0/percent', value: 12 },
    severity: 'caution'
  },
  {
    id: 'tint-over-cap',
    about: 'the filling of a scale with too much black',
    sound: { piece: scale() },
    edit: { op: 'replace', path: '/markings/0/filled/0/percent', value: '9 %' },
    severity: 'caution'
  },
  {
    id: 'tint-family',
    about: 'poster paint in epoxy',
    sound: { piece: tinted('white-paste', 3) },
    edit: { op: 'replace', path: '/pours/0/tint/0/pigment', value: 'water-paint' },
    severity: 'stop',
    noFix: 'which colour is taken instead is the maker’s to say'
  },
  {
    id: 'tint-family',
    about: 'a paste for polyester in epoxy',
    sound: { piece: tinted('white-paste', 3) },
    edit: { op: 'replace', path: '/pours/0/tint/0/pigment', value: 'white-paste-polyester' },
    severity: 'caution',
    noFix: 'which colour is taken instead is the maker’s to say'
  },
  {
    id: 'tint-strength',
    about: 'an opaque pour with a pearl too thin to hide',
    sound: { piece: tinted('green-pearl', 2, { opaque: true }) },
    edit: { op: 'replace', path: '/pours/0/tint/0/percent', value: 0.1 },
    severity: 'caution'
  },
  {
    id: 'tint-strength',
    about: 'a white that is to hide from 3 mm, half as strong',
    sound: { piece: tinted('white-paste', 2, { hidesFrom: 3 }) },
    edit: { op: 'replace', path: '/pours/0/tint/0/percent', value: '1 %' },
    severity: 'caution'
  },
  {
    id: 'tint-strength',
    about: 'a pour that is to hide from less than any white does within its cap',
    sound: { piece: tinted('white-paste', 2, { hidesFrom: 3 }) },
    edit: { op: 'replace', path: '/pours/0/hidesFrom', value: 0.3 },
    severity: 'caution',
    noFix: 'so much of it is over its cap'
  },
  {
    id: 'tint-strength',
    about: 'a blue that is to let half of the light through, four times as strong',
    sound: { piece: tinted('blue-tint', 0.0068, { lightThrough: 72 }) },
    edit: { op: 'replace', path: '/pours/0/lightThrough', value: 20 },
    severity: 'caution'
  },
  {
    id: 'turns-mud',
    about: 'red and green poured into each other',
    sound: { piece: marbled('red-paste', 'orange-paste') },
    edit: { op: 'replace', path: '/pours/0/marbling/1/tint/0/pigment', value: 'green-paste' },
    severity: 'caution',
    noFix: 'which colours run together is the maker’s to say'
  },
  {
    id: 'marking-faint',
    about: 'a yellow filling in ash',
    sound: { piece: scale() },
    edit: { op: 'replace', path: '/markings/0/filled/0/pigment', value: 'yellow-paste' },
    severity: 'caution'
  },
  {
    id: 'marking-faint',
    about: 'lines of a fifth of a millimetre',
    sound: { piece: scale() },
    edit: { op: 'add', path: '/markings/0/width', value: 0.2 },
    severity: 'note'
  }
]
