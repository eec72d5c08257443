import { expect, it } from 'vitest'
import { mainsTrade as realTrade } from '../../engine/src/findings/mains-trade.ts'
import { stonesProud as real } from '../../engine/src/findings/stones-proud.ts'
import { mainsTrade } from '../src/late/fittings.ts'
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

it('what is asked of parts that are fitted is loaded with the first piece that has some', async () => {
  await loadNeeds({ kind: 'plan', document: { hardware: [] } })
  expect(mainsTrade.about).toBe('')
  await loadNeeds({ kind: 'plan', document: { hardware: [{ kind: 'keyhole-plate' }] } })
  expect(mainsTrade.about).toBe(realTrade.about)
})
