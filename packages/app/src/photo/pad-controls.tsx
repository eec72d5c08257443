import type { ComponentChildren } from 'preact'
import { w } from '../text/words.ts'

/** Words at the foot of a pad: how large it shows the photo. null: no further. */
export function PadControls(p: {
  readonly onLarger: () => void
  readonly onSmaller: (() => void) | null
  readonly onWhole: (() => void) | null
  readonly children?: ComponentChildren
}) {
  return (
    <p class="ways over-pad">
      <button type="button" class="link" onClick={p.onLarger}>
        {w.photo.larger}
      </button>
      <button type="button" class="link" disabled={p.onSmaller === null} onClick={() => p.onSmaller?.()}>
        {w.photo.smaller}
      </button>
      <button type="button" class="link" disabled={p.onWhole === null} onClick={() => p.onWhole?.()}>
        {w.photo.whole}
      </button>
      {p.children}
    </p>
  )
}
