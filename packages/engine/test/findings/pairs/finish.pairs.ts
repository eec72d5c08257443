import type { Pair } from '../harness.ts'
import { PLAIN } from '../harness.ts'

export const pairs: readonly Pair[] = [
  {
    id: 'faces-unlike',
    about: 'a back without finish',
    sound: { piece: { ...PLAIN, finish: { front: { coat: 'hardwax-oil' }, back: { coat: 'hardwax-oil' } } } },
    edit: { op: 'replace', path: '/finish/back/coat', value: 'none' },
    severity: 'caution'
  },
  {
    id: 'faces-unlike',
    about: 'a flood coat over an oiled back',
    sound: { piece: PLAIN },
    edit: { op: 'add', path: '/finish/front', value: { coat: 'flood-coat', grit: 220 } },
    severity: 'caution'
  },
  {
    id: 'faces-unlike',
    about: 'lacquer on one face and oil on the other',
    sound: { piece: PLAIN },
    edit: { op: 'add', path: '/finish/front', value: { coat: 'water-lacquer' } },
    severity: 'caution'
  },
  {
    id: 'grit-too-fine',
    about: 'grit 400 under a flood coat',
    sound: { piece: { ...PLAIN, finish: { both: { coat: 'flood-coat', grit: 220 } } } },
    edit: { op: 'replace', path: '/finish/both/grit', value: 400 },
    severity: 'caution'
  },
  {
    id: 'grit-too-fine',
    about: 'grit 600 under an oil',
    sound: { piece: { ...PLAIN, finish: { both: { coat: 'hardwax-oil', grit: 240 } } } },
    edit: { op: 'replace', path: '/finish/both/grit', value: 600 },
    severity: 'note'
  },
  {
    id: 'face-not-reached',
    about: 'resin 2 mm lower than the timber where flattening takes 1',
    sound: { piece: { ...PLAIN, pours: [{ id: 'clear', resin: 'deep', depth: 20 }] } },
    edit: { op: 'replace', path: '/pours/0/depth', value: 18 },
    severity: 'caution'
  },
  {
    id: 'face-not-reached',
    about: 'a plank whose top is hollow by 3 mm and stands over the resin',
    sound: {
      piece: {
        ...PLAIN,
        timbers: PLAIN.timbers!.map(t => ({ ...t, thickness: 30 })),
        pours: [
          { id: 'lower', resin: 'deep', depth: 15 },
          { id: 'upper', resin: 'deep', fill: 'timber' }
        ]
      }
    },
    edit: { op: 'add', path: '/timbers/0/crown', value: { rise: -3 } },
    severity: 'caution'
  },
  {
    id: 'face-not-reached',
    about: 'resin 8 mm lower than the timber, as in a tray or by mistake',
    sound: { piece: { ...PLAIN, pours: [{ id: 'clear', resin: 'deep', depth: 20 }] } },
    edit: { op: 'replace', path: '/pours/0/depth', value: 12 },
    severity: 'note',
    noFix: 'a hollow that deep may be meant'
  }
]
