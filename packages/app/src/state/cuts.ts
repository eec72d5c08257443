import { effect, signal } from '@preact/signals'
import type { CutsView } from '../worker/cuts-view.ts'
import { askEngine } from './engine.ts'
import { piece, stale, view } from './open-piece.ts'
import { width } from './screen.ts'
import { shop } from './shop.ts'

/** The cuts of the piece on the desk, and how far they are: 0 to 1; null while nothing is made. */
export const cuts = signal<CutsView | null>(null)
export const cutsShare = signal<number | null>(null)
export const cutsFailure = signal<string | null>(null)

let wanted = false
let made = ''
let asked = 0

/** Makes the cuts of what is on the desk, and anew after each edit, until it is told to stop. */
export function watchCuts(): () => void {
  wanted = true
  const end = effect(() => {
    const v = view.value
    const at = piece.value
    const facts = `${width.value} ${at?.id} ${at?.revision}`
    if (v === null || at === null || stale.value) return
    ask(facts)
  })
  return () => {
    wanted = false
    end()
  }
}

function ask(facts: string): void {
  const at = piece.peek()
  const v = view.peek()
  if (at === null || v === null) return
  const { document, files, readings = [] } = at
  const key = `${facts} ${JSON.stringify([document, shop.peek()?.document, readings])}`
  if (key === made) return
  made = key
  cutsShare.value = 0
  const stops = v.findings.filter(f => f.severity === 'stop').map(f => f.id)
  asked = askEngine(
    {
      kind: 'cuts',
      document,
      files,
      readings,
      shop: shop.peek()?.document ?? null,
      width: width.peek(),
      stops
    },
    answer => {
      if (answer.seq !== asked || !wanted) return
      if (answer.kind === 'failed') {
        cutsFailure.value = answer.says
        cutsShare.value = null
        made = ''
      } else if (answer.kind === 'cuts') {
        cutsFailure.value = null
        cutsShare.value = answer.view === null ? answer.share : null
        if (answer.view !== null) cuts.value = answer.view
      }
    }
  )
}
