import { card, cardBusy } from '../state/card.ts'
import { w } from '../text/words.ts'

/** What was learned from a hiding card, in sentences. */
export function CardSays() {
  const c = card.value
  if (c === null) return cardBusy.value ? <p class="f">{w.cup.fitting}</p> : null
  return (
    <ul class={`plain learned${cardBusy.value ? ' old' : ''}`} role="status">
      {c.says.map(s => (
        <li key={s}>{s}</li>
      ))}
    </ul>
  )
}
