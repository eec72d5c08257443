import { computed, effect, signal, untracked } from '@preact/signals'
import type { CutsView } from '../worker/cuts-view.ts'
import { askedOnce, deskFacts } from './desk-ask.ts'
import { piece, stale, view } from './open-piece.ts'
import { width } from './screen.ts'

/** The cuts of the piece on the desk, and how far they are: 0 to 1; null while nothing is made. */
export const cuts = signal<CutsView | null>(null)
export const cutsShare = signal<number | null>(null)
export const cutsFailure = signal<string | null>(null)

let ask = askedOnce(cutsFailure)

/** The piece the cuts are of. */
const pieceId = computed(() => piece.value?.id)

// Programs of one piece are never shown or saved as those of another.
effect(() => {
  if (pieceId.value === undefined) return
  ask = askedOnce(cutsFailure)
  cuts.value = null
  cutsShare.value = null
  cutsFailure.value = null
})

/** Makes the cuts of what is on the desk, and anew after each edit, until it is told to stop. */
export function watchCuts(): () => void {
  return effect(() => {
    const planned = view.value
    const at = piece.value
    const wide = width.value
    if (planned === null || at === null || stale.value) return
    // A change of the shop is followed when its plan is there.
    const facts = untracked(deskFacts)!
    const stops = planned.findings.filter(f => f.severity === 'stop').map(f => f.id)
    const key = JSON.stringify([wide, at.id, at.revision, facts, stops])
    const made = ask(key, { kind: 'cuts', ...facts, width: wide, stops }, answer => {
      if (piece.peek()?.id !== at.id) return
      if (answer.kind !== 'cuts') cutsShare.value = null
      else {
        cutsShare.value = answer.view === null ? answer.share : null
        if (answer.view !== null) cuts.value = answer.view
      }
    })
    if (made) cutsShare.value = 0
  })
}
