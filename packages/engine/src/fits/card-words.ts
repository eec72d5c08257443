import { ownPigments } from '../cast/own-pigment.ts'
import { find } from '../catalogue/find.ts'
import type { PigmentRecord } from '../catalogue/pigment.ts'
import { coverDepthMm } from '../colour/cover-depth.ts'
import { chooseResin } from '../piece/resin-choice.ts'
import type { Shop } from '../piece/shop-schema.ts'
import { decimals } from '../quantity/format.ts'
import { tintOptics } from './tint.ts'

/** Density of a mix whose resin a card does not say, g/ml. */
const USUAL_G_ML = 1.1

/** A hiding card of the shop, read: what it is of and what it says, in sentences. */
export interface CardSaid {
  readonly pigment: string
  /** Whether later plans go by it. */
  readonly counts: boolean
  readonly says: readonly string[]
}

/**
 * What one card of a shop tells of its pigment: from what depth its mix hides, beside what the catalogue knew.
 * @throws InputProblem for a pigment or a resin that is not known
 */
export function cardSaid(shop: Shop, index: number): CardSaid {
  const card = shop.cards[index]!
  const own = ownPigments({ ...shop, cards: [card] })
  const before = find('pigment', card.pigment)!
  const after = own(before)
  const chosen = card.resin === undefined ? null : chooseResin(card.resin, shop, `/cards/${index}/resin`)
  const density = chosen === null || 'found' in chosen ? USUAL_G_ML : chosen.densityGMl
  const hides = (record: PigmentRecord) => {
    const mm = coverDepthMm(tintOptics([{ pigment: record, share: card.percent / 100 }], density))
    if (mm === null) return null
    const factor = record.bandFactor
    return `${decimals(mm, 2)} mm, between ${decimals(mm / factor, 2)} and ${decimals(mm * factor, 2)}`
  }
  const known = hides(before)
  const learned = hides(after)
  const counts = after !== before
  const at = `${decimals(card.percent, 3)} % of it in resin`
  if (!counts)
    return {
      pigment: before.name,
      counts,
      says: [
        'It tells no more than the catalogue knows: steps are wanted that still show and steps that hide.',
        ...(known === null ? [] : [`By the catalogue ${at} hides from ${known}.`])
      ]
    }
  const last = shop.cards.findLastIndex(c => find('pigment', c.pigment)?.id === before.id) === index
  return {
    pigment: before.name,
    counts: last,
    says: [
      learned === null ? `${at} hides nothing at any depth.` : `${at} hides from ${learned}.`,
      known === null
        ? 'By the catalogue it hides nothing at any depth.'
        : `The catalogue alone would have said from ${known}.`,
      `Its strength is known within a factor of ${decimals(after.bandFactor, 2)} (before: ${decimals(before.bandFactor, 1)}).`,
      ...(last ? [] : ['A later card of this pigment counts instead.'])
    ]
  }
}
