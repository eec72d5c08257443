import { useEffect, useRef, useState } from 'preact/hooks'
import { benchWords as b } from '../text/bench.ts'

/** How long it is held before it counts, ms. */
const HOLD_MS = 2000

/** A button that is pressed and held, by finger, mouse or key, so that a sleeve presses nothing. */
export function HoldButton({ words, onHeld }: { readonly words: string; readonly onHeld: () => void }) {
  const [since, setSince] = useState<number | null>(null)
  const waiting = useRef<ReturnType<typeof setTimeout> | undefined>(undefined)
  const begin = () => {
    if (waiting.current !== undefined) return
    setSince(Date.now())
    waiting.current = setTimeout(() => {
      end()
      navigator.vibrate?.(60)
      onHeld()
    }, HOLD_MS)
  }
  const end = () => {
    clearTimeout(waiting.current)
    waiting.current = undefined
    setSince(null)
  }
  useEffect(() => end, [])
  return (
    <button
      type="button"
      class={`hold${since === null ? '' : ' held'}`}
      title={b.holdKeys}
      onPointerDown={e => {
        if (e.button === 0) begin()
      }}
      onPointerUp={end}
      onPointerLeave={end}
      onPointerCancel={end}
      onContextMenu={e => e.preventDefault()}
      onKeyDown={e => {
        if (e.key === 'Enter' || e.key === ' ') {
          e.preventDefault()
          begin()
        }
      }}
      onKeyUp={end}
      onBlur={end}
    >
      <b>{words}</b>
      <span>{b.hold}</span>
    </button>
  )
}
