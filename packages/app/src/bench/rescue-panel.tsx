import { useState } from 'preact/hooks'
import type { Rescue } from '../../../engine/src/rescue/rescues.ts'
import type { Way } from '../../../engine/src/rescue/weigh.ts'
import { bench } from '../state/bench.ts'
import { askRescue, endRescue, rescued, rescueSays, rescuing, takeWay } from '../state/rescue.ts'
import { benchWords as b } from '../text/bench.ts'
import { numberOf } from './number-pad.tsx'
import { capital } from './time-words.ts'

const RISK = { 'usually works': 1, 'about even': 2, 'seldom works': 3 } as const

/** After something went differently: what it is, what is asked of it, and the ways on, the best first. */
export function RescuePanel() {
  const list = rescued.value
  return (
    <section class="rescue" aria-label={b.different} aria-busy={rescuing.value}>
      <div class="asks-head">
        <h2>{list !== null && list.length === 1 ? capital(list[0]!.trouble.says) : b.different}</h2>
        <button type="button" class="link" onClick={endRescue}>
          {b.back}
        </button>
      </div>
      <p class="f" role="status">
        {rescuing.value ? b.looking : rescueSays.value}
      </p>
      {list === null || (rescuing.value && list.length === 0) ? null : list.length === 0 ? (
        <Kinds />
      ) : (
        list.map((r, k) => <One key={k} rescue={r} alone={list.length === 1} />)
      )}
    </section>
  )
}

// Nothing the readings show: the maker says what it is.
function Kinds() {
  return (
    <>
      <p>{b.none}</p>
      <h3>{b.whatHappened}</h3>
      <div class="kinds">
        {bench.value?.troubles.map(({ kind, about }) => (
          <button key={kind} type="button" class="btn" onClick={() => void askRescue(kind, null)}>
            {capital(kind)}
            <span>{about}</span>
          </button>
        ))}
      </div>
    </>
  )
}

function One({ rescue, alone }: { readonly rescue: Rescue; readonly alone: boolean }) {
  const { trouble, questions, refused, ways, closed } = rescue
  const answers = Object.fromEntries(questions.flatMap(q => (q.answer === null ? [] : [[q.key, q.answer]])))
  const answer = (key: string, word: string) =>
    void askRescue(trouble.kind, trouble.of, { ...answers, [key]: word })
  return (
    <div class="rescue-one">
      {alone ? null : <h3>{capital(trouble.says)}</h3>}
      {questions.map(q => (
        <fieldset key={q.key} class="question">
          <legend>{q.asks}</legend>
          {q.options.length > 0 ? (
            <div class="options">
              {q.options.map(o => (
                <button
                  key={o.word}
                  type="button"
                  class="btn"
                  aria-pressed={q.answer === o.word}
                  onClick={() => answer(q.key, o.word)}
                >
                  {o.word}
                  <span>{o.means}</span>
                </button>
              ))}
            </div>
          ) : (
            <Typed asks={q.asks} said={q.answer} mm={q.free === 'mm'} onSay={text => answer(q.key, text)} />
          )}
          {refused
            .filter(r => r.key === q.key)
            .map(r => (
              <p key={r.says} class="bench-find caution" role="status">
                {r.says}
              </p>
            ))}
        </fieldset>
      ))}
      <ol class="ways-on">
        {ways.map((way, k) => (
          <WayRow key={way.id} way={way} first={k === 0} onTake={() => takeWay(rescue, way)} />
        ))}
      </ol>
      {closed.length === 0 ? null : (
        <details>
          <summary>{b.closed}</summary>
          <ul>
            {closed.map(c => (
              <li key={c.id}>
                <b>{c.does}</b>: {c.why}
              </li>
            ))}
          </ul>
        </details>
      )}
      <p class="f">{b.ranked(rescue.rule)}</p>
    </div>
  )
}

function Typed({
  asks,
  said,
  mm,
  onSay
}: {
  readonly asks: string
  readonly said: string | null
  readonly mm: boolean
  readonly onSay: (text: string) => void
}) {
  const [text, setText] = useState(said ?? '')
  const fit = mm ? numberOf(text) !== null : text.trim() !== ''
  return (
    <form
      class="typed"
      onSubmit={e => {
        e.preventDefault()
        if (fit) onSay(mm ? String(numberOf(text)) : text.trim())
      }}
    >
      <input
        inputMode={mm ? 'decimal' : 'text'}
        aria-label={mm ? `${asks} ${b.answerMm}` : asks}
        value={text}
        onInput={e => setText(e.currentTarget.value)}
      />
      {mm ? <span>mm</span> : null}
      <button type="submit" class="btn" disabled={!fit}>
        {b.answer}
      </button>
    </form>
  )
}

function WayRow({
  way,
  first,
  onTake
}: {
  readonly way: Way
  readonly first: boolean
  readonly onTake: () => void
}) {
  const dots = RISK[way.chance]
  return (
    <li class={first ? 'best' : ''}>
      <h3>{way.does}</h3>
      {way.favoured === null ? null : <p>{capital(way.favoured)}</p>}
      <p>{way.lost ? b.lost : b.gives(way.gives)}</p>
      <dl>
        <div>
          <dt>{b.time}</dt>
          <dd>{b.daysMore(way.cost.days)}</dd>
        </div>
        <div>
          <dt>{b.money}</dt>
          <dd>{b.moneyMore(way.cost.money, way.cost.currency, way.cost.unpriced > 0)}</dd>
        </div>
        <div>
          <dt>{b.risk}</dt>
          <dd>
            <span aria-hidden="true">{'●'.repeat(dots) + '○'.repeat(3 - dots)}</span> {way.chance}
          </dd>
        </div>
      </dl>
      {way.cost.passed.length === 0 ? null : (
        <p>
          {b.besides} {way.cost.passed.join('; ')}.
        </p>
      )}
      {way.risks.length === 0 ? null : (
        <p class="bench-find caution">
          {b.brings} {way.risks.map(r => r.says).join(' ')}
        </p>
      )}
      <details>
        <summary>{b.how}</summary>
        <ol>
          {way.how.map(h => (
            <li key={h}>{h}</li>
          ))}
        </ol>
        {way.safety.map(s => (
          <p key={s.name} class="bench-find caution">
            <b>{s.line}</b> {b.yields(s.defersTo.join('; '))}
          </p>
        ))}
      </details>
      <button type="button" class={first ? 'btn main' : 'btn'} onClick={onTake}>
        {b.take}
      </button>
    </li>
  )
}
