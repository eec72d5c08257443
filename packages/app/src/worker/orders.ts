import type { OrderFigures } from '../../../engine/src/orders/order-plan.ts'
import { ORDER_RULE } from '../../../engine/src/orders/order-rank.ts'
import type { Orders } from '../../../engine/src/orders/orders.ts'
import { orderSteps } from '../../../engine/src/orders/orders.ts'
import { formatMinutes } from '../../../engine/src/quantity/format.ts'
import { timeWords } from './days.ts'
import type { Ask } from './messages.ts'
import type { OrderFiguresView, OrdersView } from './orders-view.ts'
import type { GoingOn } from './planner.ts'
import { inputOf } from './planner.ts'

type OrdersAsk = Extract<Ask, { kind: 'orders' }>

/** The search for another order of the steps: one plan a slice, so that an edit made meanwhile is heard. */
export function ordersGoingOn(ask: OrdersAsk): GoingOn {
  const { seq, asOf } = ask
  const input = inputOf(ask)
  const search = orderSteps(input, { asOf, effort: 'full' })
  return {
    seq,
    slice: async () => {
      const { done, value } = search.next()
      return done
        ? {
            answer: { kind: 'orders', seq, view: viewOf(value, input.shop.timeZone), share: 1 },
            more: false
          }
        : { answer: { kind: 'orders', seq, view: null, share: Math.min(0.99, value) }, more: true }
    }
  }
}

function viewOf(orders: Orders, timeZone: string): OrdersView {
  const at = timeWords({ timeZone, originMs: 0 })
  const words = (f: OrderFigures): OrderFiguresView => ({
    ready: f.readyMs === null ? '' : at(f.readyMs / 60_000),
    handsOn: formatMinutes(f.handsMin),
    visits: f.visits,
    stops: f.stops,
    cautions: f.cautions
  })
  return {
    given: words(orders.given),
    ways: orders.ways.map(w => ({
      ...words(w.figures),
      does: w.does,
      gains: w.gains,
      better: w.better,
      gives: w.gives,
      worse: w.worse.map(f => f.says),
      rid: w.rid.map(f => f.says),
      patch: w.patch
    })),
    refused: orders.refused,
    looked: orders.looked,
    whole: orders.whole,
    rule: ORDER_RULE
  }
}
