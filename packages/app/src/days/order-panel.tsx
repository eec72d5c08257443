import { useEffect } from 'preact/hooks'
import { askOrders, orders, ordersFailure, ordersShare, takeOrder, watchOrders } from '../state/orders.ts'
import { orderWords as o } from '../text/orders.ts'
import type { OrdersView } from '../worker/orders-view.ts'

type Way = OrdersView['ways'][number]

/** Another order of the steps, looked for when it is asked for: the best first, each to be taken. */
export function OrderPanel() {
  useEffect(watchOrders, [])
  const v = orders.value
  const share = ordersShare.value
  return (
    <section class="order-search">
      <h3>{o.head}</h3>
      <div role="status">
        {share === null ? null : <p class="f">{o.looking(share)}</p>}
        {v === null ? null : <p>{o.found(v)}</p>}
      </div>
      {ordersFailure.value === null ? null : (
        <p class="says-bad" role="alert">
          {ordersFailure.value}
        </p>
      )}
      {v === null && share === null ? (
        <>
          <p class="f">{o.about}</p>
          <button type="button" class="btn" onClick={askOrders}>
            {o.ask}
          </button>
        </>
      ) : null}
      {v === null ? null : <Found view={v} />}
    </section>
  )
}

function Found({ view: v }: { readonly view: OrdersView }) {
  const others = v.ways.filter(w => !w.better)
  return (
    <>
      {v.ways
        .filter(w => w.better)
        .map(w => (
          <WayRow key={w.does} way={w} />
        ))}
      {others.length === 0 ? null : (
        <details>
          <summary>{o.others(others.length)}</summary>
          {others.map(w => (
            <WayRow key={w.does} way={w} />
          ))}
        </details>
      )}
      {v.refused.length === 0 ? null : (
        <details>
          <summary>{o.refused(v.refused.length)}</summary>
          <ul>
            {v.refused.map(r => (
              <li key={r.does}>
                <b>{r.does}</b>: {r.why}. <span class="f">{r.basis}</span>
              </li>
            ))}
          </ul>
        </details>
      )}
      <p class="f">{o.rule(v.rule)}</p>
    </>
  )
}

function WayRow({ way: w }: { readonly way: Way }) {
  return (
    <div class="way">
      <b>{w.does}</b>
      <p>{o.gains(w.gains)}</p>
      <p class="f">{o.figures(w)}</p>
      {w.gives.map(g => (
        <p key={g}>{o.gives(g)}</p>
      ))}
      {w.worse.map(f => (
        <p key={f} class="says-bad">
          {f}
        </p>
      ))}
      {w.rid.map(f => (
        <p key={f}>{o.rid(f)}</p>
      ))}
      <button type="button" class="btn" onClick={() => takeOrder(w)}>
        {o.take}
        <span class="says-core">: {w.does}</span>
      </button>
    </div>
  )
}
