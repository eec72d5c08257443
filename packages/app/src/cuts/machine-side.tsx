import { formatMinutes } from '../../../engine/src/quantity/format.ts'
import { cutsWords as c } from '../text/cuts.ts'
import type { CutsView } from '../worker/cuts-view.ts'
import { FoundList } from './found-list.tsx'
import { PinsSay } from './pins-say.tsx'
import { ProgramTable } from './program-table.tsx'
import { SaveRow } from './save-row.tsx'

/** Programs in order, what they meet, pins, times. */
export function MachineSide({ view }: { readonly view: CutsView }) {
  return (
    <div class="cuts-right">
      <ProgramTable settings={view.settings} />
      <SaveRow view={view} />
      <FoundList findings={view.findings} settings={view.settings} />
      <div class="cuts-foot">
        <PinsSay pins={view.pins} turned={view.settings.length > 1} />
        {view.totals === null ? null : <Times totals={view.totals} />}
      </div>
    </div>
  )
}

function Times({ totals: t }: { readonly totals: NonNullable<CutsView['totals']> }) {
  const rows = [
    [c.cutting, t.cutting],
    [c.testing, t.test + t.air],
    [c.changes(t.changes), t.changing]
  ] as const
  return (
    <section class="times" aria-label={c.totals}>
      <h3>{c.first}</h3>
      <ol class="f">
        {c.firstSays.map(([says, of]) => (
          <li key={of}>
            <span>{says}</span> <span class="q">{formatMinutes(Math.max(1, t[of]))}</span>
          </li>
        ))}
      </ol>
      <h3>{c.totals}</h3>
      <table class="sums">
        <tbody>
          {rows.map(([words, minutes]) => (
            <tr key={words}>
              <th scope="row">{words}</th>
              <td class="q">{formatMinutes(minutes)}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">{c.sum}</th>
            <td class="q">{formatMinutes(t.cutting + t.test + t.air + t.changing)}</td>
          </tr>
        </tfoot>
      </table>
    </section>
  )
}
