import { signal } from '@preact/signals'
import type { ComponentChildren } from 'preact'
import { chosen } from '../state/desk.ts'
import { w } from '../text/words.ts'

/** The field that is asked for: JSON Pointer of its entry ("" for the piece) and its key. */
export const wantedField = signal<{ readonly at: string; readonly key: string } | null>(null)

/** A figure that is pressed to change it: the field it comes from opens in its place, with the hand in it. */
export function EditedFigure(p: {
  readonly at: string
  readonly field: string
  /** What the figure is, for those who listen. */
  readonly words: string
  readonly children: ComponentChildren
}) {
  return (
    <button
      type="button"
      class="entry figure"
      title={w.card.change(p.words)}
      onClick={() => {
        if (p.at !== '') chosen.value = p.at
        wantedField.value = { at: p.at, key: p.field }
      }}
    >
      {p.children}
    </button>
  )
}
