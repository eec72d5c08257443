import { nearest } from '../piece/nearest.ts'
import type { Task } from './task.ts'
import type { TaskList } from './task-list.ts'

/** A task that the maker put at a moment, as the piece says. */
export interface PlacedTask {
  readonly task: string
  readonly at: string
}

/**
 * Puts tasks where the maker wants them: there they stay, and the rest goes round them. What is begun or done stays where
 * it was; a moment that is over without the task being begun binds nothing any more.
 */
export function placeByHand(list: TaskList, placed: readonly PlacedTask[], originMs: number): void {
  for (const { task, at } of placed) {
    const startMin = minutesTo(at, originMs)
    const i = list.tasks.findIndex(t => t.id === task)
    if (i < 0 || startMin < 0 || list.tasks[i]!.fixed !== null) continue
    list.tasks[i] = { ...list.tasks[i]!, fixed: { startMin, endMin: null, why: 'given' } }
  }
}

/** What of it could not be held, in words: a task that the piece does not have any more, a moment that is over. */
export function notPlaced(
  placed: readonly PlacedTask[],
  tasks: readonly Task[],
  originMs: number,
  name: (id: string) => string = id => id
): string[] {
  return placed.flatMap(({ task, at }) => {
    const found = tasks.find(t => t.id === name(task))
    if (found === undefined) {
      const near = nearest(
        task,
        tasks.map(t => t.id)
      )
      return [
        `“${task}” was put at ${at}, and no task is called so${near === null ? '' : `; the nearest is “${near}”`}.`
      ]
    }
    const over = minutesTo(at, originMs) < 0 && (found.fixed === null || found.fixed.why === 'given')
    return over ? [`${found.says} was put at ${at}, which is over: it is placed anew.`] : []
  })
}

function minutesTo(at: string, originMs: number): number {
  return Math.round((Date.parse(at) - originMs) / 60_000)
}
