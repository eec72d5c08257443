import type { PieceDocument } from '../../../src/piece/piece-schema.ts'
import type { Pair } from '../harness.ts'
import { PLAIN } from '../harness.ts'

type Cut = NonNullable<PieceDocument['cuts']>[number]

// In the timber on the right, finished 18 mm thick.
const cut = (more: Partial<Cut>): PieceDocument => ({
  ...PLAIN,
  cuts: [
    {
      id: 'pocket',
      face: 'back',
      shape: { rectangle: [40, 30], corner: 4, at: [100, 0] },
      depth: 8,
      way: 'router',
      ...more
    }
  ]
})
const hole = (more: Partial<Cut>): PieceDocument =>
  cut({ id: 'hole', kind: 'bore', shape: { circle: 20, at: [100, 0] }, way: 'drill', ...more })
const machine = { x: 600, y: 400 }

export const pairs: readonly Pair[] = [
  {
    id: 'hand-way',
    about: 'a square pocket by drill',
    sound: { piece: cut({}) },
    edit: { op: 'replace', path: '/cuts/0/way', value: 'drill' },
    severity: 'caution'
  },
  {
    id: 'hand-way',
    about: 'a closed pocket by saw',
    sound: { piece: cut({}) },
    edit: { op: 'replace', path: '/cuts/0/way', value: 'saw' },
    severity: 'caution'
  },
  {
    id: 'hand-way',
    about: 'a bore larger than the largest bit there is: a router along a template makes it',
    sound: { piece: hole({}) },
    edit: { op: 'replace', path: '/cuts/0/shape/circle', value: 79.4 },
    severity: 'caution'
  },
  {
    id: 'hand-way',
    about: 'a pocket by router, with bits wider than it is: sent out',
    sound: {
      piece: cut({ shape: { rectangle: [40, 10], corner: 3, at: [100, 0] } }),
      shop: { castwright: 1, hand: { bits: [{ diameter: 6, length: 20 }] } }
    },
    on: 'shop',
    edit: { op: 'replace', path: '/hand/bits/0/diameter', value: 12 },
    severity: 'caution'
  },
  {
    id: 'bit-short',
    about: 'a bit that is shorter by the template than the pocket is deep',
    sound: {
      piece: cut({}),
      shop: { castwright: 1, hand: { bits: [{ diameter: 8, length: 20, reach: 20 }] } }
    },
    edit: { op: 'replace', path: '/cuts/0/depth', value: 15 },
    severity: 'caution'
  },
  {
    id: 'bit-short',
    about: 'a template twice as thick',
    sound: {
      piece: cut({}),
      shop: { castwright: 1, hand: { template: 9, bits: [{ diameter: 8, length: 20, reach: 20 }] } }
    },
    on: 'shop',
    edit: { op: 'replace', path: '/hand/template', value: 18 },
    severity: 'caution'
  },
  {
    id: 'bush-corner',
    about: 'corners of 1 mm with a bit of 6',
    sound: { piece: cut({}) },
    edit: { op: 'replace', path: '/cuts/0/shape/corner', value: 1 },
    severity: 'note'
  },
  {
    id: 'point-through',
    about: 'a blind hole that leaves 1 mm before a spur of 2.4',
    sound: { piece: hole({ depth: 10 }) },
    edit: { op: 'replace', path: '/cuts/0/depth', value: 17 },
    severity: 'caution'
  },
  {
    id: 'sled-weak',
    about: 'rails shorter than the piece, cutter and router together',
    sound: { piece: PLAIN, shop: { castwright: 1, hand: { sled: { rails: 600 } } } },
    on: 'shop',
    edit: { op: 'replace', path: '/hand/sled/rails', value: 400 },
    severity: 'caution',
    noFix: 'longer rails are the shop’s, not the piece’s'
  },
  {
    id: 'sled-weak',
    about: 'beams of the carriage too low for its span',
    sound: { piece: PLAIN, shop: { castwright: 1, hand: { sled: { beamHeight: 60 } } } },
    on: 'shop',
    edit: { op: 'replace', path: '/hand/sled/beamHeight', value: 12 },
    severity: 'caution',
    noFix: 'stiffer beams are the shop’s, not the piece’s'
  },
  {
    id: 'no-machine',
    about: 'a pocket by machine in a shop whose machine is gone',
    sound: {
      piece: cut({ way: 'machine' }),
      shop: { castwright: 1, machine, hand: { bits: [{ diameter: 8, length: 20 }] } }
    },
    on: 'shop',
    edit: { op: 'remove', path: '/machine' },
    severity: 'note'
  }
]
