import { describe, expect, it } from 'vitest'
import { plan } from '../../src/plan.ts'
import { quoteOf } from '../../src/quote.ts'
import { privateQuote } from '../../src/quote-words.ts'
import { exampleInput } from '../calendar/example-work.ts'

const asOf = '2026-11-30T08:00:00+01:00'

describe('hours of a quote', () => {
  const q = quoteOf(plan(exampleInput('meadow-boards'), { asOf, effort: 'preview' }), { asOf })
  const said = (handsMin: number, machineMin: number) =>
    privateQuote({ ...q, cost: { ...q.cost, handsMin, machineMin } })
      .flatMap(p => p.rows)
      .find(r => r.startsWith('Hands '))

  it('never have sixty minutes beside them', () => {
    expect(said(119.7, 59.5)).toBe('Hands 2 h 00, machine 1 h 00')
    expect(said(119.4, 61.2)).toBe('Hands 1 h 59, machine 1 h 01')
  })
})
