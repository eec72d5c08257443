import { useEffect, useRef } from 'preact/hooks'
import { bench, benchFailure, lastRecord, looked, take, takeBack, watchBench } from '../state/bench.ts'
import { now, watchClock } from '../state/clock.ts'
import { piece, saving } from '../state/desk.ts'
import { awaySince } from '../state/reach.ts'
import { endRescue, rescued } from '../state/rescue.ts'
import { follow } from '../state/route.ts'
import { benchWords as b } from '../text/bench.ts'
import { w } from '../text/words.ts'
import type { BenchStepView, BenchView } from '../worker/bench-view.ts'
import { AskRow } from './ask-row.tsx'
import { HoldButton } from './hold-button.tsx'
import { KeepRow } from './keep-row.tsx'
import { KeptList } from './kept-list.tsx'
import { RescuePanel } from './rescue-panel.tsx'
import { ring } from './ring.ts'
import { SafetyLines, StepBody } from './step-body.tsx'
import { countOf, headTimer, TimeBand } from './time-band.tsx'
import { capital, clockTime } from './time-words.ts'
import './bench.css'

/** One step at a time, to be read at arm's length; works without network once it was opened. */
export function BenchScreen() {
  useEffect(watchBench, [])
  useEffect(watchClock, [])
  useEffect(() => endRescue, [])
  const v = bench.value
  if (v === null)
    return (
      <main class="bench" id="main">
        <p class="f waits" role="status">
          {benchFailure.value ?? w.state.loading}
        </p>
      </main>
    )
  const due = v.steps.find(s => s.done === null) ?? null
  const step = v.steps.find(s => s.key === looked.value) ?? due
  return (
    <main class="bench" id="main">
      {benchFailure.value === null ? null : (
        <p class="says-bad" role="alert">
          {benchFailure.value}
        </p>
      )}
      {v.written ? null : <StopNote view={v} />}
      {rescued.value !== null ? (
        <RescuePanel />
      ) : step === null && !v.written ? null : step === null ? (
        <section class="bench-all">
          <h2>{b.allDone}</h2>
          <p>{b.allDoneSays}</p>
        </section>
      ) : (
        <Step key={step.key} view={v} step={step} due={due} />
      )}
    </main>
  )
}

function Step({
  view,
  step,
  due
}: {
  readonly view: BenchView
  readonly step: BenchStepView
  readonly due: BenchStepView | null
}) {
  const at = now.value
  const head = headTimer(step.timers, at)
  const others = step.timers.filter(t => t !== head)
  const place = view.steps.indexOf(step)
  return (
    <>
      <header class="bench-head">
        <p>
          <b>{b.step(step.number)}</b> {b.of(view.count)}
          {step.when === '' ? '' : `, ${step.when}`}
        </p>
        <p class="f">{stateWords()}</p>
      </header>
      <article class="bench-step">
        <h2>{step.title}</h2>
        {step.face === '' && step.brief === '' ? null : (
          <p class="f">{[step.face, step.brief].filter(x => x !== '').join(', ')}</p>
        )}
        {step.done === null ? null : (
          <p class="was-done">
            {step.done.atMs === null ? b.doneBefore : b.doneAt(clockTime(step.done.atMs, at))}
          </p>
        )}
        {step.begunMs === null ? null : (
          <p class="was-done">
            {b.begun(clockTime(step.begunMs, at), Math.floor((at - step.begunMs) / 60_000))}
          </p>
        )}
        {head === null ? null : <TimeBand timer={head} />}
        {others.length === 0 ? null : (
          <details class="more-times">
            <summary>{b.others}</summary>
            <ul>
              {others.map(t => (
                <li key={t.says}>
                  {t.says}:{' '}
                  {b.open(
                    clockTime(t.openMs, at),
                    t.closeMs === null || t.kind === 'wait' ? null : clockTime(t.closeMs, at)
                  )}
                </li>
              ))}
            </ul>
          </details>
        )}
        <StepBody step={step} />
        <KeptList kept={step.kept} atMs={at} />
        <Changed view={view} />
        <nav class="bench-steps" aria-label={b.region}>
          <button
            type="button"
            class="link"
            disabled={place <= 0}
            onClick={() => (looked.value = view.steps[place - 1]!.key)}
          >
            {b.earlier}
          </button>
          {due !== null && due !== step ? (
            <button type="button" class="link" onClick={() => (looked.value = null)}>
              {b.toDue}
            </button>
          ) : null}
          <button
            type="button"
            class="link"
            disabled={place >= view.steps.length - 1}
            onClick={() => (looked.value = view.steps[place + 1]!.key)}
          >
            {b.later}
          </button>
        </nav>
      </article>
      <footer class="bench-foot">
        <Recorded />
        <AskRow asks={step.asks} />
        <KeepRow step={step.key} />
        {step.done === null ? (
          <div class="bench-press">
            {step.mayBegin ? (
              <button
                type="button"
                class="btn begin"
                onClick={() => take({ kind: 'began', step: step.key }, `${step.title}: ${b.begunSays}`)}
              >
                {b.begin}
              </button>
            ) : null}
            <HoldButton
              words={b.done}
              onHeld={() => {
                take({ kind: 'done', step: step.key }, `${step.title}: ${b.done.toLowerCase()}`)
                looked.value = null
              }}
            />
          </div>
        ) : null}
      </footer>
      <Alert step={step} />
    </>
  )
}

// What the readings changed, and what does not go together.
function Changed({ view }: { readonly view: BenchView }) {
  if (view.changed.length === 0 && view.odd.length === 0) return null
  return (
    <section class="bench-changed" aria-label={b.changed}>
      {view.changed.length === 0 ? null : <h3>{b.changed}</h3>}
      {view.changed.map(c => (
        <p key={c}>{c}</p>
      ))}
      {view.odd.length === 0 ? null : <h3>{b.odd}</h3>}
      {view.odd.map(c => (
        <p key={c}>{c}</p>
      ))}
    </section>
  )
}

// What was recorded last stays in sight for some minutes, with the way back.
const SHOWN_MS = 10 * 60_000

function Recorded() {
  const last = lastRecord.value
  const old = last === null || now.value - last.ms > SHOWN_MS
  return (
    <div class="recorded">
      <p role="status">{old ? '' : b.recorded(last.says, clockTime(last.ms, now.value))}</p>
      {old ? null : (
        <button type="button" class="link" onClick={takeBack}>
          {b.undo}
        </button>
      )}
    </div>
  )
}

/** So long before a best time ends it is told once more, ms. */
const BEFORE_END_MS = 60 * 60_000

// While the page is open: told once as a time opens, and an hour before it closes.
function Alert({ step }: { readonly step: BenchStepView }) {
  const told = useRef(new Set<string>())
  const at = now.value
  const due = step.timers.flatMap(t => {
    const moments = [
      [`${t.says} open`, t.kind === 'until' ? null : t.openMs],
      [`${t.says} ends`, t.closeMs === null ? null : t.closeMs - BEFORE_END_MS]
    ] as const
    return moments.flatMap(([name, ms]) => (ms !== null && ms <= at && at - ms < 60_000 ? [{ name, t }] : []))
  })
  useEffect(() => {
    for (const { name } of due) {
      if (told.current.has(name)) continue
      told.current.add(name)
      ring()
    }
  })
  return (
    <p class="bench-alert" role="alert">
      {due.map(({ t }) => {
        const { ms, says } = countOf(t, at)
        const min = Math.ceil(ms / 60_000)
        return b.alert(t.says, `${min} ${b.units.minutes[min === 1 ? 0 : 1]} ${says}`)
      })}
    </p>
  )
}

function StopNote({ view }: { readonly view: BenchView }) {
  return (
    <section class="bench-stop" role="note">
      <h2>{b.stop}</h2>
      <ul class="plain">
        {view.stops.map(s => (
          <li key={s} class="bench-find stop">
            {capital(s)}
          </li>
        ))}
      </ul>
      <p class="f">
        {view.steps.length === 0 ? b.stopNone : b.stopSays}{' '}
        <a href={`/piece/${piece.value?.id}`} onClick={follow}>
          {b.toSheet}
        </a>
      </p>
      {view.makingSafe.length === 0 ? null : <SafetyLines lines={view.makingSafe} />}
    </section>
  )
}

function stateWords(): string {
  if (awaySince.value !== null) return b.keptHere
  return saving.value === 'saved' ? b.sent : b.sending
}
