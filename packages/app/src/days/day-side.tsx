import { lastMoved, lookedTask } from '../state/days.ts'
import { edit } from '../state/desk.ts'
import { editShop } from '../state/shop.ts'
import { daysWords as d } from '../text/days.ts'
import type { DaysView } from '../worker/days-view.ts'
import { OrderPanel } from './order-panel.tsx'
import { TaskCard } from './task-card.tsx'

type Way = DaysView['waysOut'][number]
type MovedView = NonNullable<DaysView['moved']>

/** Beside the calendar: what moved or clashes, the ways out, what to order, and what is drawn. */
export function DaySide({ view: v }: { readonly view: DaysView }) {
  const looked = v.tasks.find(t => t.id === lookedTask.value)
  return (
    <div class="days-side">
      <div role="status">{lastMoved.value === null ? null : <MovedSays moved={lastMoved.value} />}</div>
      {looked === undefined ? null : (
        <section class="looked-task">
          <h3>{looked.says}</h3>
          <p class="f">{looked.when}</p>
          <TaskCard task={looked} />
        </section>
      )}
      {v.clash === null ? null : (
        <section class="clash">
          <h3>{v.clash.length > 1 ? d.clashing : d.clash}</h3>
          <ul>
            {v.clash.map(c => (
              <li key={c}>{c}</li>
            ))}
          </ul>
          {v.waysOut.length === 0 ? null : <h3>{d.ways}</h3>}
          {v.waysOut.map(way => (
            <WayRow key={way.id} way={way} />
          ))}
        </section>
      )}
      {v.orderBy.length === 0 ? null : (
        <section>
          <h3>{d.order}</h3>
          {v.orderBy.map(({ by, what }) => (
            <div key={by} class="order-by">
              <h4>{by}</h4>
              <ul class="plain">
                {what.map(o => (
                  <li key={o.name}>
                    {o.name} <span class="f">{d.orderDays(o.days)}</span>
                  </li>
                ))}
              </ul>
            </div>
          ))}
        </section>
      )}
      <OrderPanel />
      {v.days.length === 0 ? null : <Legend best={v.best.length > 0} />}
    </div>
  )
}

function Legend({ best }: { readonly best: boolean }) {
  return (
    <section class="legend">
      <h3>{d.legend}</h3>
      <ul>
        {(['hands', 'stay', 'machine', 'alone'] as const).map(l => (
          <li key={l}>
            <i class={`key ${l}`} />
            {d.lanes[l]}
          </li>
        ))}
        {best ? (
          <li class="lane-how">
            <i class="key best" />
            {d.bestKey}
          </li>
        ) : null}
        <li class="lane-how">
          <i class="key night" />
          {d.night}
        </li>
        <li class="lane-how">
          <i class="key away" />
          {d.away}
        </li>
      </ul>
      <p class="f lane-how">{d.howTo}</p>
    </section>
  )
}

function WayRow({ way }: { readonly way: Way }) {
  const { patch } = way
  return (
    <div class="way">
      <b>{way.says}</b>
      <p>
        {d.wayReady(way.ready)} {d.risk(way.risk)}
      </p>
      {patch === null ? (
        <p class="f">{d.byHand}</p>
      ) : (
        <button
          type="button"
          class="btn"
          onClick={() => (way.on === 'shop' ? void editShop(patch) : edit(d.waySays, patch))}
        >
          {d.takeWay}
          <span class="says-core">: {way.says}</span>
        </button>
      )}
    </div>
  )
}

function MovedSays({ moved: m }: { readonly moved: MovedView }) {
  if (m.clash !== null)
    return (
      <section class="clash">
        <h3>{d.notHere}</h3>
        <p>{m.says}</p>
        <ul>
          {m.clash.map(c => (
            <li key={c}>{c}</li>
          ))}
        </ul>
        <p class="f">{d.stays}</p>
      </section>
    )
  return (
    <section class="moved-says">
      <h3>{d.movedTo}</h3>
      <p>{m.says}</p>
      {m.outsideHours ? <p class="says-bad">{d.outside}</p> : null}
      <p>{m.readyMin === 0 ? d.same : (m.readyMin > 0 ? d.later : d.sooner)(d.span(m.readyMin))}</p>
      {m.others.length === 0 ? (
        <p class="f">{d.none}</p>
      ) : (
        <ul>
          {m.others.map(o => (
            <li key={o}>{o}</li>
          ))}
        </ul>
      )}
    </section>
  )
}
