import { Fragment } from 'preact'
import { formatMinutes } from '../../../engine/src/quantity/format.ts'
import { lengthIn } from '../../../engine/src/quantity/shown-units.ts'
import { units } from '../state/preferences.ts'
import { cutsWords as c } from '../text/cuts.ts'
import type { ProgramRow, SettingView } from '../worker/cuts-view.ts'
import { picked } from './picked.ts'

/** Every program in the order it is run; pressed, a row opens: how the cutter is run, and why. */
export function ProgramTable({ settings }: { readonly settings: readonly SettingView[] }) {
  const longest = Math.max(1, ...settings.flatMap(s => s.programs.map(p => p.minutes)))
  return (
    <table class="programs">
      <thead>
        <tr>
          <th scope="col">{c.head.program}</th>
          <th scope="col">{c.head.cutter}</th>
          <th scope="col" class="q">
            {c.head.depth}
          </th>
          <th scope="col">{c.head.time}</th>
          <th scope="col">{c.head.meets}</th>
          <th scope="col" class="q">
            {c.head.test}
          </th>
          <th scope="col" class="q">
            {c.head.air}
          </th>
        </tr>
      </thead>
      {settings.map(s => (
        <tbody key={s.up}>
          <tr class="face">
            <th colSpan={7} scope="rowgroup">
              {c.face[s.up]}
            </th>
          </tr>
          {s.programs.map(p => (
            <Row key={p.file} p={p} longest={longest} />
          ))}
        </tbody>
      ))}
    </table>
  )
}

function Row({ p, longest }: { readonly p: ProgramRow; readonly longest: number }) {
  const open = picked.value === p.file
  const tone = p.meets?.severity ?? ''
  const about = (minutes: number | null) => (minutes === null ? '' : formatMinutes(Math.max(1, minutes)))
  return (
    <Fragment>
      <tr class={`${tone}${open ? ' open' : ''}`}>
        <th scope="row">
          <button
            type="button"
            class="link"
            aria-expanded={open}
            onClick={() => (picked.value = open ? null : p.file)}
          >
            <span class="n">{p.number}</span> {p.name}
          </button>
        </th>
        <td class="by">{p.cutter}</td>
        <td class="q deep" data-says={c.head.depth}>
          {lengthIn(units.value, p.depthMm, 1)}
        </td>
        <td class="time">
          <i style={{ '--share': `${p.minutes / longest}` }} aria-hidden="true" />
          {about(p.minutes)}
        </td>
        <td class="met">
          {p.meets === null ? (
            <span class="f">{c.nothing}</span>
          ) : (
            <>
              <b class={tone}>{c.tone[p.meets.severity]}</b> {p.meets.says}
              {p.meets.more > 0 ? <span class="f"> {c.more(p.meets.more)}</span> : null}
            </>
          )}
          {p.unreached === null ? null : (
            <span class="f"> {c.unreached(lengthIn(units.value, p.unreached.mostMm, 1))}</span>
          )}
        </td>
        <td class="q test" data-says={c.head.test}>
          {about(p.testMinutes)}
        </td>
        <td class="q air" data-says={c.head.air}>
          {about(p.airMinutes)}
        </td>
      </tr>
      {open ? (
        <tr class="runs">
          <td colSpan={7}>
            {p.runs.map(r => (
              <dl key={r.cutter} class="run">
                <dt>{r.cutter}</dt>
                <dd>
                  {[
                    [r.rpm, c.runs.rpm, 0],
                    [r.feedMmMin, c.runs.feed, 0],
                    [r.plungeMmMin, c.runs.plunge, 0],
                    [r.depthMm, c.runs.depth, 2],
                    [r.stepMm, c.runs.step, 2]
                  ].map(([v, words, places]) => (
                    <span key={words} class="fact">
                      <b>{Number(Number(v).toFixed(Number(places)))}</b> {words}
                    </span>
                  ))}
                </dd>
                <dd class="f">{r.why.join('. ')}.</dd>
              </dl>
            ))}
            {p.unreached === null ? null : (
              <p class="unreached">
                <b>{c.byHandHead}</b> {p.unreached.says}.
              </p>
            )}
            {p.passes.length > 1 ? (
              <details class="f">
                <summary>{c.again}</summary>
                <ol>
                  {p.passes.map(name => (
                    <li key={name}>{name}</li>
                  ))}
                </ol>
              </details>
            ) : null}
          </td>
        </tr>
      ) : null}
    </Fragment>
  )
}
