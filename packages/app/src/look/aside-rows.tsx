import { useEffect, useId, useRef, useState } from 'preact/hooks'
import type { Aside } from '../net/api.ts'
import { w } from '../text/words.ts'
import './aside.css'
import { moment } from './moment.ts'

/**
 * What the server keeps aside, newest first: when, from which device, on which revision; each can be laid again or
 * set aside for good. `onLay` and `onDrop` answer what they met, in words.
 */
export function AsideRows(p: {
  readonly asides: readonly Aside[]
  readonly lay: string
  readonly onLay: (aside: Aside) => Promise<string>
  readonly onDrop: (aside: Aside) => Promise<string>
}) {
  const [sure, setSure] = useState<number | null>(null)
  const [says, setSays] = useState('')
  const [dropped, setDropped] = useState(0)
  const head = useRef<HTMLHeadingElement>(null)
  /** The one whose button the hand goes back to. */
  const left = useRef<number | null>(null)
  const id = useId()
  const drop = async (aside: Aside) => {
    setSure(null)
    const met = await p.onDrop(aside)
    setSays(met === '' ? w.aside.dropped : met)
    setDropped(n => n + 1)
  }
  // The button that was pressed is gone: whoever goes by keys is not sent to the top of the page.
  useEffect(() => {
    if (dropped > 0) head.current?.focus()
  }, [dropped])
  return (
    <section class="asides" aria-labelledby={id} hidden={p.asides.length === 0 && says === ''}>
      <h2 id={id} tabIndex={-1} ref={head}>
        {w.aside.head}
      </h2>
      {p.asides.length === 0 ? null : <p class="f">{w.aside.says}</p>}
      <p class="f" role="status">
        {says}
      </p>
      <ul class="plain">
        {[...p.asides].reverse().map(a => (
          <li key={a.number}>
            <p>
              <b>{moment(a.saved)}</b> <span class="f">{w.aside.from(a.device)}</span>{' '}
              <span class="f">{w.aside.base(a.base)}</span>
            </p>
            {sure === a.number ? (
              <Sure
                of={moment(a.saved)}
                onDrop={() => void drop(a)}
                onLeave={() => {
                  left.current = a.number
                  setSure(null)
                }}
              />
            ) : (
              <p class="ways">
                <button
                  type="button"
                  class="btn"
                  aria-label={`${p.lay}: ${moment(a.saved)}`}
                  onClick={() => void p.onLay(a).then(setSays)}
                >
                  {p.lay}
                </button>
                <button
                  type="button"
                  class="link"
                  ref={button => {
                    if (left.current !== a.number) return
                    left.current = null
                    button?.focus()
                  }}
                  aria-label={`${w.aside.drop}: ${moment(a.saved)}`}
                  onClick={() => {
                    setSays('')
                    setSure(a.number)
                  }}
                >
                  {w.aside.drop}
                </button>
              </p>
            )}
          </li>
        ))}
      </ul>
    </section>
  )
}

// Asked once more: nothing on a screen brings it back. The hand lands on the way out.
function Sure(p: { readonly of: string; readonly onDrop: () => void; readonly onLeave: () => void }) {
  const leave = useRef<HTMLButtonElement>(null)
  const id = useId()
  useEffect(() => leave.current?.focus(), [])
  return (
    <p class="ways">
      <span id={id} class="sure">
        {w.aside.sure}
      </span>
      <button
        type="button"
        class="btn"
        aria-label={`${w.aside.dropNow}: ${p.of}`}
        aria-describedby={id}
        onClick={p.onDrop}
      >
        {w.aside.dropNow}
      </button>
      <button
        type="button"
        class="link"
        ref={leave}
        aria-label={`${w.aside.leave}: ${p.of}`}
        aria-describedby={id}
        onClick={p.onLeave}
      >
        {w.aside.leave}
      </button>
    </p>
  )
}
