import { useEffect, useState } from 'preact/hooks'
import { clearCard, readCard } from '../state/card.ts'
import { fields } from '../state/fields.ts'
import { editShop, shop } from '../state/shop.ts'
import { w } from '../text/words.ts'
import type { Json } from '../worker/document.ts'
import { CardForm } from './card-form.tsx'
import { CardSays } from './card-says.tsx'

/** Hiding cards of pigments: those the shop keeps, and a form for another. */
export function CardSection() {
  const document = shop.value?.document ?? {}
  const cards = (document['cards'] as Json[] | undefined) ?? []
  const [open, setOpen] = useState<'new' | number | null>(null)
  useEffect(() => clearCard, [])
  // A card that is kept is fitted anew when it is looked at: only what was read is stored.
  useEffect(() => {
    if (typeof open === 'number') readCard({ kept: open, typed: null })
  }, [open])
  const show = (next: typeof open) => {
    clearCard()
    setOpen(next)
  }
  return (
    <section class="paper cards" aria-labelledby="shop-cards">
      <h2 id="shop-cards">{w.hidingCard.title}</h2>
      <p>{w.hidingCard.says}</p>
      {cards.length === 0 ? <p class="f">{w.hidingCard.none}</p> : null}
      <ul class="plain kept-cups">
        {cards.map((c, i) => (
          <li key={`${i} ${JSON.stringify(c)}`}>
            <button
              type="button"
              class="entry"
              aria-expanded={open === i}
              onClick={() => show(open === i ? null : i)}
            >
              {pigmentName(String(c['pigment']))}
            </button>{' '}
            <span class="f">{cardWords(c)}</span>
            <button
              type="button"
              class="link"
              aria-label={w.hidingCard.removeOf(pigmentName(String(c['pigment'])), cardWords(c))}
              onClick={() => {
                show(null)
                void editShop([{ op: 'remove', path: `/cards/${i}` }])
              }}
            >
              {w.card.remove}
            </button>
            {open === i ? <CardSays /> : null}
          </li>
        ))}
      </ul>
      {open === 'new' ? (
        <CardForm onClose={() => show(null)} />
      ) : (
        <button type="button" class="btn" onClick={() => show('new')}>
          {w.hidingCard.begin}
        </button>
      )}
    </section>
  )
}

function pigmentName(id: string): string {
  return fields.value?.tint.find(([known]) => known === id)?.[1] ?? id
}

function cardWords(c: Json): string {
  const steps = c['steps'] as unknown[] | undefined
  return w.hidingCard.kept(String(c['percent']), steps === undefined ? null : steps.length)
}
