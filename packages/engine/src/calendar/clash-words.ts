import { formatMinutes } from '../quantity/format.ts'
import type { CalendarClash, CalendarProblem, ClashMember } from './solve/problem.ts'
import type { Gap } from './task.ts'

/** A clash in a maker's words, one line a member. `time`, where it is given, says a moment: "Sat 28 Nov, 10:00". */
export function clashWords(
  problem: CalendarProblem,
  clash: CalendarClash,
  time: ((min: number) => string) | null = null
): string[] {
  return [...new Set(clash.members.map(m => memberWords(problem, m, time)))]
}

function memberWords(
  { tasks, gaps, asOfMin }: CalendarProblem,
  member: ClashMember,
  time: ((min: number) => string) | null
): string {
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
      return 'The hours at the bench'
    case 'as of':
      return at(asOfMin, 'Nothing begins before now,', 'Nothing begins before now')
  }
}

function gapWords(gap: Gap, side: 'least' | 'most', says: (id: string) => string): string {
  const after = `${says(gap.after)}: ${gap.to === 'end' ? 'over ' : ''}`
  const before = `${gap.from === 'start' ? 'the start of ' : ''}"${says(gap.before)}"`
  if (side === 'most')
    return `${after}${formatMinutes(gap.mostMin ?? 0)} after ${before} at the latest (${gap.says})`
  return gap.leastMin > 0
    ? `${after}${formatMinutes(gap.leastMin)} after ${before} at the soonest (${gap.says})`
    : `${after}not before ${before}${gap.from === 'start' ? '' : ' is over'} (${gap.says})`
}
