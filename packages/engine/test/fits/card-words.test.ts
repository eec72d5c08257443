import { describe, expect, it } from 'vitest'
import { cardSaid } from '../../src/fits/card-words.ts'
import { checkShop } from '../../src/piece/read.ts'

const said = (...cards: object[]) =>
  cards.map((_, i) => cardSaid(checkShop({ castwright: 1, cards }, 'shop').value, i))

describe('what a hiding card says', () => {
  it('is the depth between the step that shows and the one that hides, within their ratio', () => {
    const [card] = said({ pigment: 'green-paste', percent: 2, wedge: { shows: 1, hides: 1.44 } })
    // By definition of the card: √(1 × 1.44), and √1.44 either way.
    expect(card!.says[0]).toBe('2 % of it in resin hides from 1.2 mm, between 1 and 1.44.')
    expect(card!.counts).toBe(true)
  })

  it('tells which card of a pigment counts, and a card that says less than is known', () => {
    const [first, last] = said(
      { pigment: 'green-paste', percent: 2, wedge: { shows: 1, hides: 1.4 } },
      { pigment: 'green-paste', percent: 4, wedge: { shows: 0.5, hides: 0.7 } }
    )
    expect([first!.counts, last!.counts]).toEqual([false, true])
    expect(first!.says.at(-1)).toContain('A later card')
    const [vague] = said({ pigment: 'green-paste', percent: 2, wedge: { shows: 0.1, hides: 9 } })
    expect(vague!.counts).toBe(false)
    expect(vague!.says[0]).toContain('no more than the catalogue')
  })
})
