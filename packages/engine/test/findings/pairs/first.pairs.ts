import type { Pair } from '../harness.ts'
import { PLAIN } from '../harness.ts'

const pour = (more: object) => ({ ...PLAIN, pours: [{ id: 'clear', resin: 'deep', depth: 20, ...more }] })

export const pairs: readonly Pair[] = [
  {
    id: 'pour-heat',
    about: 'a slow casting resin poured 58 mm deep in one go',
    sound: { piece: pour({}) },
    edit: { op: 'replace', path: '/pours/0/depth', value: 58 },
    severity: 'caution'
  },
  {
    id: 'pour-heat',
    about: 'a casting resin of medium speed poured 40 mm deep: a runaway',
    sound: { piece: pour({ resin: 'medium', depth: 6 }) },
    edit: { op: 'replace', path: '/pours/0/depth', value: 40 },
    severity: 'stop'
  },
  {
    id: 'opaque-cover',
    about: 'a channel from the back 2 mm too deep under a white pour',
    sound: {
      piece: {
        ...PLAIN,
        pours: [
          { id: 'white', resin: 'deep', depth: 10, tint: [{ pigment: 'white-paste', percent: 3 }] },
          { id: 'clear', resin: 'deep', height: 20 }
        ],
        cuts: [{ id: 'channel', face: 'back', shape: { rectangle: [40, 12] }, depth: 4 }]
      }
    },
    edit: { op: 'replace', path: '/cuts/0/depth', value: 6.5 },
    severity: 'caution'
  }
]
