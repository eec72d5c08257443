import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import { daysWords as d } from '../text/days.ts'
import type { BestTime, DayTaskView, DayView } from '../worker/days-view.ts'
import { Bar } from './lane-bar.tsx'
import type { LaneRow } from './lane-place.ts'
import { labelsOf, pxOn, rowsOf, timeOn } from './lane-place.ts'

/** Heights of a row, px: days and hours, bars, a line of words, bars of what is left alone. */
const HEAD_PX = 44
const BAR_PX = 30
const WORDS_PX = 33
const ALONE_PX = 14

/** The calendar as lanes: a row for a week or so, what is attended above, what is left alone below. */
export function LaneRows({
  days,
  tasks,
  best
}: {
  readonly days: readonly DayView[]
  readonly tasks: readonly DayTaskView[]
  readonly best: readonly BestTime[]
}) {
  const box = useRef<HTMLDivElement>(null)
  const [width, setWidth] = useState(1000)
  useEffect(() => {
    const at = box.current
    if (at === null) return
    const seen = new ResizeObserver(() => setWidth(Math.max(320, at.clientWidth)))
    seen.observe(at)
    return () => seen.disconnect()
  }, [])
  const byId = useMemo(() => new Map(tasks.map(t => [t.id, t])), [tasks])
  return (
    <section class="lanes" aria-label={d.calendar}>
      <div ref={box}>
        {rowsOf(days, width).map(row => (
          <Row key={row.days[0]!.fromMin} row={row} tasks={byId} best={best} width={width} />
        ))}
      </div>
    </section>
  )
}

function Row({
  row,
  tasks,
  best,
  width
}: {
  readonly row: LaneRow
  readonly best: readonly BestTime[]
  readonly tasks: ReadonlyMap<string, DayTaskView>
  readonly width: number
}) {
  const { days, scale } = row
  const lefts: number[] = []
  let at = 0
  for (const day of days) {
    lefts.push(at)
    at += day.width * scale
  }
  const taken: number[] = []
  const labels = days.flatMap((day, n) =>
    labelsOf(day, tasks, { left: lefts[n]!, scale, width }, taken, d.visit)
  )
  const levels = taken.length
  const wordsAt = HEAD_PX + BAR_PX + 10
  // Of what is left alone over one another at most three are drawn apart; the rest lie over them.
  const lanes = aloneLanes(days)
  const aloneAt = (levels === 0 ? HEAD_PX + 6 : wordsAt + levels * WORDS_PX) + 4
  const height = aloneAt + Math.max(1, lanes.count) * (ALONE_PX + 18) + 4
  return (
    <div class="lane-row" style={{ height: `${height}px` }}>
      {days.map((day, n) => (
        <div
          key={day.fromMin}
          class={`lane-day${day.quiet ? ' quiet' : ''}`}
          style={{ left: `${lefts[n]}px`, width: `${day.width * scale}px` }}
        >
          {day.stretches.map(s =>
            s.kind === 'open' || day.quiet ? null : (
              <i
                key={s.fromMin}
                class={`shade ${s.kind}`}
                style={{ left: `${s.at * scale}px`, width: `${s.width * scale}px` }}
              />
            )
          )}
          {day.quiet ? null : best.map(b => <Best key={b.id} best={b} day={day} scale={scale} />)}
          <p class="lane-name">
            {day.quiet ? `${day.name} ${day.date.split(' ')[0]}` : <b>{`${day.name} ${day.date}`}</b>}
          </p>
          {day.ticks.map(t => (
            <span key={t.atMin} class="tick" style={{ left: `${pxOn(day, t.atMin, scale)}px` }}>
              {t.says}
            </span>
          ))}
        </div>
      ))}
      {labels.map(l => (
        <div key={`${l.id} ${l.atPx}`} aria-hidden="true">
          <i class="lead" style={{ left: `${l.atPx}px`, top: `${HEAD_PX + BAR_PX}px`, height: '10px' }} />
          {/* It goes on beside its words, not through those that stand above them. */}
          {l.level === 0 ? null : (
            <i
              class="lead"
              style={{ left: `${l.leftPx}px`, top: `${wordsAt + l.level * WORDS_PX - 4}px`, height: '18px' }}
            />
          )}
          <p class="lane-words" style={{ left: `${l.leftPx}px`, top: `${wordsAt + l.level * WORDS_PX}px` }}>
            <b>{l.says}</b>
            <span>{l.when}</span>
          </p>
        </div>
      ))}
      {days.flatMap((day, n) =>
        day.spans.map(s => {
          const task = tasks.get(s.id)!
          const left = lefts[n]! + pxOn(day, s.fromMin, scale)
          const right = lefts[n]! + pxOn(day, s.toMin, scale)
          const alone = s.lane === 'alone'
          const lane = lanes.of.get(s.id) ?? 0
          return (
            <Bar
              key={`${s.id} ${s.fromMin}`}
              task={task}
              day={day}
              scale={scale}
              place={{
                left,
                width: Math.max(alone ? 2 : 4, right - left),
                top: alone ? aloneAt + lane * (ALONE_PX + 18) : HEAD_PX,
                height: alone ? ALONE_PX : BAR_PX
              }}
              words={alone && (n === 0 || s.fromMin > day.fromMin) ? lanes.words(task) : ''}
            />
          )
        })
      )}
    </div>
  )
}

// The best time to do something, where it meets the day: its ends fade as wide as the doubt.
function Best({
  best: { says, ends },
  day,
  scale
}: {
  readonly best: BestTime
  readonly day: DayView
  readonly scale: number
}) {
  const [from, , , to] = ends
  if (to <= day.fromMin || from >= day.toMin) return null
  const within = (min: number) => pxOn(day, Math.min(day.toMin, Math.max(day.fromMin, min)), scale)
  const [left, full, fades, right] = ends.map(within) as [number, number, number, number]
  if (right - left < 2) return null
  const share = (px: number) => `${((100 * (px - left)) / (right - left)).toFixed(1)}%`
  // An end on another day is no end here: the colour goes on to the edge.
  const colour = 'var(--best-time)'
  const begin = from < day.fromMin ? colour : 'transparent'
  const end = to > day.toMin ? colour : 'transparent'
  const words = d.best(timeOn(day, Math.max(ends[1], day.fromMin)), timeOn(day, Math.min(ends[2], day.toMin)))
  return (
    <i
      class="best"
      title={`${says}, ${words}`}
      style={{
        left: `${left}px`,
        width: `${right - left}px`,
        background: `linear-gradient(to right, ${begin}, ${colour} ${share(full)}, ${colour} ${share(fades)}, ${end})`
      }}
    />
  )
}

const MOST_LANES = 3
/** Words under a short bar take the room of so long a one, min. */
const WORDS_MIN = 720

function aloneLanes(days: readonly DayView[]): {
  readonly of: ReadonlyMap<string, number>
  readonly count: number
  /** What stands under a bar: of those that lie over one another the first speaks for all. */
  readonly words: (task: DayTaskView) => string
} {
  const of = new Map<string, number>()
  const ends: number[] = []
  let last = ''
  const over = new Map<string, string>()
  for (const day of days)
    for (const s of day.spans) {
      if (s.lane !== 'alone') continue
      const had = of.get(s.id)
      let lane = had ?? ends.findIndex(e => e <= s.fromMin)
      if (lane < 0 && ends.length === MOST_LANES) {
        lane = MOST_LANES - 1
        over.set(s.id, last)
      } else {
        if (lane < 0) lane = ends.length
        if (lane === MOST_LANES - 1) last = s.id
      }
      of.set(s.id, lane)
      ends[lane] = Math.max(ends[lane] ?? 0, s.toMin, s.fromMin + WORDS_MIN)
    }
  const words = ({ id, says }: DayTaskView) => {
    if (over.has(id)) return ''
    const under = [...over.values()].filter(x => x === id).length
    return under === 0 ? says : `${says} ${d.more(under)}`
  }
  return { of, count: ends.length, words }
}
