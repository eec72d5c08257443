import { expect, it } from 'vitest'
import { stonesProud as real } from '../../engine/src/findings/stones-proud.ts'
import { loadNeeds } from '../src/late/needs.ts'
import { stonesProud } from '../src/late/stones.ts'

it('what is asked of stones is loaded with the first piece that has some, and not before', async () => {
  await loadNeeds({ kind: 'plan', document: { pours: [{ resin: 'deep', depth: 10 }] } })
  expect(stonesProud.about).toBe('')
  await loadNeeds({
    kind: 'plan',
    document: { pours: [{ resin: 'deep', depth: 10, stones: [{ kind: 'pebbles', mass: 40 }] }] }
  })
  expect(stonesProud.about).toBe(real.about)
  expect(stonesProud.cases).toEqual(real.cases)
})
