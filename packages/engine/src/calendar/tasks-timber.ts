import { area } from '../shape/measure.ts'
import type { NewTask, OnStep, TaskList } from './task-list.ts'
import { byModel, byPractice } from './task-list.ts'
import type { TaskWork } from './task-work.ts'

/** Settling is waited for where the timber is this far from the balance of the shop, % moisture (practice). */
const SETTLED_WITHIN_PCT = 1

/** A timber milled, charred, settled and read; returns what has to end before it is used. */
export function prepareTimber(
  list: TaskList,
  on: OnStep,
  work: TaskWork,
  after: readonly string[]
): string[] {
  const entry = on.step.timber
  const indices = entry === undefined ? work.piece.timbers.map((_, i) => i) : [entry.index]
  let last = [...after]
  for (const i of indices) {
    const { id, value } = work.entries.timbers[i]!
    const areaM2 = area(work.stack.geometry.timbers[i]!.upper) / 1e6
    const add = (task: NewTask) => {
      const times = task.attended === false ? 1 : on.blanks
      const what = indices.length > 1 ? `${task.what} ${id}` : task.what
      last = [list.add(on, { ...task, times, what }, last)]
    }
    add({ what: 'mill', kind: 'mill', says: `Mill ${id}`, takes: byPractice('mill', 1, areaM2) })
    const { stand } = work.timberFacts[i]!
    const moisture = value.moisture
    const off = moisture === undefined ? 0 : Math.abs(moisture - stand.shopPct)
    if (off > SETTLED_WITHIN_PCT) {
      const days = stand.bareDays[1]
      add({
        what: 'settle',
        kind: 'settle',
        says: `Let ${id} settle to the air of the shop`,
        takes: byModel(days * 1440, 'nine tenths of a change through its thickness (timber/settle.ts)'),
        attended: false
      })
    }
    add({
      what: 'check',
      kind: 'prepare',
      says: `Read moisture and size of ${id}`,
      hazards: false,
      takes: byPractice('timberCheck')
    })
    if (value.charred > 0)
      add({
        what: 'char',
        kind: 'prepare',
        says: `Char ${id} and brush it out`,
        takes: byPractice('char', 1, areaM2)
      })
    add({ what: 'clean', kind: 'prepare', says: `Clean ${id}`, takes: byPractice('clean', 1, areaM2) })
  }
  return last
}

/** A timber placed in the mould and held down. */
export function setTimber(list: TaskList, on: OnStep, work: TaskWork, after: readonly string[]): string[] {
  const count = on.step.timber === undefined ? work.piece.timbers.length : 1
  const says = on.step.says
  const takes = byPractice('hold', count)
  return [list.add(on, { what: 'hold down', kind: 'set', says, takes, times: on.blanks }, after)]
}
