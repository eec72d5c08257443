import type { PieceDocument } from '../../../src/piece/piece-schema.ts'
import type { Pair } from '../harness.ts'
import { PLAIN } from '../harness.ts'

type Cuts = NonNullable<PieceDocument['cuts']>
type Stones = NonNullable<PieceDocument['pours'][number]['stones']>

const cut = (...cuts: Cuts): PieceDocument => ({ ...PLAIN, cuts })
// In the timber on the right, finished 18 mm thick.
const pocket = (depth: number, more: object = {}): Cuts[number] => ({
  id: 'pocket',
  face: 'back',
  shape: { rectangle: [40, 40], at: [100, 0] },
  depth,
  ...more
})
const layers: PieceDocument = {
  ...PLAIN,
  pours: [
    { id: 'white', resin: 'deep', depth: 10, tint: [{ pigment: 'white-paste', percent: 3 }] },
    { id: 'clear', resin: 'deep', height: 20 }
  ],
  cuts: [{ id: 'channel', face: 'back', shape: { rectangle: [40, 12] }, depth: 4 }]
}
const stones = (...list: Stones): PieceDocument => ({
  ...PLAIN,
  pours: [{ id: 'clear', resin: 'deep', depth: 20, stones: list }]
})
const zone = (kind: string, more: object = {}): Stones[number] => ({
  kind,
  zone: { rectangle: [60, 60] },
  from: 8,
  to: 15,
  ...more
})
const overStones = (kind: string): PieceDocument => ({
  ...stones(zone(kind)),
  cuts: [{ id: 'channel', face: 'back', shape: { rectangle: [40, 12] }, depth: 5 }]
})
const scale = (sandedAfter: number) => [
  { id: 'scale', linear: { from: [-40, 0], to: [40, 0], length: 8, at: [0, 1] }, sandedAfter, filled: [] }
]

export const pairs: readonly Pair[] = [
  {
    id: 'cut-through-layer',
    about: 'a channel from the back 2 mm beyond a white pour, into clear resin',
    sound: { piece: layers },
    edit: { op: 'replace', path: '/cuts/0/depth', value: '11 mm' },
    severity: 'stop'
  },
  {
    id: 'cut-through-layer',
    about: 'a pocket through the timber into the clear coat over it',
    sound: {
      piece: {
        ...cut(pocket(10)),
        pours: [...PLAIN.pours, { id: 'coat', kind: 'flood', resin: 'thin', depth: 3 }]
      }
    },
    edit: { op: 'replace', path: '/cuts/0/depth', value: 19 },
    severity: 'stop'
  },
  {
    id: 'cut-through-layer',
    about: 'a pocket moved from the timber into clear resin',
    sound: { piece: cut(pocket(10)) },
    edit: { op: 'replace', path: '/cuts/0/shape/at', value: [0, 0] },
    severity: 'note',
    noFix: 'whether it may be seen is the maker’s to say'
  },
  {
    id: 'cut-breaks-out',
    about: 'a pocket 19 mm deep in 18 mm',
    sound: { piece: cut(pocket(10)) },
    edit: { op: 'replace', path: '/cuts/0/depth', value: 19 },
    severity: 'stop'
  },
  {
    id: 'cut-breaks-out',
    about: 'pockets from both faces that meet',
    sound: { piece: cut(pocket(8, { id: 'dish', face: 'front' }), pocket(6)) },
    edit: { op: 'replace', path: '/cuts/1/depth', value: 12 },
    severity: 'stop'
  },
  {
    id: 'thin-floor',
    about: 'a floor of 1.5 mm',
    sound: { piece: cut(pocket(10)) },
    edit: { op: 'replace', path: '/cuts/0/depth', value: '16.5 mm' },
    severity: 'caution'
  },
  {
    id: 'cut-meets-stones',
    about: 'a channel 4 mm into granite',
    sound: { piece: overStones('granite-chips') },
    edit: { op: 'replace', path: '/cuts/0/depth', value: 11 },
    severity: 'stop'
  },
  {
    id: 'cut-meets-stones',
    about: 'a channel 4 mm into limestone',
    sound: { piece: overStones('limestone-chips') },
    edit: { op: 'replace', path: '/cuts/0/depth', value: 11 },
    severity: 'caution'
  },
  {
    id: 'cut-meets-stones',
    about: 'a bore right through granite',
    sound: { piece: { ...stones(zone('granite-chips')), cuts: [pocket(5), pocket(5, { id: 'bore' })] } },
    edit: {
      op: 'replace',
      path: '/cuts/1',
      value: { id: 'bore', kind: 'bore', face: 'front', shape: { circle: 10 }, through: true }
    },
    severity: 'stop',
    noFix: 'right through there is no depth to change; where it may go instead is the maker’s to say'
  },
  {
    id: 'stones-proud',
    about: 'granite to the level of the pour: flattening meets it',
    sound: { piece: stones(zone('granite-chips')) },
    edit: { op: 'replace', path: '/pours/0/stones/0/to', value: 20 },
    severity: 'stop'
  },
  {
    id: 'stones-proud',
    about: 'granite half a millimetre under the flattened face',
    sound: { piece: stones(zone('granite-chips')) },
    edit: { op: 'replace', path: '/pours/0/stones/0/to', value: '18.5 mm' },
    severity: 'caution'
  },
  {
    id: 'stones-proud',
    about: 'granite on the floor of the mould, under the face that is flattened',
    sound: { piece: stones(zone('granite-chips')) },
    edit: { op: 'replace', path: '/pours/0/stones/0/from', value: 0 },
    severity: 'stop'
  },
  {
    id: 'stones-proud',
    about: 'limestone to the level of the pour',
    sound: { piece: stones(zone('limestone-chips')) },
    edit: { op: 'replace', path: '/pours/0/stones/0/to', value: 20 },
    severity: 'caution'
  },
  {
    id: 'stones-proud',
    about: 'a pebble that stands out of the pour',
    sound: {
      piece: stones({ kind: 'quartz-pebbles', placed: [{ at: [0, 0], size: [20, 18, 7], height: 6 }] })
    },
    edit: { op: 'replace', path: '/pours/0/stones/0/placed/0/height', value: 15 },
    severity: 'stop'
  },
  {
    id: 'stones-damp',
    about: 'fresh pine cones',
    sound: { piece: stones(zone('pine-cones', { dry: 'dry' })) },
    edit: { op: 'replace', path: '/pours/0/stones/0/dry', value: 'fresh' },
    severity: 'stop'
  },
  {
    id: 'stones-damp',
    about: 'gravel that may be damp',
    sound: { piece: stones(zone('river-gravel')) },
    edit: { op: 'add', path: '/pours/0/stones/0/dry', value: 'not sure' },
    severity: 'caution'
  },
  {
    id: 'hole-outside',
    about: 'a pocket with a wall of 1 mm',
    sound: { piece: cut(pocket(10)) },
    edit: { op: 'replace', path: '/cuts/0/shape/at', value: [129, 0] },
    severity: 'caution'
  },
  {
    id: 'hole-outside',
    about: 'a pocket past a corner of the piece',
    sound: { piece: cut(pocket(10)) },
    edit: { op: 'replace', path: '/cuts/0/shape/at', value: [135, 85] },
    severity: 'caution'
  },
  {
    id: 'hole-outside',
    about: 'a pocket 2 mm from the point of a notch',
    sound: {
      piece: {
        ...cut(pocket(10)),
        outline: {
          polygon: [
            [-150, -100],
            [150, -100],
            [150, 100],
            [110, 100],
            [100, 25],
            [90, 100],
            [-150, 100]
          ]
        }
      }
    },
    edit: { op: 'replace', path: '/cuts/0/shape/at', value: [100, 3] },
    severity: 'caution'
  },
  {
    id: 'hole-outside',
    about: 'a pocket beside the piece',
    sound: { piece: cut(pocket(10)) },
    edit: { op: 'replace', path: '/cuts/0/shape/at', value: [400, 0] },
    severity: 'stop',
    noFix: 'where it is to be is the maker’s to say'
  },
  {
    id: 'depth-changes',
    about: 'a pocket from the front before 0.3 mm are sanded off',
    sound: { piece: cut(pocket(5, { face: 'front' })) },
    edit: { op: 'add', path: '/markings', value: scale(0.3) },
    severity: 'note'
  },
  {
    id: 'depth-changes',
    about: 'a pocket from the front before 0.6 mm are sanded off',
    sound: { piece: cut(pocket(5, { face: 'front' })) },
    edit: { op: 'add', path: '/markings', value: scale(0.6) },
    severity: 'caution'
  },
  {
    id: 'line-narrows',
    about: 'a V line before 0.3 mm are sanded off',
    sound: {
      piece: cut({
        id: 'line',
        kind: 'groove',
        face: 'front',
        along: {
          points: [
            [80, -60],
            [120, 60]
          ]
        },
        profile: 'v',
        depth: '1.2 mm'
      })
    },
    edit: { op: 'add', path: '/markings', value: scale(0.3) },
    severity: 'caution'
  }
]
