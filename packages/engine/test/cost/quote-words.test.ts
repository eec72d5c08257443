import { describe, expect, it } from 'vitest'
import { plan } from '../../src/plan.ts'
import { quoteOf } from '../../src/quote.ts'
import { privateQuote } from '../../src/quote-words.ts'
import { exampleInput } from '../calendar/example-work.ts'

const asOf = '2026-11-30T08:00:00+01:00'

describe('hours of a quote', () => {
  const q = quoteOf(plan(exampleInput('meadow-boards'), { asOf, effort: 'preview' }), { asOf })
  const said = (minutes: number) => {
    const lines = q.cost.lines.map(l => (l.group === 'labour' ? { ...l, amount: minutes / 60 } : l))
    return privateQuote({ ...q, cost: { ...q.cost, lines } })
      .flatMap(p => p.rows)
      .find(r => r.startsWith('your hands, '))
  }

  it('never have sixty minutes beside them', () => {
    expect(said(119.7)).toMatch(/^your hands, 2 h 00\b/)
    expect(said(59.5)).toMatch(/^your hands, 1 h 00\b/)
    expect(said(119.4)).toMatch(/^your hands, 1 h 59\b/)
  })
})
