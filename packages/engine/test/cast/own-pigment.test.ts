import { describe, expect, it } from 'vitest'
import { ownPigments } from '../../src/cast/own-pigment.ts'
import { find } from '../../src/catalogue/find.ts'
import type { Bands } from '../../src/catalogue/pigment-optics.ts'
import { linearOf } from '../../src/catalogue/pigment-optics.ts'
import { labOf } from '../../src/colour/cielab.ts'
import { hexOf } from '../../src/colour/srgb.ts'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { InputProblem } from '../../src/piece/problem.ts'
import { checkPiece, checkShop } from '../../src/piece/read.ts'
import type { ShopDocument } from '../../src/piece/shop-schema.ts'
import { workOf } from '../../src/work.ts'
import { asked } from '../cases/asked.ts'
import { PLAIN } from '../findings/harness.ts'

type Card = NonNullable<ShopDocument['cards']>[number]

const GREEN = find('pigment', 'green-paste')!
const PERCENT = 2

/** The look of a layer over a card, written apart from the model: closed form by hyperbolic cotangent. */
function look(strength: number, mm: number, card: readonly [number, number, number]): Bands {
  const c = (PERCENT / 100) * GREEN.pigmentFraction * 1100 * strength
  return linearOf(card).map((seen, b) => {
    const g = seen / (0.953479 * 0.4 + 0.6 * seen)
    const [s, k] = [c * GREEN.scatterM2PerG, c * GREEN.absorbBandsM2PerG[b]!]
    const a = 1 + k / s
    const w = Math.sqrt(a * a - 1)
    const coth = 1 / Math.tanh(w * s * mm)
    const r = (1 - g * (a - w * coth)) / (a - g + w * coth)
    return (0.953479 * 0.4 * r) / (1 - 0.6 * r)
  }) as unknown as Bands
}

const BLACK = [28, 28, 28] as const
const WHITE = [231, 231, 231] as const

/** A card of a green `strength` times the generic one; colours rounded to a screen's steps. */
const steps = (strength: number): NonNullable<Card['steps']> =>
  [0.1, 0.2, 0.4, 0.6].map(depth => ({
    depth,
    overBlack: hexOf(look(strength, depth, BLACK)),
    overWhite: hexOf(look(strength, depth, WHITE))
  }))

const shop = (...cards: Card[]): ShopDocument => ({ castwright: 1, cards })
const own = (...cards: Card[]) => ownPigments(checkShop(shop(...cards), 'shop').value)(GREEN)

describe('a hiding card in the shop', () => {
  it('gives the pigment its own strength, and narrows the factor of three', () => {
    for (const strength of [0.5, 1, 1.8]) {
      const green = own({
        pigment: 'green-paste',
        percent: PERCENT,
        steps: steps(strength),
        doubt: { colour: 1, depth: 0.01 }
      })
      expect(green.card).toBe('colours')
      expect(green.bandFactor).toBeLessThan(1.3)
      expect(green.scatterM2PerG / GREEN.scatterM2PerG / strength).toBeGreaterThan(1 / green.bandFactor)
      expect(green.scatterM2PerG / GREEN.scatterM2PerG / strength).toBeLessThan(green.bandFactor)
      // The deep look is still that of the pigment.
      expect(green.absorbM2PerG / green.scatterM2PerG).toBeCloseTo(
        GREEN.absorbM2PerG / GREEN.scatterM2PerG,
        0
      )
    }
  })

  it('takes colours of an instrument as well', () => {
    const lab = steps(1.4).map(s => {
      const at = (hex: Card['black']) =>
        labOf(
          linearOf(
            [1, 3, 5].map(i => Number.parseInt((hex as string).slice(i, i + 2), 16)) as unknown as [
              number,
              number,
              number
            ]
          )
        ) as unknown as [number, number, number]
      return { ...s, overBlack: at(s.overBlack as string), overWhite: at(s.overWhite as string) }
    })
    const base = { pigment: 'green-paste', percent: PERCENT, doubt: { colour: 1, depth: 0.01 } }
    const one = own({ ...base, steps: steps(1.4) })
    const other = own({ ...base, steps: lab })
    expect(other.scatterM2PerG / one.scatterM2PerG).toBeCloseTo(1, 3)
  })

  it('that was only looked at puts the hiding depth between its two steps', () => {
    const piece: PieceDocument = {
      ...PLAIN,
      pours: [{ id: 'green', resin: 'deep', depth: 20, tint: [{ pigment: 'green-paste', percent: 2 }] }]
    }
    const cards = [{ pigment: 'green-paste', percent: 2, resin: 'deep', wedge: { shows: 1.6, hides: 2.5 } }]
    const { hiding } = workOf({
      piece: checkPiece(piece, 'piece'),
      shop: checkShop(shop(...cards), 'shop').value,
      effort: 'preview'
    })
    expect(hiding[0]!.tested).toBe(true)
    expect(hiding[0]!.depth!.lowMm).toBeCloseTo(1.6, 6)
    expect(hiding[0]!.depth!.highMm).toBeCloseTo(2.5, 6)
  })

  it('that tells nothing leaves the catalogue standing, and the last one of a pigment counts', () => {
    const blind = [3, 5].map(depth => ({
      depth,
      overBlack: hexOf(look(1, depth, BLACK)),
      overWhite: hexOf(look(1, depth, WHITE))
    }))
    expect(own({ pigment: 'green-paste', percent: PERCENT, steps: blind }).card).toBeUndefined()
    const two = own(
      { pigment: 'green-paste', percent: 2, wedge: { shows: 1, hides: 1.2 } },
      { pigment: 'green-paste', percent: 2, wedge: { shows: 2, hides: 2.4 } }
    )
    const last = own({ pigment: 'green-paste', percent: 2, wedge: { shows: 2, hides: 2.4 } })
    expect(two).toEqual(last)
    expect(two.bandFactor).toBeCloseTo(Math.sqrt(1.2), 9)
    // Another pigment is not touched by it.
    const blue = find('pigment', 'blue-paste')!
    const both = ownPigments(
      checkShop(shop({ pigment: 'green-paste', percent: 2, wedge: { shows: 1, hides: 2 } }), 'shop').value
    )
    expect(both(blue)).toBe(blue)
  })

  it('narrows the verdict on a cut: what was perhaps seen is seen or is not', () => {
    const piece: PieceDocument = {
      ...PLAIN,
      timbers: PLAIN.timbers!.map(t => ({ ...t, thickness: 22 })),
      pours: [
        { id: 'green', resin: 'deep', depth: 13, tint: [{ pigment: 'green-paste', percent: 2 }] },
        { id: 'clear', resin: 'deep', height: 22 }
      ],
      cuts: [{ id: 'channel', face: 'back', shape: { rectangle: [60, 12] }, depth: 11 }]
    }
    const card = (shows: number, hides: number) =>
      shop({ pigment: 'green-paste', percent: 2, wedge: { shows, hides } })
    expect(asked({ piece }, 'opaque-cover').map(f => f.severity)).toEqual(['caution'])
    expect(asked({ piece, shop: card(0.6, 0.8) }, 'opaque-cover')).toEqual([])
    const weak = asked({ piece, shop: card(3, 4) }, 'opaque-cover')
    expect(weak.map(f => f.severity)).toEqual(['stop'])
    expect(weak[0]!.basis).toContain('by your card')
  })

  it('is refused with words when it is none', () => {
    const problem = (card: unknown): string => {
      try {
        ownPigments(checkShop({ castwright: 1, cards: [card] }, 'shop').value)
      } catch (e) {
        if (e instanceof InputProblem) return JSON.stringify(e.problems)
        throw e
      }
      return ''
    }
    expect(problem({ pigment: 'grean-paste', percent: 2, wedge: { shows: 1, hides: 2 } })).toMatch(
      /cards\/0\/pigment.*grean-paste.*green-paste/
    )
    expect(problem({ pigment: 'green-paste', percent: 2, wedge: { shows: 3, hides: 2 } })).toMatch(
      /hides.*deeper than the step that still shows/
    )
    expect(problem({ pigment: 'green-paste', percent: 2 })).toMatch(/steps.*wedge/)
    expect(
      problem({
        pigment: 'green-paste',
        percent: 2,
        steps: [{ depth: 1, overBlack: 'green', overWhite: '#ffffff' }]
      })
    ).toMatch(/overBlack/)
  })
})
