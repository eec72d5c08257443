import type { Bounds } from '../../../engine/src/shape/region.ts'
import type { PageView } from '../../../engine/src/sheets/page-data.ts'
import type { SectionPath } from '../../../engine/src/sheets/section-cut.ts'
import { arrowStep } from '../look/arrow-keys.ts'
import { w } from '../text/words.ts'
import { eventPlace, ownLine, toSheet } from './place.ts'

/** How far the line reaches beside the piece, mm on the sheet. */
const OVER_MM = 4.5

/** The line A-A on the plan: dragged across it, or moved by the arrow keys; V turns it across and along. */
export function LineHandle(p: { readonly view: PageView; readonly path: SectionPath; readonly box: Bounds }) {
  const { view, path, box } = p
  const along = path.along === 'x'
  const lay = (at: number, across = !along) => {
    const [from, to] = across ? [box.minY, box.maxY] : [box.minX, box.maxX]
    const [least, most] = across ? [box.minX, box.maxX] : [box.minY, box.maxY]
    const leg = Math.round(Math.min(most - 0.5, Math.max(least + 0.5, at)) * 10) / 10
    ownLine.value = { along: across ? 'y' : 'x', legs: [{ from, to, at: leg }] }
  }
  const first = path.legs[0]!
  const last = path.legs.at(-1)!
  const spots = path.legs.flatMap(l =>
    along
      ? [toSheet(view, l.from, l.at), toSheet(view, l.to, l.at)]
      : [toSheet(view, l.at, l.from), toSheet(view, l.at, l.to)]
  )
  const d = spots.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(2)} ${y.toFixed(2)}`).join('')
  const [sx, sy] = spots[0]!
  const [ex, ey] = spots.at(-1)!
  const ends = along
    ? `M${sx - OVER_MM} ${sy}H${sx + 1}M${ex - 1} ${ey}H${ex + OVER_MM}`
    : `M${sx} ${sy + OVER_MM}V${sy - 1}M${ex} ${ey + 1}V${ey - OVER_MM}`
  const drag = (e: PointerEvent) => {
    const svg = (e.currentTarget as SVGElement).ownerSVGElement
    if (svg === null || !(e.currentTarget as Element).hasPointerCapture(e.pointerId)) return
    const at = eventPlace(svg, view, e)
    if (at !== null) lay(along ? at[1] : at[0])
  }
  const keys = (e: KeyboardEvent) => {
    const by = arrowStep(e)
    if (by !== null) {
      e.preventDefault()
      lay(first.at + by[0] + by[1])
    } else if (e.key.toLowerCase() === 'v') {
      const middle = along ? (box.minX + box.maxX) / 2 : (box.minY + box.maxY) / 2
      lay(middle, along)
    }
  }
  // Arrows say which way the section is seen (ISO 128-3): up the plan, or to its left.
  const [ax, ay] = along ? [sx - OVER_MM, sy] : [sx, sy + OVER_MM]
  const [bx, by] = along ? [ex + OVER_MM, ey] : [ex, ey - OVER_MM]
  const arrows = [
    [ax, ay],
    [bx, by]
  ].map(([x, y]) => arrow(x!, y!, along))
  // Letters stand clear of the arrows and of the dimensions round the plan.
  const letters = along
    ? [
        [ax, ay + 4.6, 'middle'],
        [bx, by + 4.6, 'middle']
      ]
    : [
        [ax + 1.4, ay + 0.6, 'start'],
        [bx + 1.4, by + 3, 'start']
      ]
  return (
    <g
      class="line-a"
      tabindex={0}
      role="slider"
      aria-label={w.sheet.line}
      aria-valuenow={first.at}
      aria-valuemin={along ? box.minY : box.minX}
      aria-valuemax={along ? box.maxY : box.maxX}
      aria-valuetext={w.sheet.lineOwn(String(first.at === last.at ? first.at : `${first.at} … ${last.at}`))}
      onPointerDown={e => {
        e.stopPropagation()
        ;(e.currentTarget as Element).setPointerCapture(e.pointerId)
      }}
      onPointerMove={drag}
      onKeyDown={keys}
    >
      <path class="i-halo" d={d} />
      <path class="i-cutting-plane" d={d} />
      <path class="i-cutting-plane-end" d={ends} />
      {arrows.map(({ shaft, head }) => (
        <g key={head}>
          <path class="i-cutting-plane" d={shaft} />
          <path class="i-cutting-plane full" d={head} />
        </g>
      ))}
      {letters.map(([x, y, anchor]) => (
        <text
          key={`${x}`}
          class="l-plane"
          x={x}
          y={y}
          font-size="5"
          font-weight="700"
          text-anchor={anchor as 'start' | 'middle'}
        >
          A
        </text>
      ))}
      <path class="grip" d={`${d}${ends}`} />
    </g>
  )
}

/** Shaft and head of an arrow of a cutting plane, mm on the sheet. */
const SHAFT_MM = 3.2
const HEAD_MM = 2.4

function arrow(x: number, y: number, up: boolean): { shaft: string; head: string } {
  const half = HEAD_MM * Math.tan(Math.PI / 12)
  const from = up ? y - SHAFT_MM : x - SHAFT_MM
  const tip = from - HEAD_MM
  return up
    ? { shaft: `M${x} ${y}V${from}`, head: `M${x} ${tip}L${x - half} ${from}H${x + half}Z` }
    : { shaft: `M${x} ${y}H${from}`, head: `M${tip} ${y}L${from} ${y - half}V${y + half}Z` }
}
