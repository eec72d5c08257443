import type { Pair } from '../harness.ts'
import { PLAIN } from '../harness.ts'

// Two planks and a river between them, cast in two pours, wide enough for the fold to be seen.
const wide = (front: number) => ({
  ...PLAIN,
  outline: { rectangle: [620, 300] as [number, number] },
  flatten: { back: 2, front },
  timbers: [-1, 1].map(side => ({
    id: side < 0 ? 'left' : 'right',
    species: 'walnut-black',
    outline: { rectangle: [210, 300] as [number, number], at: [side * 205, 0] as [number, number] },
    thickness: 24,
    moisture: 8.5,
    grain: 90
  })),
  pours: [
    { id: 'lower', resin: 'deep', depth: 12 },
    { id: 'upper', resin: 'deep', fill: 'timber' as const }
  ]
})

type Point = [number, number]

/** One board, its grain along x, on four legs. */
const top = (length: number, thickness: number, x: number, more: object = {}) => ({
  ...PLAIN,
  outline: { rectangle: [length, 400] as Point },
  timbers: [
    {
      id: 'board',
      species: 'oak-white',
      outline: { difference: [{ rectangle: [length + 12, 412] as Point }, { circle: 30 }] },
      thickness,
      moisture: 8.5,
      grain: 0
    }
  ],
  pours: [{ id: 'knot', resin: 'deep', depth: thickness }],
  supports: {
    legs: [
      [-x, -170],
      [x, -170],
      [x, 170],
      [-x, 170]
    ] as Point[],
    ...more
  }
})

export const pairs: readonly Pair[] = [
  {
    id: 'bow-after',
    about: 'a skin of 2 mm of resin left over both boards',
    sound: { piece: PLAIN },
    edit: { op: 'replace', path: '/pours/0/depth', value: 23 },
    severity: 'caution'
  },
  {
    id: 'bow-after',
    about: 'a river of two pours that folds more than flattening takes off',
    sound: { piece: wide(2) },
    edit: { op: 'replace', path: '/flatten/front', value: 1 },
    severity: 'caution'
  },
  {
    id: 'sags-in-use',
    about: 'a thin shelf with books on it',
    sound: { piece: top(1100, 18, 500) },
    edit: { op: 'add', path: '/supports/load', value: '40 kg' },
    severity: 'caution'
  },
  {
    id: 'tips-over',
    about: 'a loose top that somebody leans on',
    sound: { piece: top(900, 26, 250, { held: 'loose' }) },
    edit: { op: 'add', path: '/supports/leaning', value: '25 kg' },
    severity: 'caution'
  },
  {
    id: 'tips-over',
    about: 'a top screwed to its frame, leaned on',
    sound: { piece: top(900, 26, 250) },
    edit: { op: 'add', path: '/supports/leaning', value: '10 kg' },
    severity: 'note'
  },
  {
    id: 'tips-over',
    about: 'a top screwed to its frame, leaned on with far more than it holds by itself',
    sound: { piece: top(900, 26, 250) },
    edit: { op: 'add', path: '/supports/leaning', value: '25 kg' },
    severity: 'caution'
  },
  {
    id: 'slots-short',
    about: 'a top of 400 across the grain screwed down through round holes',
    sound: { piece: top(900, 26, 350) },
    edit: { op: 'add', path: '/supports/held', value: 'round holes' },
    severity: 'caution'
  },
  {
    id: 'slots-short',
    about: 'slots of 1 mm where it moves by more',
    sound: { piece: top(900, 26, 350, { slots: 10 }) },
    edit: { op: 'replace', path: '/supports/slots', value: 1 },
    severity: 'caution'
  },
  {
    id: 'lift-heavy',
    about: 'a casting of 40 kg in a shop of one',
    sound: { piece: top(1600, 60, 700), shop: { castwright: 1, secondPair: true } },
    on: 'shop',
    edit: { op: 'replace', path: '/secondPair', value: false },
    severity: 'caution',
    noFix: 'who helps is the shop’s'
  }
]
