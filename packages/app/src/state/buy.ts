import { effect, signal } from '@preact/signals'
import { newId } from '../net/api.ts'
import type { BuyView } from '../worker/buy-view.ts'
import type { Json } from '../worker/document.ts'
import { momentAt } from './clock.ts'
import { askedOnce, deskFacts } from './desk-ask.ts'
import { record } from './sending.ts'

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

/** Keeps the quote as it stands among what was read, to be held against what comes of it. */
export function keepQuote({ keep }: BuyView): void {
  void record({ ...(keep as Json), id: newId(), at: momentAt(Date.now()) })
}
