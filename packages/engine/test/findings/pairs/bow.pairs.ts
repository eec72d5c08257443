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
  }
]
