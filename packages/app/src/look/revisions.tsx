import { useEffect, useState } from 'preact/hooks'
import { api } from '../net/api.ts'
import { dropAside, layKept, readAsides } from '../state/asides.ts'
import { asides, piece } from '../state/open-piece.ts'
import { told } from '../state/reach.ts'
import { go } from '../state/route.ts'
import { w } from '../text/words.ts'
import { AsideRows } from './aside-rows.tsx'
import { moment } from './moment.ts'

interface Revision {
  readonly revision: number
  readonly saved: string
  readonly device: string | null
  readonly says: string
}

/** Most revisions shown at once. */
const MOST = 60

/**
 * What the piece was before, edit by edit, and what was kept aside of it; any of it can be laid on the desk again, as
 * an edit of its own.
 */
export function Revisions({ words }: { readonly words: string }) {
  const [open, setOpen] = useState(false)
  const [list, setList] = useState<readonly Revision[]>([])
  const [says, setSays] = useState('')
  const id = piece.value?.id
  const newest = piece.value?.revision
  useEffect(() => {
    if (!open || id === undefined) return
    void told(async () => {
      const r = await api<{ revisions: readonly Revision[] }>('GET', `/api/pieces/${id}/revisions`)
      setList(r.revisions.slice(0, MOST))
    }).then(setSays)
  }, [open, id, newest])
  useEffect(() => {
    if (open && id !== undefined) void readAsides(id)
  }, [open, id])
  if (id === undefined) return null
  const lay = (n: number) => void layKept(id, `revisions/${n}`, w.saved.saved(n)).then(setSays)
  const away = () =>
    void told(async () => {
      await api('DELETE', `/api/pieces/${id}`)
      go('/')
    }).then(setSays)
  return (
    <details class="units" onToggle={e => setOpen(e.currentTarget.open)}>
      <summary class="link">
        {words}
        {asides.value.length === 0 ? '' : `, ${w.saved.aside(asides.value.length)}`}
      </summary>
      <div class="sheet-let revisions">
        <p class="says-bad" role="status">
          {says}
        </p>
        <AsideRows
          asides={asides.value}
          lay={w.aside.lay}
          onLay={a => layKept(id, `asides/${a.number}`, w.aside.laid(moment(a.saved)))}
          onDrop={a => dropAside(id, a.number)}
        />
        {asides.value.length === 0 ? null : <h2>{w.pieces.revisions}</h2>}
        <ol class="plain">
          {list.map(r => (
            <li key={r.revision} class="r">
              <button type="button" class="link" onClick={() => lay(r.revision)}>
                {w.saved.saved(r.revision)}
              </button>
              <span class="f">{r.says === '' ? w.saved.begun : r.says}</span>
              <span class="q f">
                {moment(r.saved)}
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
