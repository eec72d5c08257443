import { useEffect } from 'preact/hooks'
import { days, daysBusy, daysFailure, lastMoved, undoMove, watchDays } from '../state/days.ts'
import { piece } from '../state/desk.ts'
import { daysWords as d } from '../text/days.ts'
import type { DaysView } from '../worker/days-view.ts'
import { DayList } from './day-list.tsx'
import { DaySide } from './day-side.tsx'
import { LaneRows } from './lane-rows.tsx'
import './days.css'

/** The days of a piece: when what is done, and what may be moved. */
export function DaysScreen() {
  useEffect(watchDays, [])
  const v = days.value
  return (
    <main class="days" id="main">
      <section class="paper days-sheet" aria-label={d.region} aria-busy={daysBusy.value}>
        <header class="days-head">
          <div>
            {v === null ? null : <Says view={v} />}
            <p class="f days-state" role="status">
              {daysBusy.value ? d.making : ''}
            </p>
          </div>
          <p class="days-do">
            {lastMoved.value === null ? null : (
              <button type="button" class="btn" onClick={undoMove}>
                {d.undo}
              </button>
            )}
            {v === null || v.ics === '' ? null : (
              <button type="button" class="btn main" onClick={() => save(v.ics)}>
                {d.file}
              </button>
            )}
          </p>
        </header>
        {daysFailure.value === null ? null : (
          <p class="says-bad" role="alert">
            {daysFailure.value}
          </p>
        )}
        {v === null ? null : (
          <div class={`days-two${v.days.length === 0 ? ' bare' : ''}`}>
            {v.days.length === 0 ? null : (
              <div class="days-left">
                <LaneRows days={v.days} tasks={v.tasks} best={v.best} />
                <DayList days={v.days} tasks={v.tasks} />
              </div>
            )}
            <DaySide view={v} />
          </div>
        )}
      </section>
    </main>
  )
}

function Says({ view: v }: { readonly view: DaysView }) {
  if (v.ready === null) return <h2>{d.clash}</h2>
  return (
    <>
      <h2>
        <time dateTime={v.ready}>{d.ready(v.readyWords)}</time>
      </h2>
      <p>
        {d.cost(v.handsOn, v.calendarDays ?? 0, v.visits)} {v.late === null ? '' : d.late(v.late)}
      </p>
      {v.tightest === null ? null : <p class="f">{d.tightest(v.tightest.says, v.tightest.slack)}</p>}
      {v.notPlaced.map(says => (
        <p key={says} class="f">
          {says}
        </p>
      ))}
      {v.settled ? null : <p class="f">{d.unsettled}</p>}
    </>
  )
}

// Made in the worker: there without network as well.
function save(ics: string): void {
  const name = String(piece.value?.document['name'] ?? 'piece')
  const href = URL.createObjectURL(new Blob([ics], { type: 'text/calendar' }))
  const link = document.createElement('a')
  link.href = href
  link.download = `${name.replace(/[^\p{L}\p{N}]+/gu, '-').toLowerCase()}-days.ics`
  link.click()
  setTimeout(() => URL.revokeObjectURL(href), 10_000)
}
