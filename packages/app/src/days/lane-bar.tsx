import { useRef, useState } from 'preact/hooks'
import { lookedTask, put } from '../state/days.ts'
import { daysWords as d } from '../text/days.ts'
import type { DayTaskView, DayView } from '../worker/days-view.ts'
import { minAt, pxOn, timeOn } from './lane-place.ts'
import { QUARTER_MIN } from './task-card.tsx'

/** A shorter pull is a press, px. */
const PULL_PX = 4

/** A bar of a task: pressed to read of it, pulled or pushed by keys to put it elsewhere. */
export function Bar({
  task,
  day,
  scale,
  place,
  words
}: {
  readonly task: DayTaskView
  readonly day: DayView
  readonly scale: number
  readonly place: {
    readonly left: number
    readonly width: number
    readonly top: number
    readonly height: number
  }
  readonly words: string
}) {
  const from = useRef<number | null>(null)
  const [pull, setPull] = useState(0)
  const style = {
    left: `${place.left + pull}px`,
    width: `${place.width}px`,
    top: `${place.top}px`,
    height: `${place.height}px`
  }
  if (task.lane === 'alone')
    return (
      <div class="bar alone" style={style} title={`${task.says}, ${task.when}`} aria-hidden="true">
        <span>{words}</span>
      </div>
    )
  const toMin = (px: number) => {
    const at = minAt(day, pxOn(day, task.startMin, scale) + px, scale)
    return Math.round(at / QUARTER_MIN) * QUARTER_MIN
  }
  return (
    <>
      {pull === 0 ? null : (
        <>
          <i class="ghost" style={{ ...style, left: `${place.left}px` }} />
          <span class="pull-time" style={{ left: style.left, top: `${place.top - 18}px` }}>
            {timeOn(day, toMin(pull))}
          </span>
        </>
      )}
      <button
        type="button"
        class={`bar ${task.lane}${pull === 0 ? '' : ' pulled'}${lookedTask.value === task.id ? ' looked' : ''}`}
        style={style}
        aria-label={`${task.says}, ${task.when}, ${d.lanes[task.lane]}`}
        aria-pressed={lookedTask.value === task.id}
        title={`${task.says}, ${task.when}`}
        onPointerDown={e => {
          if (!task.canMove || e.button !== 0) return
          from.current = e.clientX
          e.currentTarget.setPointerCapture(e.pointerId)
        }}
        onPointerMove={e => {
          if (from.current !== null) setPull(e.clientX - from.current)
        }}
        onPointerUp={e => {
          if (from.current === null) return
          const px = e.clientX - from.current
          from.current = null
          setPull(0)
          if (Math.abs(px) < PULL_PX) return
          lookedTask.value = task.id
          put(task.id, toMin(px))
        }}
        onPointerCancel={() => {
          from.current = null
          setPull(0)
        }}
        onClick={() => (lookedTask.value = task.id)}
        onKeyDown={e => {
          const step = e.key === 'ArrowRight' ? 1 : e.key === 'ArrowLeft' ? -1 : 0
          if (step === 0 || !task.canMove) return
          e.preventDefault()
          lookedTask.value = task.id
          put(task.id, Math.round(task.startMin + step * QUARTER_MIN))
        }}
      />
    </>
  )
}
