import { cutsWords as c } from '../text/cuts.ts'
import type { CutsView, FoundMark } from '../worker/cuts-view.ts'
import { picked, pickedFinding } from './picked.ts'

/** What proving found, the gravest first; pressed, one is marked on the drawing. */
export function FoundList({ findings, settings }: Pick<CutsView, 'findings' | 'settings'>) {
  if (findings.length === 0) return null
  const rank = { stop: 0, caution: 1, note: 2 }
  const marks = settings.flatMap(s => s.marks)
  return (
    <section aria-label={c.found}>
      {findings
        .map((f, i) => ({ f, mark: marks.find(m => m.finding === i) }))
        .sort((a, b) => rank[a.f.severity] - rank[b.f.severity])
        .map(({ f, mark }) => (
          <div key={f.says} class={`find ${f.severity}`}>
            <p>
              <b>{c.tone[f.severity]}</b> {f.says} <span class="f">{f.basis}.</span>
            </p>
            {mark?.at == null ? null : <Show mark={mark} />}
          </div>
        ))}
    </section>
  )
}

function Show({ mark }: { readonly mark: FoundMark }) {
  const shown = pickedFinding.value === mark.finding
  const show = () => {
    pickedFinding.value = shown ? null : mark.finding
    picked.value = null
    if (!shown) document.getElementById(`mark-in-${mark.finding}`)?.scrollIntoView({ block: 'nearest' })
  }
  return (
    <p class="f">
      <button type="button" class="btn" aria-pressed={shown} onClick={show}>
        {c.show}
      </button>{' '}
      {c.linesOf(mark.file, mark.lines)}
    </p>
  )
}
