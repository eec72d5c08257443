import { formatMinutes } from '../quantity/format.ts'
import type { CalendarClash, CalendarProblem, ClashMember } from './solve/problem.ts'
import type { Gap } from './task.ts'

/** A clash in a maker's words, one line a member. `time`, where it is given, says a moment: "Sat 28 Nov, 10:00". */
export function clashWords(
  problem: CalendarProblem,
  clash: CalendarClash,
  time: ((min: number) => string) | null = null
): string[] {
  const { members } = clash
  const sides = (gap: number) => members.filter(m => m.kind === 'gap' && m.gap === gap).length
  const said = members.flatMap((m, i): string[] => {
    if (m.kind !== 'gap' || sides(m.gap) < 2) return [memberWords(problem, m, time)]
    // Both sides of one window are said as one.
    const first = members.findIndex(o => o.kind === 'gap' && o.gap === m.gap)
    return first === i ? [windowWords(problem, problem.gaps[m.gap]!)] : []
  })
  return [...new Set(said)]
}

function windowWords({ tasks }: CalendarProblem, gap: Gap): string {
  const says = (id: string) => tasks.find(t => t.id === id)?.says ?? id
  const { after, before } = endsWords(gap, says)
  return `${after}${formatMinutes(gap.leastMin)} to ${formatMinutes(gap.mostMin ?? 0)} after ${before} (${gap.says})`
}

/** Closed longer than this is told: longer than a night. Practice. */
const NIGHT_MIN = 16 * 60

// What of the hours stands against a task: how long they last, and how long they are away.
function hoursWords({ openings }: CalendarProblem): string {
  if (openings.length === 0) return 'The hours at the bench: there are none'
  let open = 0
  let closed = 0
  openings.forEach(([from, to], i) => {
    open = Math.max(open, to - from)
    if (i > 0) closed = Math.max(closed, from - openings[i - 1]![1])
  })
  const away = closed > NIGHT_MIN ? `, closed for up to ${formatMinutes(closed)} between` : ''
  return `The hours at the bench: open for ${formatMinutes(open)} at the most${away}`
}

function memberWords(
  problem: CalendarProblem,
  member: ClashMember,
  time: ((min: number) => string) | null
): string {
  const { tasks, gaps, asOfMin } = problem
  const of = (id: string) => tasks.find(t => t.id === id)
  const says = (id: string) => of(id)?.says ?? id
  const at = (min: number | null | undefined, given: string, plain: string) =>
    time === null ? plain : `${given} ${time(min ?? 0)}`
  switch (member.kind) {
    case 'gap':
      return gapWords(gaps[member.gap]!, member.side, says)
    case 'task': {
      const task = of(member.id)!
      return `${task.says}: takes ${formatMinutes(task.minutes)}${task.attended ? (task.mayPause ? ' of somebody' : ' of somebody, in one go') : ''}`
    }
    case 'fixed':
      return `${says(member.id)}: ${at(of(member.id)?.fixed?.startMin, 'stands at', 'its moment is given')}`
    case 'not before':
      return `${says(member.id)}: ${at(of(member.id)?.notBeforeMin, 'not before', 'not before its date')}`
    case 'due':
      return `${says(member.id)}: ${at(of(member.id)?.dueMin, 'has to end by', 'has to end by its date')}`
    case 'hours':
      return hoursWords(problem)
    case 'as of':
      return at(asOfMin, 'Nothing begins before now,', 'Nothing begins before now')
  }
}

function gapWords(gap: Gap, side: 'least' | 'most', says: (id: string) => string): string {
  const { after, before } = endsWords(gap, says)
  if (side === 'most')
    return `${after}${formatMinutes(gap.mostMin ?? 0)} after ${before} at the latest (${gap.says})`
  return gap.leastMin > 0
    ? `${after}${formatMinutes(gap.leastMin)} after ${before} at the soonest (${gap.says})`
    : `${after}not before ${before}${gap.from === 'start' ? '' : ' is over'} (${gap.says})`
}

function endsWords(
  gap: Gap,
  says: (id: string) => string
): { readonly after: string; readonly before: string } {
  return {
    after: `${says(gap.after)}: ${gap.to === 'end' ? 'over ' : ''}`,
    before: `${gap.from === 'start' ? 'the start of ' : ''}“${says(gap.before)}”`
  }
}
