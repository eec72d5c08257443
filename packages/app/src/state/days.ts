import { effect, signal } from '@preact/signals'
import type { DayMove, DaysView } from '../worker/days-view.ts'
import { askedOnce, deskFacts } from './desk-ask.ts'

/** The days of the piece on the desk. */
export const days = signal<DaysView | null>(null)
export const daysFailure = signal<string | null>(null)
/** Whether days are being made. */
export const daysBusy = signal(false)
/** Tasks that were put by hand, in their order; taken back from the end. */
export const moves = signal<readonly DayMove[]>([])
/** The task that is looked at. */
export const lookedTask = signal<string | null>(null)

/** Keeps the days those of what is on the desk, until it is told to stop. */
export function watchDays(): () => void {
  const ask = askedOnce(daysFailure)
  let laid = ''
  let asOf = new Date().toISOString()
  const end = effect(() => {
    const facts = deskFacts()
    const put = moves.value
    if (facts === null) return
    const base = JSON.stringify(facts)
    // Minutes count from one moment as long as nothing else changes: what was put stays where it was put.
    if (base !== laid) {
      laid = base
      asOf = new Date().toISOString()
      if (put.length > 0) {
        moves.value = []
        return
      }
    }
    const key = JSON.stringify([base, put])
    const made = ask(key, { kind: 'days', ...facts, asOf, moves: put }, answer => {
      daysBusy.value = false
      if (answer.kind === 'days') days.value = answer.view
    })
    if (made) daysBusy.value = true
  })
  return () => {
    end()
    days.value = null
    daysFailure.value = null
    daysBusy.value = false
    moves.value = []
    lookedTask.value = null
  }
}

/** Puts a task at a moment: the rest moves. */
export function put(id: string, toMin: number): void {
  // One that is pushed again and again is one move.
  const last = moves.value.at(-1)
  const before = last?.id === id ? moves.value.slice(0, -1) : moves.value
  moves.value = [...before, { id, toMin }]
}

export function undoMove(): void {
  moves.value = moves.value.slice(0, -1)
}
