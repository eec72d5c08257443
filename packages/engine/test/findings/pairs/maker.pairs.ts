import type { PieceDocument } from '../../../src/piece/piece-schema.ts'
import type { Pair } from '../harness.ts'
import { PLAIN } from '../harness.ts'

// A disc of 10 mm in a bore from the back, in the ash on the right.
const magnet = (at: [number, number], coat: string, clearance = 0.1): PieceDocument => ({
  ...PLAIN,
  cuts: [
    { id: 'hole', kind: 'bore', face: 'back', shape: { circle: 10.4, at: [100, 0] }, depth: 4, mask: true }
  ],
  hardware: [{ id: 'disc', kind: 'magnet-disc', in: 'hole', at, diameter: 10, tolerance: 0, clearance }],
  finish: { both: { coat } }
})

const screwed: PieceDocument = {
  ...PLAIN,
  cuts: [
    { id: 'pilot', kind: 'bore', face: 'back', shape: { circle: 3, at: [100, 0] }, depth: 10, way: 'drill' }
  ],
  hardware: [{ id: 'screw', kind: 'wood-screw-4', in: 'pilot', thread: 14 }]
}
const white = [{ pigment: 'white-paste', percent: 3 }]
const wedge = { shows: 1, hides: 1.3 }

export const pairs: readonly Pair[] = [
  {
    id: 'screw-through',
    about: 'a screw of 25 mm into 18',
    sound: { piece: screwed },
    edit: { op: 'replace', path: '/hardware/0/thread', value: 25 },
    severity: 'stop'
  },
  {
    id: 'screw-through',
    about: 'a screw whose point ends a millimetre under the front',
    sound: { piece: screwed },
    edit: { op: 'replace', path: '/hardware/0/thread', value: 17 },
    severity: 'caution'
  },
  {
    id: 'card-unused',
    about: 'a card of two steps so far apart that it says less than the catalogue',
    sound: {
      piece: { ...PLAIN, pours: [{ id: 'white', resin: 'deep', depth: 20, tint: white }] },
      shop: { castwright: 1, cards: [{ pigment: 'white-paste', percent: 3, wedge }] }
    },
    on: 'shop',
    edit: { op: 'replace', path: '/cards/0/wedge', value: { shows: 0.02, hides: 60 } },
    severity: 'note',
    noFix: 'the card is made anew; no change of the piece reads it'
  },
  {
    id: 'hardware-pocket',
    about: 'a disc placed beside its bore',
    sound: { piece: magnet([100, 0], 'hardwax-oil') },
    edit: { op: 'replace', path: '/hardware/0/at', value: [100, 60] },
    severity: 'stop'
  },
  {
    id: 'hardware-pocket',
    about: 'a disc of 10 mm in a bore of 10 that is lacquered',
    sound: {
      piece: {
        ...magnet([100, 0], 'water-lacquer', 0.3),
        cuts: [{ id: 'hole', kind: 'bore', face: 'back', shape: { circle: 11, at: [100, 0] }, depth: 4 }]
      }
    },
    edit: { op: 'replace', path: '/cuts/0/shape/circle', value: 10 },
    severity: 'stop'
  }
]
