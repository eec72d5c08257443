import { cutsWords as c } from '../text/cuts.ts'
import type { CutsView } from '../worker/cuts-view.ts'

/** What proving found, the gravest first. */
export function FoundList({ findings }: Pick<CutsView, 'findings'>) {
  if (findings.length === 0) return null
  const rank = { stop: 0, caution: 1, note: 2 }
  return (
    <section aria-label={c.found}>
      {[...findings]
        .sort((a, b) => rank[a.severity] - rank[b.severity])
        .map(f => (
          <div key={f.says} class={`find ${f.severity}`}>
            <p>
              <b>{c.tone[f.severity]}</b> {f.says} <span class="f">{f.basis}.</span>
            </p>
          </div>
        ))}
    </section>
  )
}
