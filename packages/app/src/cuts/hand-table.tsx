import { Fragment } from 'preact'
import { useState } from 'preact/hooks'
import { formatMinutes } from '../../../engine/src/quantity/format.ts'
import { lengthIn } from '../../../engine/src/quantity/shown-units.ts'
import { units } from '../state/preferences.ts'
import { cutsWords as c } from '../text/cuts.ts'
import type { HandRow } from '../worker/cuts-view.ts'

/** Cuts by hand in the order of the steps: way, tool, offset, passes, minutes; pressed, a row says what to do. */
export function HandTable({ rows }: { readonly rows: readonly HandRow[] }) {
  const [open, setOpen] = useState<string | null>(null)
  const mm = (v: number | null, places = 1) => (v === null ? '' : lengthIn(units.value, v, places))
  const cutting = rows.reduce((sum, r) => sum + (r.minutes ?? 0), 0)
  const making = rows.reduce((sum, r) => sum + r.makingMinutes, 0)
  return (
    <section class="by-hand" aria-label={c.hand}>
      <h2>{c.hand}</h2>
      <table class="programs">
        <thead>
          <tr>
            <th scope="col">{c.head.cut}</th>
            <th scope="col">{c.head.way}</th>
            <th scope="col">{c.head.tool}</th>
            <th scope="col" class="q">
              {c.head.offset}
            </th>
            <th scope="col" class="q">
              {c.head.radius}
            </th>
            <th scope="col" class="q">
              {c.head.passes}
            </th>
            <th scope="col" class="q">
              {c.head.time}
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((r, i) => {
            const key = `${r.at} ${i}`
            return (
              <Fragment key={key}>
                <tr class={`${r.cannot === null ? '' : 'stop'}${open === key ? ' open' : ''}`}>
                  <th scope="row">
                    <button
                      type="button"
                      class="link"
                      aria-expanded={open === key}
                      onClick={() => setOpen(open === key ? null : key)}
                    >
                      {r.id}
                    </button>{' '}
                    <span class="f">{r.face}</span>
                  </th>
                  <td class="by">{r.way}</td>
                  <td class="met">{r.cannot ?? r.tool ?? ''}</td>
                  <td class="q deep" data-says={c.head.offset}>
                    {mm(r.offsetMm)}
                  </td>
                  <td class="q test" data-says={c.head.radius}>
                    {mm(r.leastRadiusMm)}
                  </td>
                  <td class="q air" data-says={c.head.passes}>
                    {r.passes === null ? '' : `${r.passes.count} × ${mm(r.passes.eachMm)}`}
                  </td>
                  <td class="q time">{r.minutes === null ? '' : formatMinutes(r.minutes)}</td>
                </tr>
                {open === key ? (
                  <tr class="runs">
                    <td colSpan={7}>
                      <ol>
                        {r.does.map(d => (
                          <li key={d}>{d}</li>
                        ))}
                      </ol>
                      <ul class="ways-by" aria-label={c.waysHead}>
                        {r.ways.map(x => (
                          <li
                            key={x.way}
                            class={`${x.possible ? '' : 'not'}${x.way === r.way ? ' here' : ''}`}
                          >
                            <b>{x.way}</b> <span class="f">{x.why}</span>{' '}
                            {x.minutes === null ? '' : formatMinutes(x.minutes)}
                          </li>
                        ))}
                      </ul>
                    </td>
                  </tr>
                ) : null}
              </Fragment>
            )
          })}
        </tbody>
      </table>
      <table class="sums">
        <tbody>
          <tr>
            <th scope="row">{c.cutting}</th>
            <td class="q">{formatMinutes(cutting)}</td>
          </tr>
          {making === 0 ? null : (
            <tr>
              <th scope="row">{c.making2}</th>
              <td class="q">{formatMinutes(making)}</td>
            </tr>
          )}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">{c.handSum}</th>
            <td class="q">{formatMinutes(cutting + making)}</td>
          </tr>
        </tfoot>
      </table>
      <p class="f">{c.sheets}</p>
    </section>
  )
}
