import { signal } from '@preact/signals'
import { Choice } from '../look/choice.tsx'
import { piece, saving, view } from '../state/desk.ts'
import { awaySince } from '../state/reach.ts'
import { printWords as p } from '../text/print.ts'
import './print.css'

type Name = keyof typeof p.sheets

const GROUPS: readonly (readonly [keyof typeof p.groups, readonly Name[]])[] = [
  [
    'build',
    ['run-sheet.pdf', 'run-sheet.html', 'cup-labels.pdf', 'templates.pdf', 'buy-list.pdf', 'buy.csv']
  ],
  ['draw', ['drawing.pdf', 'solid.3mf', 'page.html']],
  ['give', ['quote.pdf', 'quote-private.pdf', 'care.pdf', 'as-made.pdf']]
]
/** Not written while a stop stands. */
const KEPT_BACK: readonly Name[] = [
  'run-sheet.pdf',
  'run-sheet.html',
  'cup-labels.pdf',
  'templates.pdf',
  'care.pdf',
  'quote.pdf'
]

const paper = signal<'A4' | 'letter'>(usualPaper())

// Letter where it is the usual paper (practice), A4 everywhere else.
function usualPaper(): 'A4' | 'letter' {
  return /-(US|CA|MX|PH|CL|CO|VE)$/.test(navigator.language) ? 'letter' : 'A4'
}

/** What can be printed or handed over, and why what is not written is not. */
export function PrintScreen() {
  const id = piece.value?.id
  const stopped = view.value?.verdict === 'stop'
  return (
    <main class="print" id="main">
      <section class="paper" aria-label={p.region}>
        <div class="print-head">
          <p>{p.says}</p>
          <Choice
            words={p.paper}
            options={p.papers}
            value={paper.value}
            onPick={name => (paper.value = name)}
          />
        </div>
        {awaySince.value !== null ? (
          <p class="f">{p.away}</p>
        ) : saving.value !== 'saved' ? (
          <p class="f">{p.unsent}</p>
        ) : null}
        {GROUPS.map(([group, names]) => (
          <section key={group} aria-labelledby={`print-${group}`}>
            <h2 id={`print-${group}`}>{p.groups[group]}</h2>
            <ul>
              {names.map(name => {
                const [title, says] = p.sheets[name]
                const not = stopped && KEPT_BACK.includes(name)
                return (
                  <li key={name} class={not ? 'not' : ''}>
                    <div>
                      <b>{title}</b>
                      <p>{not ? p.not : says}</p>
                    </div>
                    {not ? null : (
                      <a
                        class="btn"
                        href={`/api/pieces/${id}/${name}${name.endsWith('.pdf') ? `?paper=${paper.value}` : ''}`}
                        target="_blank"
                        rel="noopener"
                      >
                        {p.open}
                        <span class="says-core"> {title}</span>
                      </a>
                    )}
                  </li>
                )
              })}
            </ul>
          </section>
        ))}
      </section>
    </main>
  )
}
