import type { StepRecord } from './step-times.ts'
import type { TaskList } from './task-list.ts'

/**
 * Puts what was begun or done where it was. A step that is done holds the span from its beginning to its end, shared by
 * its tasks as their minutes are; one that is begun fixes its first task, a pour its first stir. What stands before something begun, and is
 * not said to be done, was done before it.
 */
export function fixByRecords(
  list: TaskList,
  keys: readonly string[],
  records: ReadonlyMap<string, StepRecord>,
  originMs: number
): void {
  const min = (ms: number) => Math.round((ms - originMs) / 60_000)
  // From the last recorded step back: what lies before it is done.
  let known: number | null = null
  for (let k = keys.length - 1; k >= 0; k--) {
    const key = keys[k]!
    const record = records.get(key)
    const began = record?.beganMs ?? null
    const done = record?.doneMs ?? null
    const mine = list.tasks.flatMap((t, i) => (t.step === key ? [i] : []))
    if (mine.length === 0) continue
    const total = mine.reduce((sum, i) => sum + list.tasks[i]!.minutes, 0)
    if (done !== null || (known !== null && (began === null || record?.implied === true))) {
      const endMin: number = done !== null ? min(done) : known!
      const startMin =
        began !== null
          ? Math.min(min(began), endMin)
          : done !== null
            ? endMin - (record?.tookMin ?? 0)
            : endMin
      let at = startMin
      for (const i of mine) {
        const end: number = total > 0 ? at + ((endMin - startMin) * list.tasks[i]!.minutes) / total : endMin
        list.tasks[i] = {
          ...list.tasks[i]!,
          fixed: { startMin: Math.round(at), endMin: Math.round(end), why: 'done' }
        }
        at = end
      }
      known = known === null ? startMin : Math.min(known, startMin)
    } else if (began !== null) {
      // A pour begins with its first stir: by then it was weighed out.
      const stir = mine.findIndex(i => list.tasks[i]!.kind === 'mix' && list.tasks[i]!.says.startsWith('Mix'))
      mine.slice(0, Math.max(0, stir) + 1).forEach((i, k) => {
        const endMin = k < stir ? min(began) : null
        const why = k < stir ? 'done' : 'begun'
        list.tasks[i] = { ...list.tasks[i]!, fixed: { startMin: min(began), endMin, why } }
      })
      known = known === null ? min(began) : Math.min(known, min(began))
    }
  }
}
