import { signal } from '@preact/signals'
import type { WhatIfView } from '../worker/views.ts'
import { askEngine } from './engine.ts'
import { piece } from './open-piece.ts'
import { units } from './preferences.ts'
import { shop } from './shop.ts'

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
  const at = piece.value
  const nothing = next === null || (next.depthMm === null && next.roomK === 0)
  tried.value = next
  triedSays.value = ''
  if (nothing || at === null) {
    asked = 0
    triedView.value = null
    triedShare.value = 1
    return
  }
  asked = askEngine(
    {
      kind: 'what-if',
      document: at.document,
      files: at.files,
      readings: at.readings ?? [],
      shop: shop.value?.document ?? null,
      shown: units.value,
      ...next
    },
    answer => {
      if (answer.seq !== asked) return
      if ('share' in answer) triedShare.value = answer.share
      if (answer.kind === 'what-if') triedView.value = answer.view
      else if (answer.kind === 'refused')
        triedSays.value = answer.problems.map(p => `found ${p.found}; allowed: ${p.allowed}`).join('. ')
      else if (answer.kind === 'failed') triedSays.value = answer.says
    }
  )
}
