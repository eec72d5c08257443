import { useEffect } from 'preact/hooks'
import { buy, buyFailure, keepQuote, watchBuy } from '../state/buy.ts'
import { follow } from '../state/route.ts'
import { buyWords as b } from '../text/buy.ts'
import { w } from '../text/words.ts'
import type { BuyView } from '../worker/buy-view.ts'
import './buy.css'

/** What is bought: need, shelf, whole packs, price, by when; cost and price of the piece beside it. */
export function BuyScreen() {
  useEffect(watchBuy, [])
  const v = buy.value
  return (
    <main class="buying" id="main">
      {v === null ? (
        <section class="paper" aria-busy="true">
          <p class="f" role="status">
            {buyFailure.value ?? w.state.loading}
          </p>
        </section>
      ) : (
        <>
          <List view={v} />
          <Money view={v} />
        </>
      )}
    </main>
  )
}

function List({ view: v }: { readonly view: BuyView }) {
  return (
    <section class="paper" aria-labelledby="buy-list">
      <h2 id="buy-list">
        {b.list} <span class="f">{b.for(v.blanks)}</span>
      </h2>
      <p>
        {v.paid === null ? (
          <>
            {b.noPrices}{' '}
            <a href="/shop" onClick={follow}>
              {b.toShop}
            </a>
          </>
        ) : (
          `${b.paid(v.paid, v.currency)}${v.unpriced > 0 ? `; ${b.unpriced(v.unpriced)}` : ''}`
        )}
      </p>
      {v.order.length === 0 ? null : (
        <>
          <h3>{b.order}</h3>
          <ul class="plain">
            {v.order.map(({ by, what }) => (
              <li key={by}>
                <b>{by}</b> {what.map(o => o.name).join('; ')}
              </li>
            ))}
          </ul>
        </>
      )}
      <div class="buy-scroll" tabIndex={0} role="group" aria-label={b.list}>
        <table>
          <thead>
            <tr>
              {[b.head.item, b.head.need, b.head.stock, b.head.buy, b.price(v.currency)].map(h => (
                <th key={h} scope="col">
                  {h}
                </th>
              ))}
            </tr>
          </thead>
          {v.groups.map(g => (
            <tbody key={g.title}>
              <tr class="g">
                <th colSpan={5} scope="colgroup">
                  {g.title}
                </th>
              </tr>
              {g.rows.map(r => (
                <tr key={r.name + r.note}>
                  <th scope="row">
                    {r.name}
                    <small>
                      {[r.note, r.days ? b.arrives(r.days) : ''].filter(s => s !== '').join('; ')}
                    </small>
                  </th>
                  <td>{r.need}</td>
                  <td>{r.stock ?? b.none}</td>
                  <td>
                    <b>{r.buy}</b>
                  </td>
                  <td>{r.cost ?? <span class="f">{b.noPrice}</span>}</td>
                </tr>
              ))}
            </tbody>
          ))}
        </table>
      </div>
    </section>
  )
}

function Money({ view: v }: { readonly view: BuyView }) {
  return (
    <section class="paper" aria-labelledby="buy-cost">
      <h2 id="buy-cost">{b.cost}</h2>
      <p class="f">{b.own}</p>
      <Parts parts={v.quote} />
      <p class="keep">
        <button type="button" class="btn" onClick={() => keepQuote(v)}>
          {b.keep}
        </button>{' '}
        <span class="f" role="status">
          {v.keptOn === null ? b.keepWhy : b.kept(v.keptOn)}
        </span>
      </p>
      {v.actual.length === 0 ? null : (
        <>
          <h3>{b.actual}</h3>
          <Parts parts={v.actual} />
        </>
      )}
    </section>
  )
}

function Parts({ parts }: { readonly parts: BuyView['quote'] }) {
  return parts.map(part => (
    <details key={part.head} open={part.rows.length <= 6}>
      <summary>{part.head}</summary>
      <ul>
        {part.rows.map(r => (
          <li key={r}>{r}</li>
        ))}
      </ul>
    </details>
  ))
}
