import { expect, it } from 'vitest'
import { lengthsOf } from '../../src/piece/lengths.ts'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { kindFacts, kindWords } from '../../src/sheets/cut-kind-words.ts'
import { stepFacts } from '../../src/sheets/step-facts.ts'
import { PLAIN } from '../findings/harness.ts'
import { planOf } from './pieces.ts'

const piece: PieceDocument = {
  ...PLAIN,
  cuts: [
    {
      id: 'hang',
      kind: 'keyhole',
      face: 'back',
      along: {
        points: [
          [100, 0],
          [100, 14]
        ]
      },
      width: 5,
      head: 10,
      lip: 4,
      depth: 9
    },
    { id: 'hole', kind: 'bore', face: 'front', shape: { circle: 6, at: [-100, 0] }, depth: 9 },
    { id: 'wide', kind: 'counterbore', face: 'front', around: 'hole', shape: { circle: 13 }, depth: 4 },
    {
      id: 'leaf',
      kind: 'inlay',
      face: 'front',
      shape: { rectangle: [40, 24], at: [100, -60] },
      finishedDepth: 6,
      plug: { gap: 0.1, thickness: 8, species: 'maple-sugar', relief: 0.3 }
    }
  ]
}

it('the run sheet says what a keyhole, a counterbore and a plug measure', () => {
  const { plan, work } = planOf(piece)
  const words = (index: number) =>
    kindFacts(work, index)
      .map(f => Object.values(f).join(' '))
      .join('; ')
  expect(words(0)).toContain('10 mm across')
  expect(words(0)).toContain('4 mm thick over the head')
  expect(words(1)).toBe('')
  expect(words(2)).toContain('hole')
  // 40 and 24 less twice the gap.
  expect(words(3)).toContain('39.8 × 23.8')
  expect(words(3)).toContain('maple')
  expect(words(3)).toContain('at most 3')
  expect(kindWords(work, 3, lengthsOf(work.shop))).toEqual(['plug 0.1 mm smaller all round'])
  const cut = work.steps.findIndex(s => s.kind === 'cut' && s.cut!.id === 'hang')
  expect(stepFacts(plan, work, cut).join('; ')).toContain('neck 5, head 10, lips 4 mm')
})
