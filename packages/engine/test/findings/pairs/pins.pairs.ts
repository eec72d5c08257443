import type { PieceDocument } from '../../../src/piece/piece-schema.ts'
import type { Pair } from '../harness.ts'
import { PLAIN } from '../harness.ts'

// Pockets from both faces by machine, and an ear at either end: pins fit at ±186 on the middle line.
const both: PieceDocument = {
  ...PLAIN,
  mould: {
    margin: 6,
    bearers: 250,
    ears: [
      { rectangle: [50, 60], at: [-175, 0] },
      { rectangle: [50, 60], at: [175, 0] }
    ]
  },
  cuts: [
    { id: 'front pocket', face: 'front', shape: { rectangle: [40, 30], corner: 4, at: [100, 40] }, depth: 4 },
    { id: 'back pocket', face: 'back', shape: { rectangle: [40, 30], corner: 4, at: [-100, 40] }, depth: 4 }
  ]
}
const AT: [number, number][] = [
  [-186, 0],
  [186, 0]
]
const pins = (more: NonNullable<PieceDocument['pins']> = {}): PieceDocument => ({
  ...both,
  pins: { at: AT, ...more }
})
// Grain across the line of the pins, put in wetter than the shop keeps it.
const across: PieceDocument = {
  ...pins({ slot: true, tolerance: 2 }),
  timbers: PLAIN.timbers!.map(t => ({ ...t, grain: 0, rings: 'flat' as const, moisture: 12 }))
}
const upright: PieceDocument = {
  ...across,
  mould: {
    margin: 6,
    bearers: 250,
    ears: [
      { rectangle: [60, 50], at: [-100, -125] },
      { rectangle: [60, 50], at: [-100, 125] }
    ]
  },
  pins: {
    at: [
      [-100, -134],
      [-100, 134]
    ],
    about: 'y',
    slot: true,
    tolerance: 2
  }
}
// Two pockets one under the other in 18 mm of timber.
const facing = (depth: number): PieceDocument => ({
  ...PLAIN,
  cuts: [
    { id: 'dish', face: 'front', shape: { rectangle: [40, 40], corner: 4, at: [100, 0] }, depth: 7 },
    { id: 'dome', face: 'back', shape: { rectangle: [40, 40], corner: 4, at: [100, 0] }, depth }
  ]
})
const machine = (error: number) => ({ castwright: 1 as const, machine: { x: 800, y: 600, error } })

export const pairs: readonly Pair[] = [
  {
    id: 'pins-miss',
    about: 'a pin 14 mm past the end of its ear',
    sound: { piece: pins() },
    edit: { op: 'replace', path: '/pins/at/0', value: [-214, 0] },
    severity: 'stop'
  },
  {
    id: 'pins-miss',
    about: 'pins outside a mould without ears',
    sound: { piece: pins() },
    edit: { op: 'remove', path: '/mould/ears' },
    severity: 'stop'
  },
  {
    id: 'pins-miss',
    about: 'a pin nearer to the end of its ear than 1.5 diameters',
    sound: { piece: pins() },
    edit: { op: 'replace', path: '/pins/at/1', value: [194, 0] },
    severity: 'caution'
  },
  {
    id: 'pins-near-cut',
    about: 'a pin where the saw that frees the part passes',
    sound: { piece: pins() },
    edit: { op: 'replace', path: '/pins/at/1', value: [156, 0] },
    severity: 'caution'
  },
  {
    id: 'pins-near-cut',
    about: 'a pin in the way of the cutter that frees the part',
    sound: {
      piece: {
        ...pins(),
        cuts: [
          ...both.cuts!,
          {
            id: 'trim',
            kind: 'outline',
            face: 'front',
            shape: { difference: [{ rectangle: [312, 212] }, { rectangle: [300, 200] }] },
            through: true
          }
        ]
      }
    },
    edit: { op: 'replace', path: '/pins/at/1', value: [157, 0] },
    severity: 'stop'
  },
  {
    id: 'pins-half-turn',
    about: 'both pins of one diameter',
    sound: { piece: pins() },
    edit: { op: 'add', path: '/pins/diameter', value: 6 },
    severity: 'caution'
  },
  {
    id: 'pins-unlike',
    about: 'one pin of two moved off the line it is turned about',
    sound: { piece: pins() },
    edit: { op: 'replace', path: '/pins/at/1', value: [186, 8] },
    severity: 'stop'
  },
  {
    id: 'pins-none',
    about: 'both faces by machine, and no ears',
    sound: { piece: both, shop: machine(0.05) },
    edit: { op: 'remove', path: '/mould/ears' },
    severity: 'caution'
  },
  {
    id: 'pins-across-grain',
    about: 'two round holes across the grain of timber that dries between the settings',
    sound: { piece: upright },
    edit: { op: 'replace', path: '/pins/slot', value: false },
    severity: 'caution'
  },
  {
    id: 'pins-loose',
    about: 'holes half a millimetre wider than their pins',
    sound: { piece: pins({ tolerance: 0.4 }), shop: machine(0.05) },
    edit: { op: 'add', path: '/pins/play', value: 0.5 },
    severity: 'caution'
  },
  {
    id: 'pins-loose',
    about: 'a machine that repeats to 0.2 mm, and faces that are to meet within 0.4',
    sound: { piece: pins({ tolerance: 0.4 }), shop: machine(0.05) },
    on: 'shop',
    edit: { op: 'replace', path: '/machine/error', value: 0.2 },
    severity: 'caution',
    noFix: 'the machine is the shop’s, not the piece’s'
  },
  {
    id: 'wall-between',
    about: 'pockets from both faces with 3.2 mm between them, on a blank that may come out thinner',
    sound: { piece: facing(7.4) },
    edit: { op: 'replace', path: '/cuts/1/depth', value: 7.8 },
    severity: 'note'
  },
  {
    id: 'wall-between',
    about: 'a blank read 0.8 mm thinner than planned',
    sound: {
      piece: facing(7.4),
      readings: [{ id: 'r-thickness', at: '2026-11-28T09:00Z', kind: 'thickness', thickness: 18 }]
    },
    on: 'readings',
    edit: { op: 'replace', path: '/0/thickness', value: 17.2 },
    severity: 'caution'
  }
]
