import { effect, signal } from '@preact/signals'
import type { BuyView } from '../worker/buy-view.ts'
import { askedOnce, deskFacts } from './desk-ask.ts'

/** What is bought for the piece on the desk. */
export const buy = signal<BuyView | null>(null)
export const buyFailure = signal<string | null>(null)

/** Keeps the list that of what is on the desk, until it is told to stop. */
export function watchBuy(): () => void {
  const ask = askedOnce(buyFailure)
  const end = effect(() => {
    const facts = deskFacts()
    if (facts === null) return
    ask(JSON.stringify(facts), { kind: 'buy', ...facts, asOf: new Date().toISOString() }, answer => {
      if (answer.kind === 'buy') buy.value = answer.view
    })
  })
  return () => {
    end()
    buy.value = null
    buyFailure.value = null
  }
}
