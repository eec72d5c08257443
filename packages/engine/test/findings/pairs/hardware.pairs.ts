import type { PieceDocument } from '../../../src/piece/piece-schema.ts'
import type { Pair } from '../harness.ts'
import { PLAIN } from '../harness.ts'

type Part = NonNullable<PieceDocument['hardware']>[number]
type Cut = NonNullable<PieceDocument['cuts']>[number]

// A part in a pocket in the timber on the right, finished 18 mm thick.
const fitted = (part: Part, shape: Cut['shape'], depth: number): PieceDocument => ({
  ...PLAIN,
  cuts: [{ id: 'pocket', face: 'back', shape: { at: [100, 0], ...shape }, depth }],
  hardware: [{ id: 'part', in: 'pocket', ...part }]
})
const magnet = fitted({ kind: 'magnet-disc' }, { circle: 10.4 }, 3.2)
const movement = (part: Partial<Part>, side: number, depth = 10) =>
  fitted({ kind: 'quartz-movement', ...part }, { rectangle: [side, side] }, depth)
const loose = (part: Part): PieceDocument => ({ ...PLAIN, hardware: [{ id: 'part', ...part }] })

export const pairs: readonly Pair[] = [
  {
    id: 'hardware-face',
    about: 'the pocket of a part from behind cut from the front',
    sound: { piece: magnet },
    edit: { op: 'replace', path: '/cuts/0/face', value: 'front' },
    severity: 'caution',
    noFix: 'whether the cut or the part is on the wrong face is the maker’s to say'
  },
  {
    id: 'hardware-pocket',
    about: 'a disc of 10 mm for a bore of 9.5',
    sound: { piece: magnet },
    edit: { op: 'replace', path: '/cuts/0/shape/circle', value: 9.5 },
    severity: 'stop'
  },
  {
    id: 'hardware-pocket',
    about: 'a disc of 10 mm in a bore of 10.05',
    sound: { piece: magnet },
    edit: { op: 'replace', path: '/cuts/0/shape/circle', value: '10.05 mm' },
    severity: 'caution'
  },
  {
    id: 'hardware-pocket',
    about: 'a movement with a quarter of a millimetre round it',
    sound: { piece: movement({}, 58.2) },
    edit: { op: 'replace', path: '/cuts/0/shape/rectangle', value: [56.5, 56.5] },
    severity: 'caution'
  },
  {
    id: 'hardware-pocket',
    about: 'a movement turned in its pocket',
    sound: { piece: movement({ turn: 0 }, 59) },
    edit: { op: 'replace', path: '/hardware/0/turn', value: 20 },
    severity: 'stop'
  },
  {
    id: 'hardware-pocket',
    about: 'round corners that a square movement does not go into',
    sound: {
      piece: fitted({ kind: 'quartz-movement' }, { rectangle: [58.2, 58.2], corner: 0.5 }, 10)
    },
    edit: { op: 'replace', path: '/cuts/0/shape/corner', value: 8 },
    severity: 'stop'
  },
  {
    id: 'hardware-pocket',
    about: 'a movement at the side of its pocket',
    sound: { piece: movement({ at: [100, 0] }, 62) },
    edit: { op: 'replace', path: '/hardware/0/at', value: [102.5, 0] },
    severity: 'caution'
  },
  {
    id: 'pocket-shallow',
    about: 'a pocket of 2.5 mm for a disc of 3',
    sound: { piece: magnet },
    edit: { op: 'replace', path: '/cuts/0/depth', value: 2.5 },
    severity: 'caution'
  },
  {
    id: 'pocket-shallow',
    about: 'a movement of 16 mm in a pocket that cannot be deeper',
    sound: { piece: movement({ depth: 9 }, 58.2, 10) },
    edit: { op: 'replace', path: '/hardware/0/depth', value: 19 },
    severity: 'caution',
    noFix: 'the piece is thinner than the part: a deeper pocket comes out of the front'
  },
  {
    id: 'thread-short',
    about: 'a thread of 8.5 mm through 8 mm',
    sound: { piece: movement({ thread: 12 }, 58.2) },
    edit: { op: 'replace', path: '/hardware/0/thread', value: 8.5 },
    severity: 'stop'
  },
  {
    id: 'thread-short',
    about: 'a part of the maker’s own whose thread is 2 mm short',
    sound: { piece: fitted({ kind: 'handle', thread: 14 }, { circle: 40 }, 8) },
    edit: { op: 'replace', path: '/hardware/0/thread', value: 11 },
    severity: 'stop'
  },
  {
    id: 'hardware-heat',
    about: 'a part that takes 36 °C cast into a pour that gets warmer',
    sound: { piece: loose({ kind: 'led-strip', castIn: 'clear', at: [0, 0], heat: 60 }) },
    edit: { op: 'replace', path: '/hardware/0/heat', value: 34 },
    severity: 'caution'
  },
  {
    id: 'sealed-in',
    about: 'a cell holder cast in',
    sound: { piece: loose({ kind: 'cell-holder', at: [100, 0] }) },
    edit: { op: 'add', path: '/hardware/0/castIn', value: 'clear' },
    severity: 'stop'
  },
  {
    id: 'mains-trade',
    about: 'a mains cable in place of one of extra-low voltage',
    sound: { piece: loose({ kind: 'cable-low-voltage', at: [100, 0] }) },
    edit: { op: 'replace', path: '/hardware/0/kind', value: 'cable-mains' },
    severity: 'caution',
    noFix: 'it is work for a licensed trade, whatever the piece says'
  },
  {
    id: 'hole-outside',
    about: 'a part that sits beside the piece',
    sound: { piece: loose({ kind: 'd-ring', at: [100, 0] }) },
    edit: { op: 'replace', path: '/hardware/0/at', value: [100, 300] },
    severity: 'stop',
    noFix: 'where it is to be is the maker’s to say'
  }
]
