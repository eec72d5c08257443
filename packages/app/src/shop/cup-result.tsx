import { Drawing } from '../look/drawing.tsx'
import { WordTable } from '../look/word-table.tsx'
import { cup, cupBusy } from '../state/cup.ts'
import { units } from '../state/preferences.ts'
import { w } from '../text/words.ts'

/** What a cup test says: curve over the readings, what is left between them, what was learned, what the label says. */
export function CupResult() {
  const c = cup.value
  if (c === null) return cupBusy.value ? <p class="f">{w.cup.fitting}</p> : null
  const unit = units.value.temperature
  return (
    <div class={`cup-result${cupBusy.value ? ' old' : ''}`}>
      <Drawing drawn={c.drawn} name="cup-fit" words={c.words} />
      <p class="f cup-key">{w.cup.key}</p>
      <div role="status">
        <ul class="plain learned">
          {c.says.map(s => (
            <li key={s}>{s}</li>
          ))}
        </ul>
        {c.label.length === 0 ? null : (
          <>
            <h3>{w.cup.label}</h3>
            <ul class="plain learned">
              {c.label.map(s => (
                <li key={s}>{s}</li>
              ))}
            </ul>
          </>
        )}
        {c.notes.length === 0 ? null : <p class="f">{c.notes.join(' ')}</p>}
      </div>
      <details class="why">
        <summary>{w.cup.figuresHead}</summary>
        <WordTable head={w.cup.learnedHead} rows={c.learned} />
      </details>
      <details class="why">
        <summary>{w.cup.rowsHead}</summary>
        <WordTable head={w.cup.rowHead(unit)} rows={c.rows} />
      </details>
    </div>
  )
}
