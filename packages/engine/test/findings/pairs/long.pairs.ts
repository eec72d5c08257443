import type { Pair } from '../harness.ts'
import { PLAIN } from '../harness.ts'

/** A panel in waste that is wide enough for index pins, and a drawer of short cutters. */
export const pairs: readonly Pair[] = [
  {
    id: 'larger-than-machine',
    about: 'a casting longer than the machine that is moved along on index pins',
    sound: {
      piece: {
        ...PLAIN,
        mould: { margin: 30, bearers: 250 },
        cuts: [
          { id: 'pocket', face: 'front', shape: { rectangle: [20, 20], at: [100, 0] }, finishedDepth: 8 }
        ]
      },
      shop: {
        castwright: 1,
        machine: { x: 800, y: 300 },
        cutters: [
          { id: 'flattening 25', kind: 'surfacing', diameter: 25.4, length: 8 },
          { id: 'straight 5', kind: 'flat-end-mill', diameter: 5, length: 36, reach: 42 },
          { id: 'straight 6', kind: 'flat-end-mill', diameter: 6, length: 32, reach: 42 }
        ]
      }
    },
    on: 'shop',
    edit: { op: 'replace', path: '/machine/x', value: 250 },
    severity: 'note',
    noFix: 'nothing is wrong: it says how a long piece is cut'
  }
]
