import { castShare, stale, view } from '../state/desk.ts'
import { w } from '../text/words.ts'
import type { PlannedView } from '../worker/views.ts'
import { nextFinding, walkAt } from './walk.ts'

/** One sentence on where the piece stands, and, but for `plain`, the way through what was found on the sheet. */
export function VerdictBar({ plain = false }: { readonly plain?: boolean }) {
  const v = view.value
  if (v === null) return null
  const count = (s: 'stop' | 'caution' | 'note') => v.findings.filter(f => f.severity === s).length
  const parts = [
    [count('stop'), w.verdict.stops, 'st'],
    [count('caution'), w.verdict.cautions, 'ca'],
    [count('note'), w.verdict.notes, 'no']
  ] as const
  const shown = parts.filter(([n]) => n > 0)
  const n = v.findings.length
  return (
    <section class="verdict" aria-label={w.verdict.region}>
      <p class="count">
        {shown.length === 0 ? <span class="ok">{w.verdict.ready}</span> : null}
        {shown.map(([k, words, tone], i) => (
          <span key={tone}>
            {i === 0 ? null : <i aria-hidden="true">·</i>}
            <span class={tone}>{words(k)}</span>
          </span>
        ))}
      </p>
      <p class={`say${stale.value ? ' old' : ''}`} id="verdict" role="status">
        {v.says}
      </p>
      <div class="walk">
        {plain ? null : <Jumps />}
        <span class="pass">
          {stale.value ? w.verdict.planning : v.effort === 'preview' ? w.verdict.refining : ''}
        </span>
        <CastProgress cast={v.cast} />
        {n === 0 || plain ? null : (
          <>
            <span class={walkAt.value === null ? 'to-look' : 'at'}>
              {walkAt.value === null ? w.verdict.toLook(n) : w.verdict.at(Math.min(walkAt.value, n), n)}
            </span>
            <button type="button" class="btn" onClick={nextFinding}>
              {w.verdict.next}
            </button>
          </>
        )}
      </div>
    </section>
  )
}

function Jumps() {
  return (
    <nav class="jumps" aria-label={w.verdict.jumps}>
      {JUMPS.map(([to, words]) => (
        <a key={to} href={`#${to}`}>
          {words}
        </a>
      ))}
    </nav>
  )
}

/** How far the cast of the whole mould is, while it goes on. Said once when it is done: a count would talk over all. */
function CastProgress({ cast }: { readonly cast: PlannedView['cast'] }) {
  const share = stale.value ? null : castShare.value
  const percent = share === null ? 0 : Math.round(share * 100)
  return (
    <>
      {share === null ? null : (
        <span class="casting">
          {cast === 'column' ? w.verdict.casting(percent) : w.verdict.castingOn(percent)}
          <i style={{ '--done': `${percent}%` }} aria-hidden="true" />
        </span>
      )}
      <span class="says-core" role="status">
        {share === null && cast === 'full' && !stale.value ? w.verdict.castDone : ''}
      </span>
    </>
  )
}

/** Parts of a sheet that stand under each other on a phone. */
const JUMPS = [
  ['plan', w.sheet.plan],
  ['layers-head', w.card.layers],
  ['steps-head', w.card.steps],
  ['whole-head', w.verdict.fields]
] as const
