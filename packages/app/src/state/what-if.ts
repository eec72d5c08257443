import { signal } from '@preact/signals'
import type { WhatIfView } from '../worker/views.ts'
import { deskFacts } from './desk-ask.ts'
import { askEngine } from './engine.ts'
import { units } from './preferences.ts'

/** What is tried at a pour: nothing of it is in the piece. */
export interface Tried {
  readonly pour: number
  /** As cast, mm; null: as it stands. */
  readonly depthMm: number | null
  readonly roomK: number
}

export const tried = signal<Tried | null>(null)
/** What would come of it; null until it is known. */
export const triedView = signal<WhatIfView | null>(null)
/** Whether a better answer is on its way. */
export const triedShare = signal(1)
/** Why it cannot be tried, in words; empty when it can. */
export const triedSays = signal('')

let asked = 0

/** Tries a depth or a room at a pour; both as they stand: nothing is tried any more. */
export function tryOut(next: Tried | null): void {
  const facts = deskFacts()
  const nothing = next === null || (next.depthMm === null && next.roomK === 0)
  tried.value = next
  triedSays.value = ''
  if (nothing || facts === null) {
    asked = 0
    triedView.value = null
    triedShare.value = 1
    return
  }
  asked = askEngine({ kind: 'what-if', ...facts, shown: units.value, ...next }, answer => {
    if (answer.seq !== asked) return
    if ('share' in answer) triedShare.value = answer.share
    if (answer.kind === 'what-if') triedView.value = answer.view
    else if (answer.kind === 'refused')
      triedSays.value = answer.problems.map(p => `found ${p.found}; allowed: ${p.allowed}`).join('. ')
    else if (answer.kind === 'failed') triedSays.value = answer.says
  })
}
