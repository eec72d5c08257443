import type { Task } from './task.ts'
import type { OnStep, TaskList } from './task-list.ts'
import { byPractice } from './task-list.ts'
import type { BoughtLine, TaskWork } from './task-work.ts'

/** Parts fitted. */
export function fitIt(list: TaskList, on: OnStep, after: readonly string[]): string[] {
  const count = on.step.hardware?.value.count ?? 1
  const takes = byPractice('fit', count)
  return [list.add(on, { what: '', kind: 'fit', says: on.step.says, takes, times: on.blanks }, after)]
}

const ON_ITS_WAY = ' is on its way'

/** What a delivery brings, by the words of its task. */
export function delivered({ says }: Pick<Task, 'says'>): string {
  return says.endsWith(ON_ITS_WAY) ? says.slice(0, -ON_ITS_WAY.length) : says
}

/** What is bought and not on the shelf, each before the first task it is needed for. */
export function deliveries(list: TaskList, work: TaskWork, first: ReadonlyMap<string, string>): void {
  for (const line of work.buy) {
    if (line.buy <= 0 || line.days === null || line.days <= 0) continue
    const needed = neededBy(line, work, first)
    if (needed === null) continue
    const id = list.add(
      null,
      {
        what: `delivery ${line.item}`,
        kind: 'delivery',
        says: `${line.name}${ON_ITS_WAY}`,
        takes: {
          minutes: line.days * 1440,
          basis: { from: 'shop', says: `${line.days} days, as the shop says` }
        },
        attended: false
      },
      []
    )
    list.gap({ before: id, after: needed, says: `${line.name} is here first` })
  }
}

/** What others make for the piece, each there before parts are fitted, else before it leaves. */
export function madeOutside(list: TaskList, work: TaskWork, first: ReadonlyMap<string, string>): void {
  for (const { work: what, firm, days } of work.piece.outside) {
    if (days <= 0) continue
    const fit = work.steps.findIndex(s => s.kind === 'fit')
    const at = fit < 0 ? work.steps.findLastIndex(s => s.kind === 'deliver') : fit
    const needed = first.get(String(at))
    if (needed === undefined) continue
    const id = list.add(
      null,
      {
        what: `delivery ${what}`,
        kind: 'delivery',
        says: `${what}: ${firm ?? 'made outside'}`,
        takes: { minutes: days * 1440, basis: { from: 'source', says: `${days} days, as the piece says` } },
        attended: false
      },
      []
    )
    list.gap({ before: id, after: needed, says: `${what} is here first` })
  }
}

// The first task of the step that uses it; of what no step names, the first of its kind of work.
function neededBy(line: BoughtLine, work: TaskWork, first: ReadonlyMap<string, string>): string | null {
  const { materials, piece } = work
  const of = (wanted: (step: TaskWork['steps'][number]) => boolean): string | null => {
    const at = work.steps.findIndex(wanted)
    return at < 0 ? null : (first.get(String(at)) ?? null)
  }
  switch (line.group) {
    case 'timber':
      return (
        of(
          s =>
            s.kind === 'prepare timber' &&
            (s.timber === undefined || materials.timbers[s.timber.index]!.id === line.item)
        ) ?? of(s => s.kind === 'prepare timber')
      )
    case 'mould':
      return of(s => s.kind === 'make mould')
    case 'resin':
      return (
        of(s => s.kind === 'pour' && s.pour!.value.resin === line.item) ??
        of(s => s.kind === 'fill' || s.kind === 'pour')
      )
    case 'stones':
      return of(
        s =>
          (s.kind === 'set stones' || s.kind === 'pour') &&
          (materials.stones[s.pour!.index] ?? []).some(x => x.id === line.item)
      )
    case 'colour':
      return (
        of(
          s =>
            s.kind === 'pour' && (materials.tints[s.pour!.index] ?? []).some(t => t.pigment.id === line.item)
        ) ?? of(s => s.kind === 'fill' || s.kind === 'pour')
      )
    case 'hardware':
      return (
        of(s => s.kind === 'fit' && materials.hardware[s.hardware!.index]!.id === line.item) ??
        (piece.hardware.length > 0 ? of(s => s.kind === 'pour') : null)
      )
    default:
      return of(s => s.kind === 'coat' || s.kind === 'sand')
  }
}
