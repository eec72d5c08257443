import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import { benchWords as b } from '../text/bench.ts'

const KEYS = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '.', '0', '−'] as const

/** A pad for one number, with keys for gloves; the keys of a keyboard write into it as well. More to be filled in stands under the number. */
export function NumberPad({
  says,
  unit,
  planned,
  onEnter,
  onClose,
  children
}: {
  readonly says: string
  readonly unit: string
  readonly planned: number | null
  readonly onEnter: (value: number) => void
  readonly onClose: () => void
  readonly children?: ComponentChildren
}) {
  const [text, setText] = useState(planned === null ? '' : String(planned))
  const [fresh, setFresh] = useState(true)
  const value = numberOf(text)
  const put = (key: string) => {
    setFresh(false)
    setText(fresh ? key : text + key)
  }
  return (
    <form
      class="pad"
      aria-label={says}
      onSubmit={e => {
        e.preventDefault()
        if (value !== null) onEnter(value)
      }}
      onKeyDown={e => {
        if (e.key === 'Escape') onClose()
      }}
    >
      <div class="pad-head">
        <label>
          {says}
          <input
            autofocus
            inputMode="none"
            value={text}
            onInput={e => {
              setFresh(false)
              setText(e.currentTarget.value)
            }}
          />
        </label>
        <span class="unit">{unit}</span>
        {planned === null ? null : <span class="f">{b.plan(`${planned} ${unit}`)}</span>}
      </div>
      {children}
      <div class="keys">
        {KEYS.map(k => (
          <button key={k} type="button" onClick={() => put(k)}>
            {k}
          </button>
        ))}
      </div>
      <div class="pad-foot">
        <button type="button" class="btn" onClick={onClose}>
          {b.close}
        </button>
        <button type="button" class="btn" onClick={() => setText(fresh ? '' : text.slice(0, -1))}>
          {b.del}
        </button>
        <button type="submit" class="btn main" disabled={value === null}>
          {b.enter(unit)}
        </button>
      </div>
    </form>
  )
}

/** What was typed as a number, whatever sign stands for the decimal point or the minus; null: it is none. */
export function numberOf(text: string): number | null {
  const plain = text.trim().replace(',', '.').replace('−', '-')
  return /^-?([0-9]+\.?[0-9]*|\.[0-9]+)$/.test(plain) ? Number(plain) : null
}
