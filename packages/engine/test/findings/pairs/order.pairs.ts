import type { PieceDocument } from '../../../src/piece/piece-schema.ts'
import type { Pair } from '../harness.ts'
import { PLAIN } from '../harness.ts'

type Cut = NonNullable<PieceDocument['cuts']>[number]

const pocket: Cut = {
  id: 'pocket',
  face: 'front',
  shape: { rectangle: [20, 20], at: [100, 0] },
  finishedDepth: 8
}
// The usual order, written out, with a flood over the front before the pocket is cut.
const ordered: PieceDocument = {
  ...PLAIN,
  pours: [...PLAIN.pours, { id: 'coat', kind: 'flood', resin: 'thin', depth: 2 }],
  cuts: [pocket],
  hardware: [{ id: 'cell', kind: 'coin-cell-holder', in: 'pocket', face: 'front', diameter: 18, depth: 6 }],
  steps: [
    { do: 'prepare timber' },
    { do: 'make mould' },
    { do: 'set timber' },
    { do: 'pour', what: 'clear' },
    { do: 'wait', for: '7 d' },
    { do: 'demould' },
    { do: 'turn over' },
    { do: 'flatten', face: 'back' },
    { do: 'turn over' },
    { do: 'flatten', face: 'front' },
    { do: 'pour', what: 'coat' },
    { do: 'wait', for: '7 d' },
    { do: 'cut', what: 'pocket' },
    { do: 'coat', face: 'both' },
    { do: 'wait', for: '14 d' },
    { do: 'fit', what: 'cell' },
    { do: 'deliver' }
  ]
}
const cast = (...pours: PieceDocument['pours']): PieceDocument => ({ ...PLAIN, pours })
const machined = (cut: Cut): Pair['sound'] => ({
  piece: { ...PLAIN, cuts: [cut] },
  shop: { castwright: 1, machine: { x: 800, y: 260 } }
})

export const pairs: readonly Pair[] = [
  {
    id: 'order-impossible',
    about: 'a part fitted before its pocket is cut',
    sound: { piece: ordered },
    edit: { op: 'move', from: '/steps/15', path: '/steps/12' },
    severity: 'stop'
  },
  {
    id: 'order-impossible',
    about: 'out of the mould before it is poured',
    sound: { piece: ordered },
    edit: { op: 'move', from: '/steps/5', path: '/steps/3' },
    severity: 'stop'
  },
  {
    id: 'order-impossible',
    about: 'a step left out: the pocket is never cut',
    sound: { piece: ordered },
    edit: { op: 'remove', path: '/steps/12' },
    severity: 'stop'
  },
  {
    id: 'open-pocket',
    about: 'the pocket cut before the front is flooded',
    sound: { piece: ordered },
    edit: { op: 'move', from: '/steps/12', path: '/steps/10' },
    severity: 'stop'
  },
  {
    id: 'sealed-in',
    about: 'a cell fitted before the front is flooded',
    sound: { piece: ordered },
    edit: { op: 'move', from: '/steps/10', path: '/steps/15' },
    severity: 'stop'
  },
  {
    id: 'pour-below',
    about: 'a pour up to 12.2 mm over one that stands at 12',
    sound: {
      piece: cast({ id: 'first', resin: 'deep', depth: 12 }, { id: 'second', resin: 'deep', height: 20 })
    },
    edit: { op: 'replace', path: '/pours/1/height', value: '12.2 mm' },
    severity: 'stop'
  },
  {
    id: 'pour-below',
    about: 'a pour to the timber when the one before stands that high',
    sound: {
      piece: cast({ id: 'first', resin: 'deep', depth: 12 }, { id: 'second', resin: 'deep', fill: 'timber' })
    },
    edit: { op: 'replace', path: '/pours/0/depth', value: 20 },
    severity: 'stop',
    noFix: 'which of the two pours is to stand lower is the maker’s to say'
  },
  {
    id: 'larger-than-machine',
    about: 'a casting longer than the machine, its pocket within reach',
    sound: machined(pocket),
    on: 'shop',
    edit: { op: 'replace', path: '/machine/x', value: 250 },
    severity: 'caution'
  },
  {
    id: 'larger-than-machine',
    about: 'a groove longer than the machine',
    sound: machined({
      id: 'groove',
      kind: 'groove',
      face: 'front',
      along: {
        points: [
          [-140, 80],
          [140, 80]
        ]
      },
      width: 6,
      depth: 5
    }),
    on: 'shop',
    edit: { op: 'replace', path: '/machine/x', value: 250 },
    severity: 'stop'
  },
  {
    id: 'larger-than-machine',
    about: 'a pocket deeper than the cutter travels',
    sound: machined(pocket),
    on: 'shop',
    edit: { op: 'add', path: '/machine/z', value: 10 },
    severity: 'stop'
  }
]
