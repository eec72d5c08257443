import { formatMinutes } from '../quantity/format.ts'
import type { CalendarClash, CalendarProblem, ClashMember } from './solve/problem.ts'

/** A clash in a maker's words, one line a member. */
export function clashWords(problem: CalendarProblem, clash: CalendarClash): string[] {
  return [...new Set(clash.members.map(m => memberWords(problem, m)))]
}

function memberWords({ tasks, gaps }: CalendarProblem, member: ClashMember): string {
  const says = (id: string) => tasks.find(t => t.id === id)?.says ?? id
  switch (member.kind) {
    case 'gap': {
      const gap = gaps[member.gap]!
      return member.side === 'least'
        ? `${says(gap.after)}: ${formatMinutes(gap.leastMin)} after "${says(gap.before)}" at the soonest (${gap.says})`
        : `${says(gap.after)}: ${formatMinutes(gap.mostMin ?? 0)} after "${says(gap.before)}" at the latest (${gap.says})`
    }
    case 'task': {
      const task = tasks.find(t => t.id === member.id)!
      return `${task.says}: takes ${formatMinutes(task.minutes)}${task.attended ? (task.mayPause ? ' of somebody' : ' of somebody, in one go') : ''}`
    }
    case 'fixed':
      return `${says(member.id)}: its moment is given`
    case 'not before':
      return `${says(member.id)}: not before its date`
    case 'due':
      return `${says(member.id)}: has to end by its date`
    case 'hours':
      return 'the hours at the bench'
    case 'as of':
      return 'nothing begins before now'
  }
}
