import { useState } from 'preact/hooks'
import type { Box, Guide } from '../../../engine/src/draw/snap.ts'
import { boxOf, snapBox } from '../../../engine/src/draw/snap.ts'
import type { PageView } from '../../../engine/src/sheets/page-data.ts'
import { chosen, edit, piece } from '../state/desk.ts'
import { w } from '../text/words.ts'
import type { Json, PlannedView } from '../worker/messages.ts'
import { movePatch } from './move.ts'
import { eventPlace, ringPath, toSheet } from './place.ts'

interface Part {
  readonly at: string
  readonly name: string
  readonly d: string
}

/** Steps of the arrow keys, mm. */
const STEP_MM = 1
const LONG_STEP_MM = 10
/** Least way of a drag, mm on the plan: a press that trembles moves nothing. */
const TREMBLE_MM = 0.4

/** What can be taken hold of on the plan: timbers, cuts, hardware. Chosen by press or Enter, moved by drag or arrows. */
export function PartHandles({ planned, view }: { readonly planned: PlannedView; readonly view: PageView }) {
  const [by, setBy] = useState<{ at: string; dx: number; dy: number; guides: readonly Guide[] } | null>(null)
  const parts = partsOf(planned, view)
  const move = (at: string, name: string, dx: number, dy: number) => {
    const document = piece.value?.document
    if (document === undefined || (dx === 0 && dy === 0)) return
    edit(w.moved(name), movePatch(document as Json, at, dx, dy))
  }
  return (
    <g class="parts">
      {(by?.guides ?? []).map(g => {
        const [x0, y0] = g.axis === 'x' ? toSheet(view, g.at, g.from) : toSheet(view, g.from, g.at)
        const [x1, y1] = g.axis === 'x' ? toSheet(view, g.at, g.to) : toSheet(view, g.to, g.at)
        return <path key={`${g.axis} ${g.at}`} class="guide" d={`M${x0} ${y0}L${x1} ${y1}`} />
      })}
      {parts.map(part => {
        const here = chosen.value === part.at
        const shift =
          by?.at === part.at
            ? `translate(${((view.face === 'back' ? -by.dx : by.dx) * view.scale).toFixed(3)} ${(-by.dy * view.scale).toFixed(3)})`
            : undefined
        let from: readonly [number, number] | null = null
        return (
          <path
            key={part.at}
            class={`part${here ? ' here' : ''}${shift === undefined ? '' : ' moving'}`}
            data-at={part.at}
            d={part.d}
            transform={shift}
            fill-rule="evenodd"
            tabindex={0}
            role="button"
            aria-pressed={here}
            aria-label={part.name}
            onKeyDown={e => {
              const step = e.shiftKey ? LONG_STEP_MM : STEP_MM
              const right = view.face === 'back' ? -step : step
              const to = {
                ArrowRight: [right, 0],
                ArrowLeft: [-right, 0],
                ArrowUp: [0, step],
                ArrowDown: [0, -step]
              }[e.key]
              if (e.key === 'Enter' || e.key === ' ') {
                e.preventDefault()
                chosen.value = here ? null : part.at
              } else if (e.key === 'Escape') chosen.value = null
              else if (to !== undefined && here) {
                e.preventDefault()
                e.stopPropagation()
                move(part.at, part.name, to[0]!, to[1]!)
              }
            }}
            onPointerDown={e => {
              const path = e.currentTarget as SVGPathElement
              const svg = path.ownerSVGElement
              const start = svg === null ? null : eventPlace(svg, view, e)
              if (svg === null || start === null || e.button !== 0) return
              if (!here && e.pointerType === 'touch') {
                // A finger first chooses; only what is chosen is dragged, so that the sheet still scrolls.
                chosen.value = part.at
                return
              }
              path.setPointerCapture(e.pointerId)
              from = start
              const dragged = (m: PointerEvent): Dragged => {
                const now = eventPlace(svg, view, m) ?? start
                return snapped(
                  planned,
                  view,
                  part.at,
                  round(now[0] - start[0]),
                  round(now[1] - start[1]),
                  m.altKey
                )
              }
              const moving = (m: PointerEvent) => {
                const { dx, dy, guides } = dragged(m)
                if (Math.hypot(dx, dy) > TREMBLE_MM) setBy({ at: part.at, dx, dy, guides })
              }
              const end = (m: PointerEvent) => {
                path.removeEventListener('pointermove', moving)
                path.removeEventListener('pointerup', end)
                path.removeEventListener('pointercancel', end)
                setBy(null)
                const { dx, dy } = dragged(m)
                chosen.value = part.at
                if (m.type === 'pointerup' && from !== null && Math.hypot(dx, dy) > TREMBLE_MM)
                  move(part.at, part.name, dx, dy)
              }
              path.addEventListener('pointermove', moving)
              path.addEventListener('pointerup', end)
              path.addEventListener('pointercancel', end)
            }}
          />
        )
      })}
    </g>
  )
}

interface Dragged {
  readonly dx: number
  readonly dy: number
  readonly guides: readonly Guide[]
}

/** How near a line of the plan draws what is moved, mm on the sheet. */
const SNAP_MM = 1.6

// A drag drawn to centre lines, edges and middles of others, whole millimetres; Alt lets it go free.
function snapped(
  planned: PlannedView,
  view: PageView,
  at: string,
  dx: number,
  dy: number,
  free: boolean
): Dragged {
  if (free) return { dx, dy, guides: [] }
  const { geometry } = planned.model
  const boxes = new Map<string, Box>()
  geometry.timbers.forEach((t, i) => {
    boxes.set(`/timbers/${i}`, boxOf(...t.upper.rings))
  })
  geometry.cutRegions.forEach((r, i) => {
    if (r !== null) boxes.set(`/cuts/${i}`, boxOf(...r.rings))
  })
  for (const h of planned.parts)
    boxes.set(h.at, {
      minX: h.x - h.lengthMm / 2,
      maxX: h.x + h.lengthMm / 2,
      minY: h.y - h.widthMm / 2,
      maxY: h.y + h.widthMm / 2
    })
  const own = boxes.get(at)
  if (own === undefined) return { dx, dy, guides: [] }
  const outline = boxOf(...geometry.outline.rings)
  const moving = { minX: own.minX + dx, maxX: own.maxX + dx, minY: own.minY + dy, maxY: own.maxY + dy }
  const got = snapBox(
    moving,
    {
      centre: [(outline.minX + outline.maxX) / 2, (outline.minY + outline.maxY) / 2],
      others: [...boxes].filter(([key]) => key !== at).map(([, b]) => b),
      gridMm: 1
    },
    SNAP_MM / view.scale
  )
  return { dx: round(dx + got.dx), dy: round(dy + got.dy), guides: got.guides }
}

function round(mm: number): number {
  return Math.round(mm * 10) / 10
}

function partsOf(planned: PlannedView, view: PageView): Part[] {
  const { geometry } = planned.model
  const name = (at: string) => planned.entries.find(e => e.at === at)?.name ?? at
  const out: Part[] = geometry.timbers.map((t, i) => ({
    at: `/timbers/${i}`,
    name: name(`/timbers/${i}`),
    d: ringPath(view, t.upper.rings)
  }))
  geometry.cutRegions.forEach((region, i) => {
    if (region !== null)
      out.push({ at: `/cuts/${i}`, name: name(`/cuts/${i}`), d: ringPath(view, region.rings) })
  })
  for (const h of planned.parts) {
    const [x, y] = toSheet(view, h.x, h.y)
    const [rw, rh] = [(h.lengthMm / 2) * view.scale, (h.widthMm / 2) * view.scale]
    out.push({
      at: h.at,
      name: name(h.at),
      d: h.round
        ? `M${x - rw} ${y}a${rw} ${rw} 0 1 0 ${2 * rw} 0a${rw} ${rw} 0 1 0 ${-2 * rw} 0Z`
        : `M${x - rw} ${y - rh}h${2 * rw}v${2 * rh}h${-2 * rw}Z`
    })
  }
  return out
}
