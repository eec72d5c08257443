import { useEffect, useState } from 'preact/hooks'
import { units } from '../state/preferences.ts'
import { w } from '../text/words.ts'
import type { KeptPhoto } from './desk-photo.ts'
import { choosePhoto, opening, openPhoto, photos, removePhoto, showPhotos } from './desk-photo.ts'

/** The first step: a photo from the device, from its camera, or one that is kept with the piece. */
export function ChoosePhoto({ id }: { readonly id: string }) {
  const list = photos.value
  return (
    <section class="paper choose-photo">
      <h2 class="big">{w.photo.title}</h2>
      <p>{w.photo.says}</p>
      <p class="f">{w.photo.how}</p>
      <FileButtons />
      {opening.value ? (
        <p class="f" role="status">
          {w.photo.opening}
        </p>
      ) : null}
      {list === null ? (
        <p class="f" aria-busy="true">
          {w.photo.loading}
        </p>
      ) : list === 'away' ? (
        <p class="f">
          {w.photo.away}{' '}
          <button type="button" class="link" onClick={() => void showPhotos(id)}>
            {w.photo.again}
          </button>
        </p>
      ) : list.length === 0 ? (
        <p class="f">{w.photo.none}</p>
      ) : (
        <>
          <h2>{w.photo.kept}</h2>
          <ul class="plain photo-shelf">
            {list.map(photo => (
              <Kept key={photo.id} id={id} photo={photo} />
            ))}
          </ul>
        </>
      )}
    </section>
  )
}

export function FileButtons({ small = false }: { readonly small?: boolean }) {
  const pick = (e: Event & { currentTarget: HTMLInputElement }) => {
    const file = e.currentTarget.files?.[0]
    // The same file can be chosen again.
    e.currentTarget.value = ''
    if (file !== undefined) void choosePhoto(file)
  }
  const choose = (
    <label class={small ? 'link file' : 'btn main file'}>
      {small ? w.photo.another : w.photo.choose}
      <input type="file" accept="image/jpeg,image/png,image/webp" onChange={pick} />
    </label>
  )
  if (small) return choose
  return (
    <p class="ways">
      {choose}
      <label class="btn file">
        {w.photo.take}
        <input type="file" accept="image/*" capture="environment" onChange={pick} />
      </label>
    </p>
  )
}

function Kept({ id, photo }: { readonly id: string; readonly photo: KeptPhoto }) {
  const [sure, setSure] = useState(false)
  const date = dateOf(photo.saved)
  return (
    <li>
      <button
        type="button"
        class="photo-card"
        aria-label={w.photo.open(date)}
        onClick={() => void openPhoto(photo)}
      >
        <Small id={id} photo={photo} />
        <span>
          {date}{' '}
          <span class="q">
            {photo.width} × {photo.height} px, {photo.laid === null ? w.photo.notLaid : w.photo.laidOnce}
          </span>
        </span>
      </button>
      <button
        type="button"
        class="link f"
        aria-label={sure ? w.photo.sure : w.photo.removeOf(date)}
        onBlur={() => setSure(false)}
        onClick={() => (sure ? void removePhoto(photo.id) : setSure(true))}
      >
        {sure ? w.photo.sure : w.photo.remove}
      </button>
    </li>
  )
}

/** Width of the small picture, px. */
const SMALL_PX = 480

// Made small once: a shelf of photos as they were taken would fill the memory of a phone.
function Small({ id, photo }: { readonly id: string; readonly photo: KeptPhoto }) {
  const [url, setUrl] = useState<string | null>(null)
  useEffect(() => {
    let [mine, made] = [true, null as string | null]
    void smallOf(`/api/pieces/${id}/photos/${photo.id}`, photo.width).then(blob => {
      if (!mine || blob === null) return
      made = URL.createObjectURL(blob)
      setUrl(made)
    })
    return () => {
      mine = false
      if (made !== null) URL.revokeObjectURL(made)
    }
  }, [id, photo.id])
  return <span class="small">{url === null ? null : <img src={url} alt="" />}</span>
}

async function smallOf(path: string, widthPx: number): Promise<Blob | null> {
  try {
    const answer = await fetch(path)
    if (!answer.ok) return null
    const bitmap = await createImageBitmap(await answer.blob(), {
      resizeWidth: Math.min(SMALL_PX, widthPx),
      resizeQuality: 'medium'
    })
    const canvas = new OffscreenCanvas(bitmap.width, bitmap.height)
    canvas.getContext('2d')?.drawImage(bitmap, 0, 0)
    bitmap.close()
    return await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.8 })
  } catch {
    return null
  }
}

function dateOf(saved: string): string {
  return new Date(saved).toLocaleString(units.value.length === 'mm' ? 'en-GB' : 'en-US', {
    day: 'numeric',
    month: 'short',
    hour: '2-digit',
    minute: '2-digit'
  })
}
