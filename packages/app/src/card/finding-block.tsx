import { walkAt } from '../sheet/walk.ts'
import { edit } from '../state/desk.ts'
import { w } from '../text/words.ts'
import type { FindingView } from '../worker/views.ts'

/** A finding where it stands: what is the matter, the figures, the smallest change as a button, the basis a press away. */
export function FindingBlock({
  finding: f,
  named = false
}: {
  readonly finding: FindingView
  readonly named?: boolean
}) {
  return (
    <div
      class={`find ${f.severity}${walkAt.value === f.number ? ' at' : ''}`}
      id={`finding-${f.number}`}
      tabindex={-1}
    >
      <p class="says">
        <b class="k">{w.finding.kind[f.severity]}</b>{' '}
        {named && !f.says.startsWith(f.where) ? <b>{f.where}: </b> : null}
        {f.says}
      </p>
      {f.figures.length === 0 ? null : (
        <p class="figures">
          {f.figures.map(([word, figure, unit]) => (
            <span key={word}>
              <span class="q">{word}</span> {figure}
              <u>{unit}</u>
            </span>
          ))}
        </p>
      )}
      {f.fix === null || f.fixSays === null ? null : (
        <p class="fix">
          <button
            type="button"
            class={`btn${f.severity === 'stop' ? ' main' : ''}`}
            onClick={() => edit(f.fixSays!, f.fix!)}
          >
            {f.fixSays}
          </button>
        </p>
      )}
      <details class="why">
        <summary>{w.finding.why}</summary>
        <p class="basis">
          {f.basis}
          {f.settledBy === null ? null : ` ${w.finding.settledBy} ${f.settledBy}`}
        </p>
      </details>
    </div>
  )
}
