import { find } from '../catalogue/find.ts'
import { cardSaid } from '../fits/card-words.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** A hiding card of a pigment of this piece that tells nothing: the plan goes by the catalogue all the same. */
export const cardUnused: Check = {
  id: 'card-unused',
  about: 'a hiding card from which nothing can be read',
  cases: [],
  run
}

function run(work: Work): Found[] {
  const cards = work.shop.cards
  if (cards.length === 0) return []
  return work.entries.pours.flatMap(({ at, index, id }): Found[] => {
    const pigments = new Set(work.materials.tints[index]!.map(t => t.pigment.id))
    return [...pigments].flatMap((pigment): Found[] => {
      // The last card of a pigment is the one that counts.
      const last = cards.findLastIndex(c => find('pigment', c.pigment)?.id === pigment)
      if (last < 0) return []
      const said = cardSaid(work.shop, last)
      if (said.counts) return []
      return [
        {
          severity: 'note',
          at,
          says: `your hiding card of ${said.pigment} tells nothing for ${id}: its steps all hide, none does, or their colours fit no one pigment. The catalogue’s figure stands, with its wide band.`,
          basis:
            'least squares of the colours read, or the two steps of a wedge; narrower than the catalogue’s band',
          settledBy: 'a card with thinner and deeper steps, read in even light without gloss'
        }
      ]
    })
  })
}
