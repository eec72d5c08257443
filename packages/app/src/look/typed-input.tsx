import { useState } from 'preact/hooks'

/**
 * An input whose text is the maker's while it is typed: what is drawn anew meanwhile (a plan that comes, an edit that
 * was saved) does not take it away. It is handed on by Enter and when it is left; Escape gives back what stood there.
 */
export function TypedInput(p: {
  readonly type: 'text' | 'number'
  readonly look: 'number' | 'words' | ''
  readonly label: string
  readonly shown: string
  readonly min?: number | undefined
  readonly max?: number | undefined
  /** Of a number; any unless said. */
  readonly step?: number
  readonly placeholder?: string | undefined
  readonly maxLength?: number
  /** @returns false for a text that is not taken and stays to be mended */
  readonly onCommit: (text: string, input: HTMLInputElement) => boolean | undefined
}) {
  const [typed, setTyped] = useState<string | null>(null)
  const shared = {
    class: p.look,
    autocomplete: 'off' as const,
    'aria-label': p.label,
    value: typed ?? p.shown,
    placeholder: p.placeholder,
    onInput: (e: Typing) => setTyped(e.currentTarget.value),
    onChange: (e: Typing) => {
      if (p.onCommit(e.currentTarget.value, e.currentTarget) !== false) setTyped(null)
    },
    onKeyDown: (e: KeyboardEvent) => {
      if (e.key === 'Escape') setTyped(null)
    }
  }
  return p.type === 'number' ? (
    <input type="number" min={p.min} max={p.max} step={p.step ?? 'any'} {...shared} />
  ) : (
    <input type="text" maxLength={p.maxLength} {...shared} />
  )
}

interface Typing {
  readonly currentTarget: HTMLInputElement
}
