import type { PieceDocument } from '../../../src/piece/piece-schema.ts'
import type { ShopDocument } from '../../../src/piece/shop-schema.ts'
import type { Pair } from '../harness.ts'
import { PLAIN } from '../harness.ts'

type Cut = NonNullable<PieceDocument['cuts']>[number]

const shop: ShopDocument = {
  castwright: 1,
  machine: { x: 800, y: 600 },
  cutters: [
    { id: 'flat-6', kind: 'flat-end-mill', diameter: 6, length: 22 },
    { id: 'flat-3', kind: 'flat-end-mill', diameter: 3, length: 12 }
  ]
}
const cut = (value: Cut, more: Partial<PieceDocument> = {}): Pair['sound'] => ({
  piece: { ...PLAIN, ...more, cuts: [value] },
  shop
})
const pocket: Cut = { id: 'pocket', face: 'back', shape: { rectangle: [40, 30], at: [100, 0] }, depth: 6 }
const slit: Cut = { ...pocket, shape: { rectangle: [40, 3], at: [100, 0] } }
const outline: Cut = {
  id: 'trim',
  kind: 'outline',
  face: 'front',
  shape: { difference: [{ rectangle: [312, 212] }, { rectangle: [300, 200] }] },
  through: true,
  tabs: true
}
const { tabs: _tabs, ...untold } = outline
const measured = (thickness: number) => ({
  kind: 'thickness',
  thickness,
  id: 'r-2026-11-28-0001',
  at: '2026-11-28T10:00Z'
})

export const pairs: readonly Pair[] = [
  {
    id: 'pocket-closed',
    about: 'a slit 2.6 mm wide where the smallest cutter is 3',
    sound: cut(slit),
    edit: { op: 'replace', path: '/cuts/0/shape/rectangle', value: [40, 2.6] },
    severity: 'stop'
  },
  {
    id: 'pocket-closed',
    about: 'an island that nearly fills its pocket',
    sound: cut({ ...pocket, islands: [{ rectangle: [30, 20], at: [100, 0] }] }),
    edit: { op: 'replace', path: '/cuts/0/islands/0/rectangle', value: [37, 27] },
    severity: 'stop'
  },
  {
    id: 'pocket-closed',
    about: 'an island moved so near one wall that a strip stays standing',
    sound: cut({ ...pocket, islands: [{ rectangle: [20, 16], at: [100, 0] }] }),
    edit: { op: 'replace', path: '/cuts/0/islands/0/at', value: [100, 4.6] },
    severity: 'caution',
    noFix: 'whether the island or the cutter gives way is the maker’s to say'
  },
  {
    id: 'pocket-closed',
    about: 'the small cutter sold',
    sound: cut({ ...slit, shape: { rectangle: [40, 5.4], at: [100, 0] } }),
    on: 'shop',
    edit: { op: 'remove', path: '/cutters/1' },
    severity: 'stop'
  },
  {
    id: 'pocket-closed',
    about: 'a slit given a cutter wider than it is',
    sound: cut({ ...slit, shape: { rectangle: [40, 5], at: [100, 0] }, cutter: 'flat-3' }),
    edit: { op: 'replace', path: '/cuts/0/cutter', value: 'flat-6' },
    severity: 'stop'
  },
  {
    id: 'part-loose',
    about: 'the tabs refused',
    sound: cut(outline),
    edit: { op: 'replace', path: '/cuts/0/tabs', value: false },
    severity: 'stop'
  },
  {
    id: 'part-loose',
    about: 'tape changed for screws in the waste',
    sound: cut({ ...outline, tabs: false }, { holding: { by: 'tape' } }),
    edit: { op: 'replace', path: '/holding/by', value: 'screws in the waste' },
    severity: 'stop'
  },
  {
    id: 'tab-thin',
    about: 'tabs of 1.2 mm',
    sound: cut({ ...outline, tabs: { thick: 2 } }),
    edit: { op: 'replace', path: '/cuts/0/tabs/thick', value: 1.2 },
    severity: 'stop'
  },
  {
    id: 'tab-thin',
    about: 'a casting that was measured 2 mm thinner than planned, its tabs the usual ones',
    sound: { ...cut(untold), readings: [measured(18)] },
    on: 'readings',
    edit: { op: 'replace', path: '/0/thickness', value: 16 },
    severity: 'stop'
  },
  {
    id: 'tab-thin',
    about: 'a skin of 0.1 mm',
    sound: cut({ ...outline, tabs: false, skin: 0.5 }),
    edit: { op: 'replace', path: '/cuts/0/skin', value: 0.1 },
    severity: 'stop'
  }
]
