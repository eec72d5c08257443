import { effect, signal } from '@preact/signals'
import type { OrdersView } from '../worker/orders-view.ts'
import { edit } from './desk.ts'
import { askedOnce, deskFacts } from './desk-ask.ts'

/** Other orders of the steps; null: none were looked for. */
export const orders = signal<OrdersView | null>(null)
export const ordersFailure = signal<string | null>(null)
/** How far the search is, 0 to 1; null: none is on its way. */
export const ordersShare = signal<number | null>(null)

let ask = askedOnce(ordersFailure)

/** Looks for another order of the steps of what is on the desk. */
export function askOrders(): void {
  const facts = deskFacts()
  if (facts === null) return
  ask = askedOnce(ordersFailure)
  ordersShare.value = 0
  orders.value = null
  ask(JSON.stringify(facts), { kind: 'orders', ...facts, asOf: new Date().toISOString() }, answer => {
    ordersShare.value = answer.kind === 'orders' && answer.view === null ? answer.share : null
    if (answer.kind === 'orders' && answer.view !== null) orders.value = answer.view
  })
}

/** What was found is of one piece and shop: an edit puts it away. Until it is told to stop. */
export function watchOrders(): () => void {
  let laid: string | null = null
  const forget = () => {
    ask = askedOnce(ordersFailure)
    orders.value = null
    ordersFailure.value = null
    ordersShare.value = null
  }
  const end = effect(() => {
    const base = JSON.stringify(deskFacts())
    if (laid !== null && base !== laid) forget()
    laid = base
  })
  return () => {
    end()
    forget()
  }
}

export function takeOrder(way: OrdersView['ways'][number]): void {
  edit(way.does, way.patch)
}
