import { useState } from 'preact/hooks'
import type { PieceSummary } from '../net/api.ts'
import { api } from '../net/api.ts'
import { listChanged } from '../state/pieces.ts'
import { w } from '../text/words.ts'

/** Pieces put away: out of sight, with every revision; each can be brought back. */
export function Away() {
  const [list, setList] = useState<readonly PieceSummary[]>([])
  const [says, setSays] = useState('')
  const read = () =>
    void api<{ pieces: readonly PieceSummary[] }>('GET', '/api/pieces?away=1')
      .then(r => setList(r.pieces))
      .catch(() => setSays(w.state.unreachable))
  return (
    <details class="away f" onToggle={e => e.currentTarget.open && read()}>
      <summary class="link">{w.pieces.awayOnes}</summary>
      <p role="status">{list.length === 0 ? (says === '' ? w.pieces.noneAway : says) : ''}</p>
      <ul class="plain">
        {list.map(p => (
          <li key={p.id}>
            <b>{p.name}</b>{' '}
            <button
              type="button"
              class="link"
              aria-label={`${w.pieces.back} ${p.name}`}
              onClick={() =>
                void api('POST', `/api/pieces/${p.id}/back`, {})
                  .then(() => {
                    read()
                    listChanged()
                  })
                  .catch(() => setSays(w.state.unreachable))
              }
            >
              {w.pieces.back}
            </button>
          </li>
        ))}
      </ul>
    </details>
  )
}
