import type { Days, DayTask, Finding } from '@castwright/engine'
import { formatHours, formatMinutes, localMoment } from '@castwright/engine'
import { columns, lineWidth, paint, plain, wrap } from './paint.ts'

const NAMES = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday']

/** The days as a terminal shows them: day by day, clock times of the shop, what passes by itself, what to order. */
export function daysReport(days: Days, findings: readonly Finding[] = []): string {
  const lines = [paint.strong(plain(days.names.join(', '))), '']
  const at = (min: number) => localMoment(days.originMs + min * 60_000, days.timeZone)
  if (days.clash !== null) {
    // What is too much to be placed clashes with nothing.
    const clashes = days.clash.says.length > 1
    lines.push(paint.stop(clashes ? 'No calendar: these do not go together.' : 'No calendar.'))
    for (const says of days.clash.says) lines.push(...hanging(says))
    if (days.waysOut.length > 0) lines.push('', paint.strong('Ways out'))
    for (const w of days.waysOut)
      lines.push(...hanging(`${w.says} Ready in ${Math.ceil(w.readyDays)} days. Risk: ${w.risk}.`))
    return `${lines.join('\n')}\n`
  }
  // What the lines below do not say by themselves.
  for (const f of findings.filter(x => x.id === 'order-late')) lines.push(...wrap(f.says, lineWidth()))
  for (const o of days.orderBy)
    lines.push(
      ...wrap(`Order ${plain(o.name)} by ${when(at(o.byMin))}: ${o.days} days on its way.`, lineWidth())
    )
  if (days.orderBy.length > 0) lines.push('')
  for (const says of days.notPlaced) lines.push(...wrap(says, lineWidth()))
  if (days.notPlaced.length > 0) lines.push('')
  const several = days.names.length > 1
  let day = ''
  let rows: string[][] = []
  const flush = () => {
    if (rows.length > 0) lines.push(...columns(rows, [false, false, true]), '')
    rows = []
  }
  for (const t of [...days.tasks].sort((a, b) => a.startMin - b.startMin || a.endMin - b.endMin)) {
    const begins = at(t.startMin)
    if (begins.slice(0, 10) !== day) {
      flush()
      day = begins.slice(0, 10)
      lines.push(paint.strong(`${NAMES[new Date(`${day}T12:00Z`).getUTCDay()]} ${day}`))
    }
    rows.push(row(t, begins, at(t.endMin), several ? days.names : null))
  }
  flush()
  days.readyMs!.forEach((ms, i) => {
    lines.push(
      `${several ? `${plain(days.names[i]!)}: ready` : 'Ready'} ${when(localMoment(ms, days.timeZone))}`
    )
  })
  lines.push(
    `${formatHours(days.handsOnMin)} of hands-on work in ${Math.ceil(days.calendarDays ?? 0)} days, ${days.visits} times at the bench`
  )
  if (days.lateMin > 0)
    lines.push(paint.caution(`Late by ${formatMinutes(days.lateMin)} for the date it is wanted`))
  if (!days.settled)
    lines.push(
      paint.caution('The windows still move with the hour of the pour: plan again on the day before it')
    )
  return `${lines.join('\n')}\n`
}

function row(t: DayTask, begins: string, ends: string, names: readonly string[] | null): string[] {
  const clock = `${begins.slice(11, 16)}-${begins.slice(0, 10) === ends.slice(0, 10) ? ends.slice(11, 16) : when(ends)}`
  const mark = t.alarmMin === null ? '' : `, alarm ${t.alarmMin} min before`
  const by = t.task.attended ? '' : ' (by itself)'
  const of = names === null ? '' : `${names[Number(t.task.piece) - 1]}: `
  return [`  ${clock}`, plain(`${of}${t.task.says}${by}${mark}`), formatMinutes(Math.max(1, workedMin(t)))]
}

function when(moment: string): string {
  return `${NAMES[new Date(`${moment.slice(0, 10)}T12:00Z`).getUTCDay()]!.slice(0, 3)} ${moment.slice(0, 10)} ${moment.slice(11, 16)}`
}

function hanging(says: string): string[] {
  const [first = '', ...rest] = wrap(says, lineWidth() - 4)
  return [`  - ${first}`, ...rest.map(r => `    ${r}`)]
}

// Without the nights and breaks between its parts.
function workedMin({ task, parts, startMin, endMin }: DayTask): number {
  return task.attended && parts.length > 0
    ? parts.reduce((sum, [from, to]) => sum + to - from, 0)
    : endMin - startMin
}
