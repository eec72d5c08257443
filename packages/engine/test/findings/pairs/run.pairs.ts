import type { PieceDocument } from '../../../src/piece/piece-schema.ts'
import type { ShopDocument } from '../../../src/piece/shop-schema.ts'
import type { Pair } from '../harness.ts'
import { PLAIN } from '../harness.ts'

type Cuts = NonNullable<PieceDocument['cuts']>

const machine = { x: 800, y: 600 }
const mill = (diameter: number, length: number, more: object = {}) => ({
  id: `mill ${diameter}`,
  kind: 'flat-end-mill',
  diameter,
  length,
  ...more
})
const surfacing = { id: 'wide', kind: 'surfacing', diameter: 25.4, length: 8 }
const v60 = { id: 'v', kind: 'v-60', diameter: 6, length: 5.2 }
const shop = (more: Partial<ShopDocument> = {}): ShopDocument => ({
  castwright: 1,
  machine,
  cutters: [mill(6, 22), surfacing, v60],
  ...more
})
// In the timber on the right, finished 18 mm thick.
const pocket = (more: Partial<Cuts[number]> = {}): PieceDocument => ({
  ...PLAIN,
  cuts: [
    {
      id: 'pocket',
      face: 'back',
      shape: { rectangle: [40, 40], at: [100, 0] },
      depth: 10,
      ...more
    } as Cuts[number]
  ]
})
const groove: PieceDocument = {
  ...PLAIN,
  cuts: [
    {
      id: 'groove',
      kind: 'groove',
      face: 'back',
      along: {
        points: [
          [80, -40],
          [80, 40]
        ]
      },
      width: 7,
      depth: 4
    }
  ]
}
const scale = (angle: number): PieceDocument => ({
  ...PLAIN,
  markings: [
    { id: 'scale', linear: { from: [60, 40], to: [140, 40], length: 8, at: [0, 1] }, angle, filled: [] }
  ]
})

const BUY = 'a cutter or a machine is the shop’s, not the piece’s'

export const pairs: readonly Pair[] = [
  {
    id: 'cutter-missing',
    about: 'a groove 5 mm wide, 6 mm the smallest cutter there is',
    sound: { piece: groove, shop: shop() },
    edit: { op: 'replace', path: '/cuts/0/width', value: 5 },
    severity: 'caution'
  },
  {
    id: 'cutter-missing',
    about: 'edges 8 mm long under a thicker shank, for a pocket of 10',
    sound: { piece: pocket(), shop: shop({ cutters: [mill(6, 12), surfacing] }) },
    on: 'shop',
    edit: { op: 'replace', path: '/cutters/0', value: mill(5, 8, { shank: 6 }) },
    severity: 'caution'
  },
  {
    id: 'cutter-missing',
    about: 'a marking, and no V in the drawer',
    sound: { piece: scale(60), shop: shop() },
    on: 'shop',
    edit: { op: 'remove', path: '/cutters/2' },
    severity: 'caution'
  },
  {
    id: 'cutter-missing',
    about: 'a pocket that names a cutter the shop does not have',
    sound: { piece: pocket({ cutter: 'mill 6' }), shop: shop() },
    edit: { op: 'replace', path: '/cuts/0/cutter', value: 'mill 8' },
    severity: 'caution'
  },
  {
    id: 'cutter-missing',
    about: 'a groove that names a cutter too wide for it',
    sound: { piece: groove, shop: shop({ cutters: [mill(6, 22), mill(12, 30), surfacing] }) },
    edit: { op: 'add', path: '/cuts/0/cutter', value: 'mill 12' },
    severity: 'caution'
  },
  {
    id: 'cutter-unknown',
    about: 'a cutter of a kind that the catalogue does not have',
    sound: { piece: PLAIN, shop: shop() },
    on: 'shop',
    edit: { op: 'replace', path: '/cutters/0/kind', value: 'flat end' },
    severity: 'note',
    noFix: BUY
  },
  {
    id: 'spindle-fast',
    about: 'a spindle that begins at 12 000 and a bit marked 10 000',
    sound: {
      piece: PLAIN,
      shop: shop({ machine: { ...machine, slowest: 12_000 }, cutters: [{ ...surfacing, fastest: 18_000 }] })
    },
    on: 'shop',
    edit: { op: 'replace', path: '/cutters/0/fastest', value: 10_000 },
    severity: 'caution',
    noFix: BUY
  },
  {
    id: 'cutter-rubs',
    about: 'a machine that feeds 300 mm/min under a spindle of 20 000 and more',
    sound: { piece: pocket(), shop: shop({ machine: { ...machine, slowest: 20_000 } }) },
    on: 'shop',
    edit: { op: 'add', path: '/machine/feed', value: 300 },
    severity: 'caution',
    noFix: BUY
  },
  {
    id: 'cutter-pushes',
    about: 'a mill of 12 mm in resin on a frame that stands 5 N',
    sound: {
      piece: pocket({ shape: { rectangle: [40, 40] } }),
      shop: shop({ cutters: [mill(12, 30), surfacing] })
    },
    on: 'shop',
    edit: { op: 'add', path: '/machine/force', value: 5 },
    severity: 'caution',
    noFix: BUY
  },
  {
    id: 'cold-brittle',
    about: 'resin flattened in a shop of 12 °C by day, 19 before',
    sound: { piece: PLAIN, shop: { castwright: 1, climate: { night: 17, day: 19 } } },
    on: 'shop',
    edit: { op: 'replace', path: '/climate', value: { night: 11, day: 12 } },
    severity: 'caution',
    noFix: 'the shop or the blank is warmed, not the drawing changed'
  }
]
