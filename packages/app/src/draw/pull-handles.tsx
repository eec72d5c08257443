import { useEffect, useState } from 'preact/hooks'
import type { PageView } from '../../../engine/src/sheets/page-data.ts'
import { eventPlace, toSheet } from '../sheet/place.ts'
import { chosen, piece } from '../state/desk.ts'
import { w } from '../text/words.ts'
import type { ToolAnswer } from '../worker/changes.ts'
import { askTool, nameOf, workTool } from './tools.ts'

type Pair = readonly [number, number]

/** Steps of the arrow keys, mm; half the side of a handle, and how far round it a press counts, mm on the sheet. */
const STEP_MM = 1
const LONG_STEP_MM = 10
const HALF_MM = 1
const REACH_MM = 3.2

/** Handles of the part in hand: its box pulled by eight places, its own points one by one. */
export function PullHandles({ view }: { readonly view: PageView }) {
  const at = chosen.value
  const document = piece.value?.document
  const [got, setGot] = useState<ToolAnswer | null>(null)
  const fits = at !== null && /^\/(timbers|cuts)\/\d+$/.test(at)
  useEffect(() => {
    setGot(null)
    if (!fits) return
    let here = true
    void askTool({ tool: 'handles', at: at! }).then(answer => {
      if (here && answer !== null && answer.problem === null) setGot(answer)
    })
    return () => {
      here = false
    }
  }, [at, document])
  if (!fits || got === null) return null
  const name = nameOf(at!)
  return (
    <g class="pulls">
      {(got.handles ?? []).map(h => (
        <Handle
          key={h.handle}
          view={view}
          at={h.at}
          words={`${name}: ${w.draw.handle(h.handle)}`}
          kind="pull"
          onLay={to => void workTool(w.draw.sized(name), { tool: 'resize', at: at!, handle: h.handle, to })}
        />
      ))}
      {(got.vertices ?? []).map(v => (
        <Handle
          key={`${v.ring} ${v.index}`}
          view={view}
          at={[v.x, v.y]}
          words={`${name}: ${w.draw.vertex(v.index + 1)}`}
          kind="vertex"
          onLay={to =>
            void workTool(w.draw.pointed(name), { tool: 'vertex', at: at!, ring: v.ring, index: v.index, to })
          }
          onRemove={() =>
            void workTool(w.draw.pointed(name), {
              tool: 'vertex',
              at: at!,
              ring: v.ring,
              index: v.index,
              to: null
            })
          }
          onAdd={() =>
            void workTool(w.draw.pointed(name), { tool: 'add vertex', at: at!, ring: v.ring, index: v.index })
          }
        />
      ))}
    </g>
  )
}

interface HandleProps {
  readonly view: PageView
  readonly at: Pair
  readonly words: string
  readonly kind: 'pull' | 'vertex'
  readonly onLay: (to: Pair) => void
  readonly onRemove?: () => void
  readonly onAdd?: () => void
}

function Handle(p: HandleProps) {
  const [now, setNow] = useState<Pair | null>(null)
  const [x, y] = toSheet(p.view, ...(now ?? p.at))
  const place = (e: PointerEvent): Pair | null => {
    const svg = (e.currentTarget as SVGElement).ownerSVGElement
    const to = svg === null ? null : eventPlace(svg, p.view, e)
    return to === null
      ? null
      : e.altKey
        ? [tenth(to[0]), tenth(to[1])]
        : [Math.round(to[0]), Math.round(to[1])]
  }
  return (
    <g
      class={`handle ${p.kind}`}
      tabindex={0}
      role="button"
      aria-label={p.words}
      onPointerDown={e => {
        e.stopPropagation()
        ;(e.currentTarget as Element).setPointerCapture(e.pointerId)
        setNow(p.at)
      }}
      onPointerMove={e => {
        if (now === null) return
        e.stopPropagation()
        const to = place(e)
        if (to !== null) setNow(to)
      }}
      onPointerUp={e => {
        const to = now
        setNow(null)
        if (to !== null && (to[0] !== p.at[0] || to[1] !== p.at[1])) p.onLay(to)
        e.stopPropagation()
      }}
      onPointerCancel={() => setNow(null)}
      onKeyDown={e => {
        const step = e.shiftKey ? LONG_STEP_MM : STEP_MM
        const right = p.view.face === 'back' ? -step : step
        const by = {
          ArrowRight: [right, 0],
          ArrowLeft: [-right, 0],
          ArrowUp: [0, step],
          ArrowDown: [0, -step]
        }[e.key]
        if (by !== undefined) p.onLay([tenth(p.at[0] + by[0]!), tenth(p.at[1] + by[1]!)])
        else if (e.key === 'Delete' && p.onRemove !== undefined) p.onRemove()
        else if (e.key === 'Insert' && p.onAdd !== undefined) p.onAdd()
        else return
        e.preventDefault()
        e.stopPropagation()
      }}
    >
      <circle class="reach" cx={x} cy={y} r={REACH_MM} />
      {p.kind === 'pull' ? (
        <rect x={x - HALF_MM} y={y - HALF_MM} width={2 * HALF_MM} height={2 * HALF_MM} />
      ) : (
        <circle class="dot" cx={x} cy={y} r={HALF_MM * 0.8} />
      )}
      {now === null ? null : (
        <text class="l-figure" x={x + 2.5} y={y - 2.5} font-size="3.5">
          {now[0]}, {now[1]}
        </text>
      )}
    </g>
  )
}

function tenth(mm: number): number {
  return Math.round(mm * 10) / 10
}
