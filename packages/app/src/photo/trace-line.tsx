import { w } from '../text/words.ts'
import { arrow } from './mark.tsx'

type Place = readonly [number, number] | null

/** The traced line on the pad, its points in reach of the keys. What would close it is dashed. */
export function TraceLine(p: {
  readonly points: readonly Place[]
  readonly onMove: (k: number, dx: number, dy: number) => void
  readonly onRemove: (k: number) => void
}) {
  const seen = p.points.filter(q => q !== null)
  if (seen.length === 0) return null
  const d = `M${seen.map(([x, y]) => `${x.toFixed(2)} ${y.toFixed(2)}`).join('L')}`
  const [first, last] = [seen[0]!, seen[seen.length - 1]!]
  const keys = (k: number, e: KeyboardEvent) => {
    if (e.altKey || e.ctrlKey || e.metaKey) return
    const by = arrow(e)
    if (by !== null) p.onMove(k, ...by)
    else if (e.key === 'Delete' || e.key === 'Backspace') {
      const own = e.currentTarget as SVGElement
      const all = [...own.parentElement!.querySelectorAll<SVGElement>('.vertex')]
      const at = all.indexOf(own)
      // The hand stays in the line: on the point before, of the first on the next, of the only one on the photo. At
      // once: a focus that came a frame later would take the next key from where the hand went meanwhile.
      const before = all[at - 1] ?? (all.length > 1 ? own : own.closest<HTMLElement>('.photo-face'))
      before?.focus({ preventScroll: true })
      p.onRemove(k)
    } else return
    e.preventDefault()
    e.stopPropagation()
  }
  return (
    <g class="traced">
      <path class="under" d={d} />
      <path class="line" d={d} />
      {seen.length > 2 ? (
        <path
          class="line closing"
          d={`M${last[0].toFixed(2)} ${last[1].toFixed(2)}L${first[0].toFixed(2)} ${first[1].toFixed(2)}`}
        />
      ) : null}
      {p.points.map((q, k) =>
        q === null ? null : (
          <circle
            key={k}
            class={`vertex${k === p.points.length - 1 ? ' last' : ''}`}
            cx={q[0].toFixed(2)}
            cy={q[1].toFixed(2)}
            r={4}
            // SVG knows its attributes by their case: tabIndex is none of them.
            tabindex={0}
            role="button"
            aria-label={w.photo.vertex(k + 1)}
            onKeyDown={e => keys(k, e)}
          />
        )
      )}
    </g>
  )
}
