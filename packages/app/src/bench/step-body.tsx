import { scaleWords } from '../../../engine/src/quantity/format.ts'
import type { RunAmounts } from '../../../engine/src/sheets/run-part.ts'
import { WordTable } from '../look/word-table.tsx'
import { benchWords as b } from '../text/bench.ts'
import type { BenchStepView } from '../worker/bench-view.ts'

/** What to do at a step, with its amounts, figures and the cautions that apply. */
export function StepBody({ step }: { readonly step: BenchStepView }) {
  return (
    <>
      {step.findings.map(f => (
        <p key={f.says} class={`bench-find ${f.kind}`}>
          {f.says}
        </p>
      ))}
      {step.amounts === null ? null : <Amounts amounts={step.amounts} />}
      {step.does.length === 0 ? null : (
        <ul class="bench-does">
          {step.does.map(d => (
            <li key={d}>{d}</li>
          ))}
        </ul>
      )}
      {step.facts.map(f => (
        <p key={f} class="bench-fact">
          {f}
        </p>
      ))}
      {step.tables.length === 0 ? null : (
        <div class="bench-table">
          {step.tables.map(t => (
            <WordTable key={t.title} head={t.head} rows={t.rows} caption={t.title} />
          ))}
        </div>
      )}
      {step.safety.length === 0 ? null : <SafetyLines lines={step.safety} />}
    </>
  )
}

/** Safety lines, each with what it gives way to. */
export function SafetyLines({ lines }: { readonly lines: BenchStepView['safety'] }) {
  return (
    <section class="bench-safety" aria-label={b.safety}>
      {lines.map(s => (
        <p key={s.line}>
          <b>{s.line}</b> {b.yields(s.defersTo.join('; '))}
        </p>
      ))}
    </section>
  )
}

function Amounts({ amounts: a }: { readonly amounts: RunAmounts }) {
  return (
    <table class="bench-mix">
      <caption>
        {b.batch(a.batches, a.blanks)}. {b.vessel(a.vessel)}
      </caption>
      <tbody>
        {a.shares.map(s => (
          <tr key={s.name}>
            <th scope="row">{s.name}</th>
            <td>
              <b>{s.words}</b> g
            </td>
            <td class="f">{s.ml === null ? '' : `${Math.round(s.ml)} ml`}</td>
          </tr>
        ))}
        <tr class="sum">
          <th scope="row">{b.total}</th>
          <td>
            <b>{scaleWords(a.totalG, a.places)}</b> g
          </td>
          <td />
        </tr>
      </tbody>
    </table>
  )
}
