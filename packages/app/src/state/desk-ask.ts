import type { Signal } from '@preact/signals'
import type { Answer, PlanAsk } from '../worker/messages.ts'
import type { Sent } from './engine.ts'
import { askEngine } from './engine.ts'
import { piece } from './open-piece.ts'
import { shop } from './shop.ts'

/** What the engine is told of the piece on the desk and of the shop; null: no piece is there. */
export function deskFacts(): Required<Pick<PlanAsk, 'document' | 'files' | 'readings' | 'shop'>> | null {
  const at = piece.value
  const kept = shop.value?.document ?? null
  if (at === null) return null
  const { document, files, readings = [] } = at
  return { document, files, readings, shop: kept }
}

/** Why there is no answer, in words; null: there is one. */
function troubleOf(answer: Answer): string | null {
  if (answer.kind === 'failed') return answer.says
  if (answer.kind !== 'refused') return null
  return answer.problems.map(p => `${p.path}: ${p.found}; ${p.allowed}`).join('\n')
}

/**
 * Asks of one kind: made only when their key is another one than before, only the newest is heard, and what went wrong
 * goes to `failure`, so that the same may be asked again. Each ask says whether it was made.
 */
export function askedOnce(
  failure: Signal<string | null>
): (key: string, ask: Sent, hear: (answer: Answer) => void) => boolean {
  let made = ''
  let asked = 0
  return (key, ask, hear) => {
    if (key === made) return false
    made = key
    asked = askEngine(ask, answer => {
      if (answer.seq !== asked) return
      failure.value = troubleOf(answer)
      if (failure.value !== null) made = ''
      hear(answer)
    })
    return true
  }
}
