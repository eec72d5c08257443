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

export const pairs: readonly Pair[] = [
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
