import type { Pair } from '../harness.ts'
import { PLAIN } from '../harness.ts'

const labelled = (label: object) => ({
  piece: { ...PLAIN, pours: [{ id: 'clear', resin: 'mine', depth: 6 }] },
  shop: { castwright: 1 as const, resins: [{ id: 'mine', like: 'medium' as const, ...label }] }
})

export const pairs: readonly Pair[] = [
  {
    id: 'label-figures',
    about: 'a resin that sets in three minutes, said to be like a casting resin',
    sound: labelled({ potLife: { minutes: 90 } }),
    on: 'shop',
    edit: { op: 'replace', path: '/resins/0/potLife/minutes', value: 3 },
    severity: 'stop',
    noFix: 'the class in the shop is not the one of the label'
  },
  {
    id: 'label-figures',
    about: 'a label of a long pot life that promises a short gel time',
    sound: labelled({ potLife: { minutes: 90 }, gelTime: { minutes: '6 h' } }),
    on: 'shop',
    edit: { op: 'replace', path: '/resins/0/gelTime/minutes', value: 60 },
    severity: 'caution',
    noFix: 'the label is what it is: a cup test settles it'
  },
  {
    id: 'label-figures',
    about: 'a pot life of a coating beside the depth of a casting resin',
    sound: labelled({ potLife: { minutes: 90 }, greatestDepth: 10 }),
    on: 'shop',
    edit: { op: 'replace', path: '/resins/0/potLife/minutes', value: 12 },
    severity: 'caution',
    noFix: 'the label is what it is: a cup test settles it'
  },
  {
    id: 'label-figures',
    about: 'a deep resin taken for a medium one',
    sound: labelled({ gelTime: { minutes: '6 h' } }),
    on: 'shop',
    edit: { op: 'replace', path: '/resins/0/gelTime/minutes', value: '4 d' },
    severity: 'caution',
    noFix: 'the class in the shop is not the one of the label'
  },
  {
    id: 'label-figures',
    about: 'a label that names no class: medium is taken, and said',
    sound: labelled({ gelTime: { minutes: '6 h' } }),
    on: 'shop',
    edit: { op: 'remove', path: '/resins/0/like' },
    severity: 'note',
    noFix: 'the class is for the maker to name'
  }
]
