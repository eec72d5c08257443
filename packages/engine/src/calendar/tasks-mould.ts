import { PRACTICE_WAIT } from './practice-minutes.ts'
import type { NewTask, OnStep, TaskList } from './task-list.ts'
import { byModel, byPractice } from './task-list.ts'
import type { TaskWork } from './task-work.ts'

/** The mould made, lined, sealed, levelled, tried with water and dried. */
export function makeMould(list: TaskList, on: OnStep, work: TaskWork, after: readonly string[]): string[] {
  const { mould, piece } = work
  const { boards, bearers, sealantLengthM } = mould.cutList
  const needs = ['hands', 'mould']
  // So many side by side: each is cut, sealed and lined; together they are set level and filled.
  const side = work.fills?.blanks[0] ?? 1
  let last = [...after]
  const add = (task: NewTask) => {
    // The lines at making a mould are those of the saw: they stand where it is cut, not where it is lined or filled.
    const hazards = task.what === 'cut and join'
    last = [list.add(on, { needs: task.attended === false ? ['mould'] : needs, hazards, ...task }, last)]
  }
  const count = boards.reduce((sum, b) => sum + b.count, 0)
  const boardWork = byPractice('mouldBoard', count)
  const bearerWork = byPractice('bearer', bearers?.count ?? 0)
  add({
    what: 'cut and join',
    kind: 'mould',
    says: 'Cut and join the mould',
    times: side,
    takes: {
      minutes: boardWork.minutes + bearerWork.minutes,
      basis: {
        from: 'practice',
        says: `${boardWork.basis.says}; bearers ${bearerWork.basis.says}`
      }
    }
  })
  if (sealantLengthM > 0) sealJoints()
  add({ what: 'level', kind: 'mould', says: 'Set the mould level', takes: byPractice('level') })
  if (piece.mould.waterTest) waterTest()
  return lined(
    list,
    on,
    work,
    { what: 'line', says: 'Line the mould', dries: 'liner dries', times: side },
    last
  )

  function sealJoints(): void {
    add({
      what: 'seal joints',
      kind: 'mould',
      says: 'Seal the joints',
      times: side,
      takes: byPractice('sealantPerM', sealantLengthM)
    })
    add({
      what: 'sealant',
      kind: 'dry',
      says: 'Sealant dries',
      takes: {
        minutes: piece.mould.sealant,
        basis: { from: 'source', says: 'as the piece says of its sealant' }
      },
      attended: false
    })
  }

  function waterTest(): void {
    add({
      what: 'fill with water',
      kind: 'water test',
      says: 'Fill it with water',
      takes: byPractice('waterFill')
    })
    const stands = (minutes: number) => ({
      minutes,
      basis: { from: 'practice' as const, says: `${minutes / 60} h: common practice, no source` }
    })
    add({
      what: 'water stands',
      kind: 'water test',
      says: 'Water stands in the mould',
      takes: stands(PRACTICE_WAIT.waterStands),
      attended: false
    })
    add({
      what: 'look for leaks',
      kind: 'water test',
      says: 'Look under every joint, then empty it',
      takes: byPractice('waterEmpty')
    })
    add({
      what: 'dry',
      kind: 'dry',
      says: 'The mould dries through',
      takes: stands(PRACTICE_WAIT.mouldDries),
      attended: false
    })
  }
}

/** The mould made ready for its next fill; returns what has to end before anything is laid into it. */
export function readyAgain(list: TaskList, on: OnStep, work: TaskWork, after: readonly string[]): string[] {
  const again = {
    what: 'ready again',
    says: 'Clean the mould and make its lining whole',
    dries: 'liner dries again'
  }
  return lined(list, on, work, { ...again, times: on.blanks }, after)
}

// The inside of so many moulds lined, and the liner ready.
function lined(
  list: TaskList,
  on: OnStep,
  work: TaskWork,
  as: { readonly what: string; readonly says: string; readonly dries: string; readonly times: number },
  after: readonly string[]
): string[] {
  const { liner } = work.materials
  const { what, says, times } = as
  const takes = byPractice('liner', 1, work.mould.cutList.releaseAreaM2)
  const needs = ['hands', 'mould']
  const ready =
    liner.kind === 'none' && what === 'line'
      ? [...after]
      : [list.add(on, { what, kind: 'mould', says, takes, needs, times, hazards: false }, after)]
  const readyH = liner.readyAfterH[1]
  if (readyH === 0) return ready
  return [
    list.add(
      on,
      {
        what: as.dries,
        kind: 'dry',
        says: `${liner.name} gets ready`,
        takes: byModel(readyH * 60, `${readyH} h by its catalogue row: ${liner.source}`),
        attended: false,
        needs: ['mould']
      },
      ready
    )
  ]
}
