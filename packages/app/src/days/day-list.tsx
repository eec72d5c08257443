import { lookedTask } from '../state/days.ts'
import { daysWords as d } from '../text/days.ts'
import type { DayTaskView, DayView } from '../worker/days-view.ts'
import { TaskCard } from './task-card.tsx'

/** The calendar in words, day by day: what a phone shows, and what is read aloud. */
export function DayList({
  days,
  tasks
}: {
  readonly days: readonly DayView[]
  readonly tasks: readonly DayTaskView[]
}) {
  const begin = (day: DayView) => tasks.filter(t => day.fromMin <= t.startMin && t.startMin < day.toMin)
  return (
    <section class="day-list" aria-label={d.list}>
      <h3>{d.list}</h3>
      {days.map(day => {
        const here = [...begin(day)].sort((a, b) => a.startMin - b.startMin)
        if (here.length === 0) return null
        return (
          <section key={day.fromMin}>
            <h4>
              {day.name} {day.date}
            </h4>
            <ul>
              {here.map(t => (
                <li key={t.id} class={`day-task ${t.lane}`}>
                  <button
                    type="button"
                    class="link"
                    aria-expanded={lookedTask.value === t.id}
                    onClick={() => (lookedTask.value = lookedTask.value === t.id ? null : t.id)}
                  >
                    <i class={`key ${t.lane}`} />
                    <span>
                      <b>{t.says}</b>
                      <span class="f">
                        {t.hours}, {d.lanes[t.lane]}
                      </span>
                    </span>
                  </button>
                  {lookedTask.value === t.id ? <TaskCard task={t} /> : null}
                </li>
              ))}
            </ul>
          </section>
        )
      })}
    </section>
  )
}
