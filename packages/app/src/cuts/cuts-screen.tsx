import { useEffect } from 'preact/hooks'
import { cuts, cutsFailure, cutsShare, watchCuts } from '../state/cuts.ts'
import { stale } from '../state/desk.ts'
import { follow } from '../state/route.ts'
import { cutsWords as c } from '../text/cuts.ts'
import { w } from '../text/words.ts'
import { HandTable } from './hand-table.tsx'
import { MachineSide } from './machine-side.tsx'
import { SettingDrawing } from './setting-drawing.tsx'
import { ShownRow } from './shown-row.tsx'
import './cuts.css'

/** What is cut, in order: programs proved over the piece, and what is done by hand. */
export function CutsScreen() {
  useEffect(watchCuts, [])
  const v = cuts.value
  const share = cutsShare.value
  const old = share !== null || stale.value
  const count = v?.settings.reduce((sum, s) => sum + s.programs.length, 0) ?? 0
  return (
    <main class="cuts" id="main">
      <section
        class={`paper cuts-sheet${old && v !== null ? ' old' : ''}`}
        aria-label={c.region}
        aria-busy={old}
      >
        <p class="f cuts-state" role="status">
          {share === null ? (count > 0 ? c.proved(count) : '') : c.making(Math.round(100 * share))}
        </p>
        {cutsFailure.value === null ? null : (
          <p class="says-bad" role="alert">
            {cutsFailure.value}
          </p>
        )}
        {v === null ? (
          <p class="f waits">{w.state.loading}</p>
        ) : (
          <>
            {v.settings.length === 0 ? (
              <p class="cuts-none">
                {v.machine ? c.nothingCut : c.noMachine}{' '}
                {v.machine ? null : (
                  <a href="/shop" onClick={follow}>
                    {c.toShop}
                  </a>
                )}
              </p>
            ) : (
              <div class="cuts-two">
                <div class="cuts-left">
                  <ShownRow settings={v.settings} />
                  {v.settings.map((s, i) => (
                    <SettingDrawing
                      key={s.up}
                      setting={s}
                      turned={i > 0}
                      errorMm={v.errorMm}
                      toleranceMm={v.toleranceMm}
                    />
                  ))}
                </div>
                <MachineSide view={v} />
              </div>
            )}
            {v.hand.length > 0 ? (
              <HandTable rows={v.hand} />
            ) : v.settings.length === 0 ? (
              <p>{c.noneCut}</p>
            ) : null}
          </>
        )}
      </section>
    </main>
  )
}
