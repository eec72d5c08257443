import { useEffect, useRef, useState } from 'preact/hooks'
import { bounds } from '../../../engine/src/shape/measure.ts'
import { view } from '../state/desk.ts'
import { awaySince } from '../state/reach.ts'
import { follow } from '../state/route.ts'
import { w } from '../text/words.ts'
import { ChoosePhoto, FileButtons } from './choose-photo.tsx'
import {
  keeping,
  laid,
  layPhoto,
  map,
  opening,
  photoSays,
  picture,
  putAway,
  sendPhoto,
  showPhotos
} from './desk-photo.ts'
import { LayFields } from './lay-fields.tsx'
import type { Laid } from './laying.ts'
import { middleAt } from './laying.ts'
import { MarkPad } from './mark-pad.tsx'
import type { Picture } from './picture.ts'
import { TraceFields } from './trace-fields.tsx'
import type { Catch } from './trace-hand.ts'
import type { Mode } from './trace-pad.tsx'
import { TracePad } from './trace-pad.tsx'

/** Within how many px of the photo an edge is caught unless said otherwise (practice). */
const WITHIN_PX = 12

/** Tracing over a photo: choose it, lay it to scale, trace the edge, make it a part of the piece. */
export function PhotoScreen({ id }: { readonly id: string }) {
  useEffect(() => {
    void showPhotos(id)
    return putAway
  }, [id])
  const away = awaySince.value
  // What could not be sent goes when the desk is back.
  useEffect(() => {
    if (away !== null) return
    if (keeping.value === 'waits') void sendPhoto()
    else if (picture.value === null) void showPhotos(id)
  }, [away])
  const inHand = picture.value
  const now = laid.value
  return (
    <main class="photo" id="main">
      <p class="ways from">
        <a href={`/piece/${id}`} onClick={follow}>
          {w.photo.back}
        </a>
      </p>
      {inHand === null || now === null ? (
        <>
          <Says />
          <ChoosePhoto id={id} />
        </>
      ) : (
        <InHand key={inHand.url} id={id} picture={inHand} laid={now} />
      )}
    </main>
  )
}

// Over the pad, not above it: what is said must not push the photo from under the hand.
function Says() {
  return photoSays.value === '' ? null : (
    <p class="says-bad photo-says" role="alert">
      {photoSays.value}
    </p>
  )
}

function InHand({
  id,
  picture,
  laid: now
}: {
  readonly id: string
  readonly picture: Picture
  readonly laid: Laid
}) {
  const h = map.value
  const [flat, setFlat] = useState(h !== null && now.at !== null)
  const [mode, setMode] = useState<Mode>('points')
  const [within, setWithin] = useState<Catch>(WITHIN_PX)
  const [made, setMade] = useState<'timber' | 'outline' | null>(null)
  useEffect(() => setMade(null), [now.trace])
  const layFlat = () => {
    // The first time the middle of the photo comes to the middle of the piece.
    if (now.at === null) {
      const b = view.value === null ? null : bounds(view.value.model.geometry.outline)
      const middle =
        b === null ? ([0, 0] as const) : ([(b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2] as const)
      layPhoto({ at: middleAt(now, middle) })
    }
    setFlat(true)
  }
  const tracing = flat && h !== null
  const place = useRef<HTMLDivElement>(null)
  const came = useRef(false)
  // On a small screen the pad may have been left above: the other step begins in sight of it.
  useEffect(() => {
    if (came.current) place.current?.scrollIntoView({ block: 'nearest' })
    came.current = true
  }, [tracing])
  return (
    <>
      <div class="photo-place" ref={place}>
        {tracing ? (
          <TracePad picture={picture} laid={now} map={h} mode={mode} within={within} />
        ) : (
          <MarkPad picture={picture} laid={now} />
        )}
        <Says />
      </div>
      <section class="paper photo-side" aria-label={w.photo.title}>
        <nav class="choice two" aria-label={w.photo.steps}>
          <button type="button" aria-pressed={!tracing} onClick={() => setFlat(false)}>
            {w.photo.lay}
          </button>
          <button type="button" aria-pressed={tracing} disabled={h === null} onClick={layFlat}>
            {w.photo.trace}
          </button>
        </nav>
        {tracing ? (
          <TraceFields
            id={id}
            laid={now}
            map={h}
            mode={mode}
            onMode={setMode}
            within={within}
            onWithin={setWithin}
            made={made}
            onMade={setMade}
          />
        ) : (
          <LayFields laid={now} onFlat={layFlat} />
        )}
        <div class="r end">
          <p class="f" role="status">
            {opening.value ? w.photo.opening : w.photo.keeping[keeping.value]}{' '}
            {keeping.value === 'waits' ? (
              <button type="button" class="link" onClick={() => void sendPhoto()}>
                {w.photo.again}
              </button>
            ) : null}
          </p>
          <span class="ways">
            <FileButtons small />
            <button type="button" class="link" onClick={putAway}>
              {w.photo.shelf}
            </button>
          </span>
        </div>
      </section>
    </>
  )
}
