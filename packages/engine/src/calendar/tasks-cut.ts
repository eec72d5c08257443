import { perimeter } from '../shape/measure.ts'
import { changeMin, faceM2 } from './machine-minutes.ts'
import { PRACTICE_WAIT } from './practice-minutes.ts'
import type { NewTask, OnStep, Reckoned, TaskList } from './task-list.ts'
import { byModel, byPractice } from './task-list.ts'
import type { MachineMinutes, TaskWork } from './task-work.ts'

/** How long what is sent out is away. */
function sentOutFor(days: number | undefined): Reckoned {
  return days === undefined
    ? {
        minutes: PRACTICE_WAIT.sentOut,
        basis: { from: 'practice', says: 'five working days: common practice, no source; ask them' }
      }
    : { minutes: days * 1440, basis: { from: 'shop', says: `${days} days, as the shop says` } }
}

const BASIS = {
  programs: 'by the moves of its programs',
  feeds: 'by area, feed and depth of a pass; its programs say it properly'
} as const

/** A face flattened, a cut or a marking made, holes drilled, waste or edges worked: by machine or by hand. */
export function cutIt(
  list: TaskList,
  on: OnStep,
  work: TaskWork,
  index: number,
  machine: readonly MachineMinutes[],
  zeroed: boolean,
  after: readonly string[]
): string[] {
  const { step, blanks } = on
  let last = [...after]
  const add = (task: NewTask) => {
    last = [list.add(on, task, last)]
  }
  const rows = machine.filter(m => m.step === index)
  const hands = work.hand.filter(h => h.step === index)
  for (const m of rows) byMachine(m, m === rows[0])
  for (const h of hands) {
    if (h.way === 'sent out') sentOut(h.id)
    else byHand(h.id, h.doing?.minutes ?? null, h.makingMinutes)
  }
  if (rows.length + hands.length === 0) unknown()
  return last

  function byMachine(m: MachineMinutes, first: boolean): void {
    const needs = ['hands', 'machine']
    const model = (minutes: number) => byModel(minutes, BASIS[m.by])
    if (first && !zeroed)
      add({
        what: 'zero',
        kind: 'pins',
        says: 'Clamp it on the machine and find zero',
        takes: byPractice('zero'),
        needs,
        times: blanks
      })
    // One cutter stays in for the whole row; of several each blank sees them all.
    const changes = m.changes * (cuttersOf(work, index, machine) > 1 ? blanks : 1)
    if (changes > 0)
      add({
        what: 'cutters',
        kind: 'cutter change',
        says: changes === 1 ? 'Put the cutter in' : `Change cutters ${changes} times`,
        takes: byModel(changes * changeMin(work), 'minutes of a change, as the shop says of its machine'),
        needs
      })
    if (m.testMin > 0)
      add({
        what: 'test cut',
        kind: 'test cut',
        says: `Test cut: ${words(on)}`,
        takes: model(m.testMin),
        needs
      })
    if (m.airMin > 0)
      add({
        what: 'air cut',
        kind: 'air cut',
        says: `Air cut: ${words(on)}`,
        takes: model(m.airMin),
        needs
      })
    add({
      what: 'run',
      kind: step.kind === 'flatten' ? 'flatten' : step.kind === 'drill pins' ? 'pins' : 'cut',
      says: step.says,
      takes: model(m.runMin),
      needs,
      times: blanks
    })
  }

  function byHand(id: string, minutes: number | null, making: number): void {
    if (making > 0)
      add({
        what: 'template',
        kind: 'hand cut',
        says: `Make the template of ${id}`,
        takes: byModel(making, 'practice of hand work: cuts/hand/bench-minutes.ts')
      })
    const takes: Reckoned =
      minutes === null
        ? byPractice('handCut')
        : byModel(minutes, 'practice of hand work, by length, depth and passes: cuts/hand/bench-minutes.ts')
    const kind = step.kind === 'flatten' ? 'flatten' : step.kind === 'work edges' ? 'edge' : 'hand cut'
    add({
      what: hands.length > 1 ? id : '',
      kind,
      says: hands.length > 1 ? `${step.says}: ${id}` : step.says,
      takes,
      times: blanks
    })
  }

  function sentOut(id: string): void {
    add({
      what: 'sent out',
      kind: 'outside',
      says: `${id} is cut by ${work.shop.sentOut?.firm ?? 'a shop outside'}`,
      takes: sentOutFor(work.shop.sentOut?.days),
      attended: false,
      needs: ['firm sent out']
    })
  }

  // No tool of ours reckons it.
  function unknown(): void {
    const lengthM = perimeter(work.stack.geometry.outline) / 1000
    switch (step.kind) {
      case 'flatten':
        add({
          what: '',
          kind: 'flatten',
          says: step.says,
          takes: byPractice('flatten', 1, faceM2(work)),
          times: blanks
        })
        break
      case 'drill pins':
        add({ what: '', kind: 'pins', says: step.says, takes: byPractice('pins'), times: blanks })
        break
      case 'trim':
        add({
          what: '',
          kind: 'hand cut',
          says: step.says,
          takes: byPractice('trimPerM', lengthM),
          times: blanks
        })
        break
      case 'work edges': {
        const runs = work.piece.edges.reduce((sum, e) => sum + (e.face === 'both' ? 2 : 1), 0)
        add({
          what: '',
          kind: 'edge',
          says: step.says,
          takes: byPractice('edgePerM', lengthM * runs),
          times: blanks
        })
        break
      }
      default:
        add({
          what: '',
          kind: step.kind === 'mark' ? 'mark' : 'hand cut',
          says: step.says,
          takes: byPractice('handCut'),
          times: blanks
        })
        break
    }
  }
}

// Cutters used from one turning over to the next; one that is still in from before counts too.
function cuttersOf(work: TaskWork, index: number, machine: readonly MachineMinutes[]): number {
  const turns = work.steps.flatMap((s, i) => (s.kind === 'turn over' ? [i] : []))
  const from = Math.max(0, ...turns.filter(t => t <= index))
  const to = Math.min(work.steps.length, ...turns.filter(t => t > index))
  const rows = machine.filter(m => m.step >= from && m.step < to).sort((a, b) => a.step - b.step)
  return rows.reduce((sum, m) => sum + m.changes, 0) + (rows[0]?.changes === 0 ? 1 : 0)
}

function words({ step }: OnStep): string {
  return step.cut?.id ?? step.marking?.id ?? step.says.charAt(0).toLowerCase() + step.says.slice(1)
}

/** A marking filled with resin. */
export function fillIt(list: TaskList, on: OnStep, work: TaskWork, after: readonly string[]): string[] {
  return [
    list.add(
      on,
      {
        what: '',
        kind: 'fill',
        says: on.step.says,
        takes: byPractice('fill', 1, faceM2(work)),
        times: on.blanks,
        // Between one blank and the next there is time.
        mayPause: on.blanks > 1
      },
      after
    )
  ]
}

/** The filling scraped level once it is hard. */
export function levelIt(list: TaskList, on: OnStep, work: TaskWork, after: readonly string[]): string {
  const id = on.step.marking!.id
  return list.add(
    on,
    {
      what: 'level',
      kind: 'level',
      says: `Scrape ${id} level`,
      takes: byPractice('levelFilling', 1, faceM2(work)),
      times: on.blanks
    },
    after
  )
}
