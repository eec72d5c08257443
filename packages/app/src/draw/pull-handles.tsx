import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import { keepsOf, pulledFrame, snappedTurn, turnedFrame } from '../../../engine/src/draw/pull.ts'
import type { PageView } from '../../../engine/src/sheets/page-data.ts'
import { arrowStep } from '../look/arrow-keys.ts'
import { eventPlace, thousandth, toSheet } from '../sheet/place.ts'
import { w } from '../text/words.ts'
import type { PlannedView } from '../worker/views.ts'
import { drag, followHand, letGo, lift } from './drag.ts'
import type { Grip } from './grips.ts'
import { gripsOf, nearestGrip } from './grips.ts'
import type { Held } from './held.ts'
import { grip, held, point } from './held.ts'
import { dragPart, SNAP_MM, TREMBLE_MM } from './part-drag.ts'
import { partBoxes, sceneFor, snappedPoint, snappedPull } from './plan-scene.ts'
import { addAfter, takeOut } from './points.ts'
import { nameOf, removeEntry, workTool } from './tools.ts'

type Pair = readonly [number, number]

/** Steps of a turn by the arrow keys, degrees: alone, and with Shift. */
const TURN = { deg: 1, longDeg: 15 } as const
/** Half the side of a handle, and how far round it a press counts: by mouse, by finger (44 px across); px. */
const HALF_PX = 4.5
/** Places nearer than this are one, mm. */
const SAME_MM = 0.002
const REACH_PX = { fine: 12, coarse: 22 } as const

/** Handles of the part in hand: its sides and corners, its turn, or its points one by one. */
export function PullHandles({ planned, view }: { readonly planned: PlannedView; readonly view: PageView }) {
  const group = useRef<SVGGElement>(null)
  const [pxPerMm, setPx] = useState(4)
  const now = held.value
  useLayoutEffect(() => {
    const svg = group.current?.ownerSVGElement
    if (!svg) return
    const measure = () => setPx(svg.getScreenCTM()?.a || 4)
    measure()
    const watch = new ResizeObserver(measure)
    watch.observe(svg)
    return () => watch.disconnect()
  }, [now === null, view])
  if (now === null) return null
  const reach = matchMedia('(pointer: coarse)').matches ? REACH_PX.coarse : REACH_PX.fine
  const grips = gripsOf(now, view, grip.value, reach / pxPerMm)
  const name = nameOf(now.at)
  const press = (e: PointerEvent) => {
    const on = e.currentTarget as SVGGElement
    const svg = on.ownerSVGElement
    const at = svg === null ? null : eventPlace(svg, view, e)
    if (at === null || e.button !== 0) return
    e.stopPropagation()
    const near = nearestGrip(grips, at, [now.frame.x, now.frame.y])
    // On a small part the places of the handles meet: its middle still moves it.
    if (near === null) dragPart(on, e, planned, view, now.at, name)
    else follow(on, e, planned, view, now, near)
  }
  return (
    <g class="pulls" ref={group} onPointerDown={press}>
      {grips.map(g => {
        const [x, y] = toSheet(view, ...g.at)
        const half = HALF_PX / pxPerMm
        const here =
          g.kind === 'vertex' && point.value?.ring === g.ring && point.value.index === g.index ? ' here' : ''
        return (
          <g
            key={g.key}
            data-grip={g.key}
            class={`handle ${g.kind}${here}`}
            tabindex={0}
            role="button"
            aria-label={`${name}: ${wordsOf(g)}`}
            onFocus={() => {
              if (g.kind === 'vertex') point.value = { ring: g.ring, index: g.index }
            }}
            onKeyDown={e => keys(e, view, now, g)}
          >
            {g.kind !== 'turn' ? null : (
              <path class="stem" d={`M${x} ${y}L${toSheet(view, ...g.foot).join(' ')}`} />
            )}
            <circle class="reach" cx={x} cy={y} r={reach / pxPerMm} />
            {g.kind === 'pull' ? (
              <rect x={x - half} y={y - half} width={2 * half} height={2 * half} />
            ) : (
              <circle class="dot" cx={x} cy={y} r={dotRadius(g, half)} />
            )}
          </g>
        )
      })}
    </g>
  )
}

// Points that stand close are drawn small enough to be told apart; a press takes the nearest.
function dotRadius(g: Grip, half: number): number {
  if (g.kind === 'between') return 0.6 * half
  return g.kind === 'vertex' ? Math.max(0.35 * half, Math.min(half, 0.36 * g.roomMm)) : half
}

function wordsOf(g: Grip): string {
  switch (g.kind) {
    case 'pull':
      return w.draw.handle(g.handle)
    case 'turn':
      return w.draw.turner
    case 'vertex':
      return w.draw.vertex(g.index + 1)
    case 'between':
      return w.draw.between(g.index + 1)
  }
}

/** Lays a grip at a place of the plan (a turn: at degrees), as one edit. */
function laid(now: Held, g: Grip, to: Pair | number): Promise<boolean> {
  const { at } = now
  const name = nameOf(at)
  if (typeof to === 'number') return workTool(w.turned(name), { tool: 'frame', at, key: 'turnDeg', to })
  switch (g.kind) {
    case 'pull':
      return workTool(w.draw.sized(name), { tool: 'resize', at, handle: g.handle, to })
    case 'vertex':
      return workTool(w.draw.pointed(name), { tool: 'vertex', at, ring: g.ring, index: g.index, to })
    case 'between':
      point.value = { ring: g.ring, index: g.index + 1 }
      return workTool(w.draw.pointed(name), { tool: 'add vertex', at, ring: g.ring, index: g.index, to })
    case 'turn':
      return Promise.resolve(false)
  }
}

function keys(e: KeyboardEvent, view: PageView, now: Held, g: Grip): void {
  if (e.altKey || e.ctrlKey || e.metaKey) return
  const way = arrowStep(e, view.face === 'back')
  if (way !== null && g.kind === 'turn') {
    // Up and left turn against the clock, as the plan is seen.
    const left = view.face === 'back' ? way[0] > 0 : way[0] < 0
    const sign = (way[1] > 0 || left ? 1 : -1) * (view.face === 'back' ? -1 : 1)
    void laid(now, g, now.frame.turnDeg + sign * (e.shiftKey ? TURN.longDeg : TURN.deg))
  } else if (way !== null) {
    void laid(now, g, [thousandth(g.at[0] + way[0]), thousandth(g.at[1] + way[1])])
  } else if (g.kind === 'vertex' && e.key === 'Delete') {
    void takeOut(now, g)
  } else if ((g.kind === 'vertex' && e.key === 'Insert') || (g.kind === 'between' && e.key === 'Enter')) {
    void addAfter(now, g)
  } else if (e.key === 'Delete') removeEntry(now.at)
  else return
  e.preventDefault()
  e.stopPropagation()
}

// Follows a hand that drags a grip. While it does, only the outline's transform, or the point itself, is moved.
function follow(
  on: SVGGElement,
  e: PointerEvent,
  planned: PlannedView,
  view: PageView,
  now: Held,
  g: Grip
): void {
  const svg = on.ownerSVGElement!
  const { frame, at } = now
  const scene = sceneFor(planned, partBoxes(planned), at)
  const near = SNAP_MM / view.scale
  const middle: Pair = [frame.x, frame.y]
  const angle = (p: Pair) => (Math.atan2(p[1] - middle[1], p[0] - middle[0]) * 180) / Math.PI
  const start = eventPlace(svg, view, e) ?? g.at
  const first = angle(start)
  let under = false
  const own = g.kind === 'pull' || g.kind === 'turn' ? null : on.querySelector(`[data-grip="${g.key}"]`)
  let to: Pair | number | null = null
  if (g.kind === 'vertex') point.value = { ring: g.ring, index: g.index }
  const moving = (m: PointerEvent) => {
    const spot = eventPlace(svg, view, m)
    if (spot === null) return
    under ||= Math.hypot(spot[0] - start[0], spot[1] - start[1]) * view.scale > TREMBLE_MM
    if (!under) return
    const free = m.altKey
    if (g.kind === 'turn') {
      const deg = frame.turnDeg + angle(spot) - first
      const snapped = free ? Math.round((deg - 360 * Math.round(deg / 360)) * 10) / 10 : snappedTurn(deg)
      to = snapped
      const turned = turnedFrame(frame, snapped)
      lift(svg, view, at, turned.map)
      drag.value = { at, guides: [], frame: turned.frame, changes: 'turn' }
    } else if (g.kind === 'pull') {
      const got = snappedPull(frame, g.handle, spot, free ? null : scene, near)
      to = got.to
      const pulled = pulledFrame(frame, g.handle, got.to, keepsOf(now.shape))
      lift(svg, view, at, pulled.map)
      drag.value = { at, guides: got.guides, frame: pulled.frame, changes: 'size' }
    } else {
      const got = snappedPoint(spot, free ? null : scene, near)
      to = got.to
      const [x0, y0] = toSheet(view, ...g.at)
      const [x1, y1] = toSheet(view, ...got.to)
      svg.classList.add('dragging')
      own?.classList.add('dragged')
      own?.setAttribute('transform', `translate(${x1 - x0} ${y1 - y0})`)
      drag.value = { at, guides: got.guides, frame: { x: got.to[0], y: got.to[1] }, changes: 'point' }
    }
  }
  followHand(on, e.pointerId, moving, async released => {
    const meant = released && to !== null && !same(to, g, frame.turnDeg) ? to : null
    if (released && !under && g.kind === 'between') void addAfter(now, g)
    letGo(meant !== null)
    if (meant !== null && !(await laid(now, g, meant))) letGo(false)
    svg.classList.remove('dragging')
    own?.classList.remove('dragged')
    own?.removeAttribute('transform')
  })
}

// Let go where it was taken hold of: nothing is changed.
function same(to: Pair | number, g: Grip, turnDeg: number): boolean {
  if (typeof to === 'number') return to === turnDeg
  return g.kind !== 'between' && Math.hypot(to[0] - g.at[0], to[1] - g.at[1]) < SAME_MM
}
