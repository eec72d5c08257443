import { effect, signal } from '@preact/signals'
import type { BuyView } from '../worker/buy-view.ts'
import { askEngine } from './engine.ts'
import { piece } from './open-piece.ts'
import { shop } from './shop.ts'

/** What is bought for the piece on the desk. */
export const buy = signal<BuyView | null>(null)
export const buyFailure = signal<string | null>(null)

/** Keeps the list that of what is on the desk, until it is told to stop. */
export function watchBuy(): () => void {
  let made = ''
  let asked = 0
  const end = effect(() => {
    const at = piece.value
    const own = shop.value?.document ?? null
    if (at === null) return
    const { document, files, readings = [] } = at
    const key = JSON.stringify([document, own, readings, files])
    if (key === made) return
    made = key
    asked = askEngine(
      { kind: 'buy', document, files, readings, shop: own, asOf: new Date().toISOString() },
      answer => {
        if (answer.seq !== asked) return
        if (answer.kind === 'buy') {
          buy.value = answer.view
          buyFailure.value = null
          return
        }
        made = ''
        if (answer.kind === 'failed') buyFailure.value = answer.says
      }
    )
  })
  return () => {
    end()
    buy.value = null
    buyFailure.value = null
  }
}
