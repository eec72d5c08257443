import type { PieceDocument } from '../../../src/piece/piece-schema.ts'
import type { Pair } from '../harness.ts'
import { PLAIN } from '../harness.ts'

type Part = NonNullable<PieceDocument['hardware']>[number]
type Cut = NonNullable<PieceDocument['cuts']>[number]

// A part in a hole from the back: in the ash on the right at x 100, in the clear resin between at x 0.
const fitted = (part: Part, cut: Partial<Cut>, more: Partial<PieceDocument> = {}): PieceDocument => ({
  ...PLAIN,
  ...more,
  cuts: [{ id: 'hole', face: 'back', depth: 10, ...cut }],
  hardware: [{ id: 'part', in: 'hole', ...part }]
})
const round = (mm: number, x = 100): Partial<Cut> => ({ kind: 'bore', shape: { circle: mm, at: [x, 0] } })
const insert = (more: Partial<Part> = {}): Part => ({ kind: 'round-insert', diameter: 60, depth: 9, ...more })
const plate = (corner: number): Part => ({
  kind: 'switch-low-voltage',
  length: 60,
  width: 36,
  depth: 5,
  corner
})
const platePocket: Partial<Cut> = { shape: { rectangle: [60.6, 36.6], at: [100, 0] }, depth: 6 }
const movement = (more: Partial<Part>, x = 100, depth = 10): PieceDocument =>
  fitted({ kind: 'quartz-movement', ...more }, { shape: { rectangle: [58.2, 58.2], at: [x, 0] }, depth })
const thick = { finish: { both: { coat: 'oil-varnish', film: 0.35 } } }
const flood = { finish: { both: { coat: 'flood-coat', coats: 1, film: 2.5 } } }
const former = (mm: number): PieceDocument => ({
  ...PLAIN,
  mould: { ...PLAIN.mould, formers: [{ id: 'plug', shape: { circle: mm } }] },
  hardware: [{ id: 'part', kind: 'compass-insert', in: 'plug', diameter: 66, depth: 12, clearance: 0.1 }]
})
const pin = (mm: number, fitting: Part['fitting'], x = 100): PieceDocument =>
  fitted({ kind: 'dowel-pin-8', fitting }, round(mm, x))

export const pairs: readonly Pair[] = [
  {
    id: 'corner-round',
    about: 'a plate whose round corners were made square',
    sound: { piece: fitted(plate(3), platePocket) },
    edit: { op: 'replace', path: '/hardware/0/corner', value: 0 },
    severity: 'caution'
  },
  {
    id: 'corner-round',
    about: 'a shop whose smallest cutter is 8 mm across instead of 1.5',
    sound: {
      piece: fitted(plate(0), platePocket),
      shop: { castwright: 1, cutters: [{ id: 'small', kind: 'flat-end-mill', diameter: 1.5, length: 8 }] }
    },
    on: 'shop',
    edit: { op: 'replace', path: '/cutters/0/diameter', value: 8 },
    severity: 'caution'
  },
  {
    id: 'fit-closes',
    about: 'an insert in a board that was not dry',
    sound: { piece: fitted(insert(), round(60.7)) },
    edit: { op: 'replace', path: '/timbers/1/moisture', value: 11 },
    severity: 'caution'
  },
  {
    id: 'fit-closes',
    about: 'a former that gave no room for the resin to spring in',
    sound: { piece: former(66.8) },
    edit: { op: 'replace', path: '/mould/formers/0/shape/circle', value: 66.2 },
    severity: 'stop'
  },
  {
    id: 'fit-closes',
    about: 'a coat on the part that takes the play asked for',
    sound: { piece: fitted(insert({ clearance: 0.3, film: 0 }), round(60.7, 0)) },
    edit: { op: 'replace', path: '/hardware/0/film', value: 0.25 },
    severity: 'note'
  },
  {
    id: 'mask-or-cut-after',
    about: 'a bore that is coated thick before its insert goes in',
    sound: { piece: fitted(insert(), { ...round(60.6, 0), mask: true }, thick) },
    edit: { op: 'remove', path: '/cuts/0/mask' },
    severity: 'stop'
  },
  {
    id: 'fit-closes',
    about: 'a former’s hole that a thick coat narrows: it has no mask',
    sound: { piece: { ...former(67), hardware: [{ ...former(67).hardware![0]!, clearance: 0.2 }] } },
    edit: { op: 'replace', path: '/finish', value: { both: { coat: 'oil-varnish', film: 0.45 } } },
    severity: 'stop'
  },
  {
    id: 'mask-or-cut-after',
    about: 'a self-levelling coat over an open bore',
    sound: { piece: fitted(insert(), { ...round(61), mask: true }, flood) },
    edit: { op: 'remove', path: '/cuts/0/mask' },
    severity: 'stop'
  },
  {
    id: 'fit-loose',
    about: 'a pin to be pressed into a bore 0.2 wider than it',
    sound: { piece: pin(7.95, 'press') },
    edit: { op: 'replace', path: '/cuts/0/shape/circle', value: 8.2 },
    severity: 'caution'
  },
  {
    id: 'fit-loose',
    about: 'a pin pressed into a board that is drier than it will be',
    sound: {
      piece: fitted({ kind: 'dowel-pin-10', diameter: 12, fitting: 'press' }, round(11.95), {
        timbers: PLAIN.timbers!.map(t => ({ ...t, moisture: 9.5 }))
      })
    },
    edit: { op: 'replace', path: '/timbers/1/moisture', value: 6 },
    severity: 'caution',
    noFix:
      'a hole small enough for the dampest air is too small to press into: let the board settle, or glue it'
  },
  {
    id: 'press-in-resin',
    about: 'a pin pressed into resin instead of glued in loose',
    sound: { piece: pin(8.05, 'loose', 0) },
    edit: { op: 'replace', path: '/hardware/0/fitting', value: 'press' },
    severity: 'caution'
  },
  {
    id: 'pilot-wrong',
    about: 'a wood screw of 4 in a pilot of 1.5',
    sound: { piece: fitted({ kind: 'wood-screw-4' }, round(2.9)) },
    edit: { op: 'replace', path: '/cuts/0/shape/circle', value: 1.5 },
    severity: 'caution'
  },
  {
    id: 'pilot-wrong',
    about: 'a wood screw of 4 in a bore of 3.9',
    sound: { piece: fitted({ kind: 'wood-screw-4' }, round(2.9)) },
    edit: { op: 'replace', path: '/cuts/0/shape/circle', value: 3.9 },
    severity: 'caution'
  },
  {
    id: 'pilot-wrong',
    about: 'an insert glued into resin in the bore that timber wants',
    sound: { piece: fitted({ kind: 'threaded-insert-m4' }, round(8.15, 0)) },
    edit: { op: 'replace', path: '/cuts/0/shape/circle', value: 5.6 },
    severity: 'caution'
  },
  {
    id: 'pilot-wrong',
    about: 'a wood screw in place of a machine screw in tapped resin',
    sound: { piece: fitted({ kind: 'machine-screw-m4' }, round(3.35, 0)) },
    edit: { op: 'replace', path: '/hardware/0/kind', value: 'wood-screw-4' },
    severity: 'caution',
    noFix: 'which insert or screw takes its place is the maker’s to say'
  },
  {
    id: 'insert-edge',
    about: 'an insert of 12 moved to 6 mm from the edge',
    sound: { piece: fitted({ kind: 'threaded-insert-m6' }, round(8.8, 120)) },
    edit: { op: 'replace', path: '/cuts/0/shape/at', value: [140, 0] },
    severity: 'caution'
  },
  {
    id: 'thread-short',
    about: 'a thread that a pocket cut a little shallow uses up',
    sound: { piece: movement({ thread: 12 }, 100, 9.4) },
    edit: { op: 'replace', path: '/hardware/0/thread', value: 11.86 },
    severity: 'caution'
  },
  {
    id: 'hardware-pocket',
    about: 'a strip of 10 in a channel of 10.2 instead of 10.6',
    sound: {
      piece: fitted(
        { kind: 'led-strip' },
        {
          kind: 'groove',
          width: 10.6,
          depth: 4,
          along: {
            points: [
              [100, -60],
              [100, 60]
            ]
          }
        }
      )
    },
    edit: { op: 'replace', path: '/cuts/0/width', value: 10.2 },
    severity: 'caution'
  },
  {
    id: 'glass-near',
    about: 'a glass 9 mm before a shaft that stands out 10',
    sound: { piece: movement({ thread: 12, shaft: 18, glass: 12 }) },
    edit: { op: 'replace', path: '/hardware/0/glass', value: 9 },
    severity: 'caution'
  },
  {
    id: 'hand-reach',
    about: 'a hand of 130 mm on a dial of 100',
    sound: { piece: movement({ thread: 12, hand: 95 }, 0) },
    edit: { op: 'replace', path: '/hardware/0/hand', value: 130 },
    severity: 'caution'
  },
  {
    id: 'hand-reach',
    about: 'a hand that a plain movement does not turn',
    sound: {
      piece: {
        ...movement({ thread: 12, hand: 140 }, 0),
        outline: { rectangle: [600, 600] },
        timbers: PLAIN.timbers!.map(t => ({
          ...t,
          outline: { rectangle: [250, 600], at: [t.id === 'left' ? -175 : 175, 0] }
        }))
      }
    },
    edit: { op: 'replace', path: '/hardware/0/hand', value: 220 },
    severity: 'caution'
  },
  {
    id: 'hand-reach',
    about: 'two dials whose hands meet',
    sound: {
      piece: {
        ...PLAIN,
        hardware: [
          { id: 'hours', kind: 'quartz-movement', at: [-60, 0], hand: 55 },
          { id: 'tide', kind: 'quartz-movement', at: [60, 0], hand: 55 }
        ]
      }
    },
    edit: { op: 'replace', path: '/hardware/1/at', value: [40, 0] },
    severity: 'caution'
  }
]
