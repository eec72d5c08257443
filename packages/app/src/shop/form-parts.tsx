import { useId } from 'preact/hooks'
import { w } from '../text/words.ts'
import type { Json } from '../worker/document.ts'

/** The classes of the catalogue that a resin may be like. */
export const CLASSES = ['deep', 'medium', 'thin'] as const

/** Resins of the shop as choices. */
export function OwnResins({ resins }: { readonly resins: readonly Json[] }) {
  return (
    <>
      {resins.map(r => (
        <option key={String(r['id'])} value={String(r['id'])}>
          {String(r['name'] ?? r['id'])}
        </option>
      ))}
    </>
  )
}

/** Classes of the catalogue as choices. */
export function ClassResins() {
  return (
    <>
      {CLASSES.map(c => (
        <option key={c} value={c}>
          {w.cup.classes[c]}
        </option>
      ))}
    </>
  )
}

/** What was measured, one line each. */
export function ReadingLines(p: {
  readonly words: string
  readonly example: string
  readonly how: string
  readonly rows: number
  readonly value: string
  readonly onText: (text: string) => void
}) {
  const how = useId()
  return (
    <>
      <label class="readings">
        <span>{p.words}</span>
        <textarea
          rows={p.rows}
          spellcheck={false}
          placeholder={p.example}
          aria-describedby={how}
          value={p.value}
          onInput={e => p.onText(e.currentTarget.value)}
        />
      </label>
      <p class="f" id={how}>
        {p.how}
      </p>
    </>
  )
}

/** Keeps what the form holds, or leaves it. */
export function KeepOrLeave(p: {
  readonly keep: string
  readonly ready: boolean
  readonly onKeep: () => void
  readonly onLeave: () => void
}) {
  return (
    <p class="ways">
      <button type="button" class="btn main" disabled={!p.ready} onClick={p.onKeep}>
        {p.keep}
      </button>
      <button type="button" class="link" onClick={p.onLeave}>
        {w.cup.leave}
      </button>
    </p>
  )
}
