import { useState } from 'preact/hooks'
import { api } from '../net/api.ts'
import { edit, piece } from '../state/desk.ts'
import { go } from '../state/route.ts'
import { w } from '../text/words.ts'
import type { Json } from '../worker/messages.ts'

interface Revision {
  readonly revision: number
  readonly saved: string
  readonly device: string | null
  readonly says: string
}

/** Most revisions shown at once. */
const MOST = 60

/** What the piece was before, edit by edit; any of it can be laid on the desk again, as an edit of its own. */
export function Revisions({ words }: { readonly words: string }) {
  const [list, setList] = useState<readonly Revision[] | null>(null)
  const [says, setSays] = useState('')
  const id = piece.value?.id
  if (id === undefined) return null
  const read = () =>
    void api<{ revisions: readonly Revision[] }>('GET', `/api/pieces/${id}/revisions`)
      .then(r => setList(r.revisions.slice(0, MOST)))
      .catch(() => setSays(w.state.unreachable))
  const lay = (n: number) =>
    void api<{ document: Json }>('GET', `/api/pieces/${id}/revisions/${n}`)
      .then(r => edit(w.saved.saved(n), [{ op: 'replace', path: '', value: r.document }]))
      .catch(() => setSays(w.state.unreachable))
  const away = () =>
    void api('DELETE', `/api/pieces/${id}`)
      .then(() => go('/'))
      .catch(() => setSays(w.state.unreachable))
  return (
    <details class="units" onToggle={e => e.currentTarget.open && read()}>
      <summary class="link">{words}</summary>
      <div class="sheet-let revisions">
        <p class="says-bad" role="status">
          {says}
        </p>
        <ol class="plain">
          {(list ?? []).map(r => (
            <li key={r.revision} class="r">
              <button type="button" class="link" onClick={() => lay(r.revision)}>
                {w.saved.saved(r.revision)}
              </button>
              <span class="f">{r.says === '' ? w.saved.begun : r.says}</span>
              <span class="q f">
                {new Date(r.saved).toLocaleString('en-GB', { dateStyle: 'short', timeStyle: 'short' })}
                {r.device === null ? '' : `, ${r.device}`}
              </span>
            </li>
          ))}
        </ol>
        <p class="ways">
          <a class="link" href={`/api/pieces/${id}/page.html`} target="_blank" rel="noopener">
            {w.saved.page}
          </a>
          <a class="link" href={`/api/pieces/${id}/run-sheet.html`} target="_blank" rel="noopener">
            {w.saved.runSheet}
          </a>
          <button type="button" class="link" onClick={() => print()}>
            {w.tool.print}
          </button>
          <button type="button" class="link" onClick={away}>
            {w.pieces.away}
          </button>
        </p>
      </div>
    </details>
  )
}
