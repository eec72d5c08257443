import { useEffect, useState } from 'preact/hooks'
import { clearCup, keptTests, readCup } from '../state/cup.ts'
import { units } from '../state/preferences.ts'
import { width } from '../state/screen.ts'
import { editShop, shop } from '../state/shop.ts'
import { w } from '../text/words.ts'
import type { Json } from '../worker/document.ts'
import { CupForm } from './cup-form.tsx'
import { CupResult } from './cup-result.tsx'

/** Cups of resin that were watched: those the shop keeps, and a form for another. */
export function CupSection() {
  const document = shop.value?.document ?? {}
  const tests = keptTests(document)
  const [open, setOpen] = useState<'new' | string | null>(null)
  useEffect(() => clearCup, [])
  const here = tests.find(t => t.at === open)
  // A test that is kept is fitted anew when it is looked at: only readings are stored.
  useEffect(() => {
    if (here !== undefined) readCup({ ...NOTHING, resin: { id: here.resin, like: null }, kept: here.test })
  }, [here?.at, units.value, width.value])
  const show = (next: typeof open) => {
    clearCup()
    setOpen(next)
  }
  return (
    <section class="paper cups" aria-labelledby="shop-cups">
      <h2 id="shop-cups">{w.cup.title}</h2>
      <p>{w.cup.says}</p>
      <p class="f">{w.cup.care}</p>
      {tests.length === 0 ? <p class="f">{w.cup.none}</p> : null}
      <ul class="plain kept-cups">
        {tests.map(({ at, resin, test }) => (
          <li key={at}>
            <button
              type="button"
              class="entry"
              aria-expanded={open === at}
              onClick={() => show(open === at ? null : at)}
            >
              {resin}
            </button>{' '}
            <span class="f">{testWords(test)}</span>
            <button
              type="button"
              class="link"
              aria-label={w.cup.removeOf(resin, testWords(test))}
              onClick={() => {
                show(null)
                void editShop([{ op: 'remove', path: at }])
              }}
            >
              {w.card.remove}
            </button>
            {open === at ? <CupResult /> : null}
          </li>
        ))}
      </ul>
      {open === 'new' ? (
        <CupForm onClose={() => show(null)} />
      ) : (
        <button type="button" class="btn" onClick={() => show('new')}>
          {w.cup.begin}
        </button>
      )}
    </section>
  )
}

const NOTHING = { text: '', given: {} }

function testWords(test: Json): string {
  const stored = (value: unknown, unit: string) =>
    typeof value === 'number' ? `${value} ${unit}` : String(value)
  return w.cup.kept(
    test['day'] === undefined ? null : String(test['day']),
    stored(test['mass'], 'g'),
    stored(test['diameter'], 'mm'),
    (test['readings'] as unknown[]).length
  )
}
