import { useEffect, useState } from 'preact/hooks'
import type { Kind } from '../../../engine/src/piece/kind.ts'
import { Drawing } from '../look/drawing.tsx'
import { Figure } from '../look/field.tsx'
import type { PieceSummary } from '../net/api.ts'
import { leavePieces, pieces, showPieces, thumbs } from '../state/pieces.ts'
import { follow } from '../state/route.ts'
import { w } from '../text/words.ts'
import { Away } from './away.tsx'
import { Begin } from './begin.tsx'

/** All pieces as pictures in their computed colours, and the beginning of a new one. */
export function PiecesScreen() {
  const [kind, setKind] = useState<Kind['kind'] | null>(null)
  useEffect(() => {
    void showPieces()
    return leavePieces
  }, [])
  const list = pieces.value
  return (
    <main class="pieces" id="main">
      <Begin kind={kind} onKind={setKind} />
      {kind !== null || list === null || list.length === 0 ? null : (
        <ul class="plain shelf" aria-label={w.pieces.title}>
          {list.map(p => (
            <Card key={p.id} p={p} />
          ))}
        </ul>
      )}
      {kind === null ? <Away /> : null}
    </main>
  )
}

function Card({ p }: { readonly p: PieceSummary }) {
  const thumb = thumbs.value.get(`${p.id} ${p.revision}`)
  const known = thumb !== undefined && thumb !== 'none' ? thumb : null
  return (
    <li>
      <a class="paper shelf-card" href={`/piece/${p.id}`} onClick={follow}>
        <span class="picture">
          {known === null ? null : <Drawing drawn={known.drawn} name="plan thumb" words={null} />}
        </span>
        <span class="shelf-name">{p.name}</span>
        <span class="f">
          {known === null ? (
            thumb === 'none' ? (
              w.state.refused
            ) : (
              ''
            )
          ) : (
            <>
              <Figure value={known.sizeMm[0]} dimension="length" digits={0} bare /> ×{' '}
              <Figure value={known.sizeMm[1]} dimension="length" digits={0} bare /> ×{' '}
              <Figure value={known.sizeMm[2]} dimension="length" digits={0} />
            </>
          )}
        </span>
        <span
          class={`f verdict-word ${known === null ? '' : { stop: 'st', caution: 'ca', ready: 'ok' }[known.verdict]}`}
        >
          {known === null ? '' : w.pieces.verdict[known.verdict]}
        </span>
        <span class="f when">{w.pieces.saved(day(p.saved))}</span>
      </a>
    </li>
  )
}

function day(moment: string): string {
  return new Intl.DateTimeFormat('en-GB', {
    day: 'numeric',
    month: 'short',
    hour: '2-digit',
    minute: '2-digit'
  }).format(new Date(moment))
}
