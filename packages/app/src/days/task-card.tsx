import { days, letGo, put } from '../state/days.ts'
import { daysWords as d } from '../text/days.ts'
import type { DayTaskView } from '../worker/days-view.ts'

/** A move by key or button, min. */
export const QUARTER_MIN = 15

/** What a task takes and why, and where it may go. */
export function TaskCard({ task: t }: { readonly task: DayTaskView }) {
  return (
    <div class="task-card">
      <p>
        {d.takes(t.takes)} ({t.basis}). {t.slack === null ? '' : d.slack(t.slack)} {t.fixed ? d.given : ''}
      </p>
      {t.safety.map(s => (
        <p key={s}>{s}</p>
      ))}
      {t.canMove ? (
        <p class="task-move">
          <button type="button" class="btn" onClick={() => put(t.id, t.startMin - QUARTER_MIN)}>
            {d.earlier}
          </button>
          <button type="button" class="btn" onClick={() => put(t.id, t.startMin + QUARTER_MIN)}>
            {d.afterwards}
          </button>
          {t.placed && days.value?.placed.some(p => p.task === t.id) ? (
            <button type="button" class="btn" onClick={() => letGo(t.id)}>
              {d.letGo}
            </button>
          ) : null}
        </p>
      ) : null}
    </div>
  )
}
