import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { checkPiece, checkShop } from '../../src/piece/read.ts'
import { plan } from '../../src/plan.ts'
import { quoteOf } from '../../src/quote.ts'

const EXAMPLES = join(import.meta.dirname, '../../../../examples')
const example = JSON.parse(readFileSync(join(EXAMPLES, 'saltmarsh-panel.piece.json'), 'utf8')) as object
const AS_OF = '2026-11-28T08:00:00Z'

function quoted(rates: object, prices: readonly object[], count?: number) {
  const planned = plan(
    {
      piece: checkPiece(example, 'piece'),
      shop: checkShop({ castwright: 1, rates, prices: [...prices] }, 'shop').value
    },
    { asOf: AS_OF, effort: 'preview' }
  )
  return quoteOf(planned, { asOf: AS_OF, ...(count === undefined ? {} : { count }) })
}

describe('the price of a river board', () => {
  // Sells at 130, wood 50, resin 20 to 30, three hours: what is left for an hour is under 20.
  it('C37 says what is left for an hour, and consumables are a line of their own', () => {
    const q = quoted({ labour: 30, overhead: 0, margin: 0 }, [])
    expect(q.cost.lines.some(l => l.group === 'consumables')).toBe(true)
    expect(q.cost.handsMin).toBeGreaterThan(120)
    for (const p of q.prices) expect(p.anHour).not.toBeNull()
    // The hour of the rule without overhead and margin is the rate itself.
    expect(Math.abs(q.prices[0]!.anHour! - 3000)).toBeLessThanOrEqual(1)
  })
})

describe('never one bare number for cost and price', () => {
  it('O12 cost, price before tax, tax and what the client pays are sums of their own that add up', () => {
    const q = quoted({ labour: 35, overhead: 15, margin: 10, tax: 21, deposit: 40 }, [])
    expect(q.net + q.tax).toBe(q.gross)
    expect(q.tax).toBe(Math.round(q.net * 0.21))
    expect(q.deposit).toBe(Math.round(q.gross * 0.4))
    expect(q.net).toBeGreaterThan(q.cost.total)
    // Prices are missing: every sum is "at least", and what lacks one is named.
    expect(q.whole).toBe(false)
    expect(q.cost.unpriced.length).toBeGreaterThan(0)
  })

  it('O12 one of six and one of twelve cost less than one of one, and never less than what is not shared', () => {
    const { units } = quoted({ labour: 35 }, [])
    const [one, six, twelve] = units.map(u => u.coins)
    expect(one!).toBeGreaterThan(six!)
    expect(six!).toBeGreaterThan(twelve!)
    expect(twelve!).toBeGreaterThan(one! / 3)
    expect(quoted({ labour: 35 }, [], 1).net).toBe(one)
  })
})
