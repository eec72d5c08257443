import { effect, signal } from '@preact/signals'
import type { Patch } from '../../../engine/src/piece/patch.ts'
import { applyPatch } from '../../../engine/src/piece/patch.ts'
import { daysWords as d } from '../text/days.ts'
import type { DayMove, DaysView } from '../worker/days-view.ts'
import { edit, piece, undo } from './desk.ts'
import { askedOnce, deskFacts } from './desk-ask.ts'

/** The days of the piece on the desk. */
export const days = signal<DaysView | null>(null)
export const daysFailure = signal<string | null>(null)
/** Whether days are being made. */
export const daysBusy = signal(false)
/** Tasks that were put by hand and are not in the piece yet. */
const moves = signal<readonly DayMove[]>([])
/** What the last task that was put did; null: none was put since the piece was changed otherwise. */
export const lastMoved = signal<DaysView['moved']>(null)
/** The task that is looked at. */
export const lookedTask = signal<string | null>(null)

/** How long the hand rests before what it put is kept in the piece, ms. */
const REST_MS = 700
let rest: ReturnType<typeof setTimeout> | undefined
/** The document as a move left it: another change of it ends what is said of the move. */
let movedTo = ''

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
      if (JSON.stringify(facts.document) !== movedTo) lastMoved.value = null
      if (put.length > 0) {
        clearTimeout(rest)
        moves.value = []
        return
      }
    }
    const key = JSON.stringify([base, put])
    const made = ask(key, { kind: 'days', ...facts, asOf, moves: put }, answer => {
      daysBusy.value = false
      if (answer.kind !== 'days') return
      days.value = answer.view
      if (moves.value.length === 0) return
      lastMoved.value = answer.view.moved
      clearTimeout(rest)
      if (answer.view.moved?.clash === null) rest = setTimeout(keepMoves, REST_MS)
      else moves.value = moves.value.slice(0, -1)
    })
    if (made) daysBusy.value = true
  })
  return () => {
    keepMoves()
    end()
    days.value = null
    daysFailure.value = null
    daysBusy.value = false
    moves.value = []
    lastMoved.value = null
    lookedTask.value = null
  }
}

// What was put goes into the piece: kept, sent, and taken back as any edit.
function keepMoves(): void {
  clearTimeout(rest)
  const view = days.value
  const at = piece.value
  if (view?.moved?.clash !== null || at === null || moves.value.length === 0) return
  const had = at.document['placed'] !== undefined
  const patch = [{ op: had ? 'replace' : 'add', path: '/placed', value: view.placed }] as unknown as Patch
  movedTo = JSON.stringify(applyPatch(at.document, patch))
  edit(d.putSays(view.moved.says), patch)
}

/** Lets a task that was put go where it fits. */
export function letGo(id: string): void {
  const view = days.value
  if (view === null) return
  const placed = view.placed.filter(p => p.task !== id)
  edit(d.letGoSays, [{ op: 'replace', path: '/placed', value: placed }] as unknown as Patch)
}

/** Puts a task at a moment: the rest moves. */
export function put(id: string, toMin: number): void {
  // One that is pushed again and again is one move.
  const last = moves.value.at(-1)
  const before = last?.id === id ? moves.value.slice(0, -1) : moves.value
  moves.value = [...before, { id, toMin }]
}

/** Takes the last move back, whether it is in the piece already or not. */
export function undoMove(): void {
  clearTimeout(rest)
  lastMoved.value = null
  if (moves.value.length > 0) moves.value = moves.value.slice(0, -1)
  else undo()
}
