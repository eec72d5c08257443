import { useEffect, useState } from 'preact/hooks'
import { unsentPhoto } from '../offline/bench-photos.ts'
import { piece } from '../state/desk.ts'
import { benchWords as b } from '../text/bench.ts'
import type { BenchKept } from '../worker/bench-view.ts'
import { clockTime } from './time-words.ts'

/** Notes and photos of a step, each with its time. */
export function KeptList({ kept, atMs }: { readonly kept: readonly BenchKept[]; readonly atMs: number }) {
  if (kept.length === 0) return null
  return (
    <section class="bench-kept" aria-label={b.keptRegion}>
      {kept.map(k => (
        <figure key={k.id}>
          {k.photo === null ? null : <Photo name={k.photo} alt={b.photoOf(clockTime(k.atMs, atMs))} />}
          <figcaption>
            <span class="q">{clockTime(k.atMs, atMs)}</span> {k.note}
          </figcaption>
        </figure>
      ))}
    </section>
  )
}

// What was not sent is shown from this browser.
function Photo({ name, alt }: { readonly name: string; readonly alt: string }) {
  const id = piece.value?.id ?? ''
  const [url, setUrl] = useState<string | null>(null)
  useEffect(() => {
    let [mine, made] = [true, null as string | null]
    void unsentPhoto(id, name).then(picture => {
      if (!mine) return
      if (picture !== null) made = URL.createObjectURL(picture)
      setUrl(made ?? `/api/pieces/${id}/photos/${name}`)
    })
    return () => {
      mine = false
      if (made !== null) URL.revokeObjectURL(made)
    }
  }, [id, name])
  return url === null ? null : <img src={url} alt={alt} loading="lazy" />
}
