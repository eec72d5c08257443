import { useLayoutEffect, useMemo } from 'preact/hooks'
import { turned } from '../../../engine/src/draw/shape-place.ts'
import type { PageView } from '../../../engine/src/sheets/page-data.ts'
import { lay } from '../draw/drag.ts'
import { dragPart, movePart } from '../draw/part-drag.ts'
import { removeEntry } from '../draw/tools.ts'
import { arrowStep } from '../look/arrow-keys.ts'
import { chosen } from '../state/desk.ts'
import type { PlannedView } from '../worker/views.ts'
import { ringPath, toSheet } from './place.ts'

interface Part {
  readonly at: string
  readonly name: string
  readonly d: string
}

/**
 * What can be taken hold of on the plan: timbers, cuts, hardware. Chosen by press or Enter, moved by drag or arrow
 * keys, removed by Delete.
 */
export function PartHandles({ planned, view }: { readonly planned: PlannedView; readonly view: PageView }) {
  const parts = useMemo(() => partsOf(planned, view), [planned, view])
  // What was drawn where the hand left it is now drawn there by the plan itself.
  useLayoutEffect(lay, [planned])
  return (
    <g class="parts">
      {parts.map(part => {
        const here = chosen.value === part.at
        return (
          <path
            key={part.at}
            class={`part${here ? ' here' : ''}`}
            data-at={part.at}
            d={part.d}
            fill-rule="evenodd"
            tabindex={0}
            role="button"
            aria-pressed={here}
            aria-label={part.name}
            onKeyDown={e => {
              const to = arrowStep(e, view.face === 'back')
              if (e.key === 'Enter' || e.key === ' ') {
                e.preventDefault()
                chosen.value = here ? null : part.at
              } else if (e.key === 'Escape') chosen.value = null
              else if (e.key === 'Delete' && here) removeEntry(part.at)
              else if (to !== null && here) {
                e.preventDefault()
                e.stopPropagation()
                movePart(part.at, part.name, ...to)
              }
            }}
            onPointerDown={e => {
              if (e.button !== 0) return
              // A finger first chooses; only what is chosen is dragged, so that the sheet still scrolls.
              if (!here && e.pointerType === 'touch') chosen.value = part.at
              else dragPart(e.currentTarget, e, planned, view, part.at, part.name)
            }}
          />
        )
      })}
    </g>
  )
}

function partsOf(planned: PlannedView, view: PageView): Part[] {
  const { geometry } = planned.model
  const name = (at: string) => planned.entries.find(e => e.at === at)?.name ?? at
  const out: Part[] = geometry.timbers.map((t, i) => ({
    at: `/timbers/${i}`,
    name: name(`/timbers/${i}`),
    d: ringPath(view, t.upper.rings)
  }))
  for (const c of planned.cuts) out.push({ at: c.at, name: name(c.at), d: ringPath(view, c.rings) })
  for (const h of planned.parts) out.push({ at: h.at, name: name(h.at), d: hardwarePath(view, h) })
  return out
}

function hardwarePath(view: PageView, h: PlannedView['parts'][number]): string {
  if (h.round) {
    const [x, y] = toSheet(view, h.x, h.y)
    const r = (h.lengthMm / 2) * view.scale
    return `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`
  }
  const corners = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1]
  ].flatMap(([u, v]) => {
    const [dx, dy] = turned((u! * h.lengthMm) / 2, (v! * h.widthMm) / 2, h.turnDeg)
    return [h.x + dx, h.y + dy]
  })
  return ringPath(view, [Float64Array.from(corners)])
}
