import { useRef, useState } from 'preact/hooks'
import type { Homography, Point } from '../../../engine/src/draw/perspective.ts'
import { mmPerPx, mmToPx } from '../../../engine/src/draw/perspective.ts'
import { unwarpSize } from '../../../engine/src/draw/unwarp.ts'
import { bounds } from '../../../engine/src/shape/measure.ts'
import { tenth } from '../sheet/place.ts'
import { view as planned } from '../state/desk.ts'
import { w } from '../text/words.ts'
import { laid as laying, layPhoto } from './desk-photo.ts'
import type { Laid } from './laying.ts'
import { Loupe } from './loupe.tsx'
import { arrow } from './mark.tsx'
import { PadControls } from './pad-controls.tsx'
import { useSize } from './pad-size.ts'
import type { Picture } from './picture.ts'
import { PlanOver } from './plan-over.tsx'
import type { Catch } from './trace-hand.ts'
import { movePoint, removePoint, setPoint, setStroke, traceOnPlan } from './trace-hand.ts'
import { TraceLine } from './trace-line.tsx'
import type { View } from './trace-view.ts'
import { gridStep, pulled, sheetOf, together, toPad, toPlan, whole, zoomed } from './trace-view.ts'

export type Mode = 'points' | 'stroke' | 'photo' | 'view'

/** Way of a pointer that is no press any more, px. */
const TREMBLE_PX = 5
/** How near a point is taken hold of, px: by mouse and pen, by finger. */
const HOLD_PX = [9, 22] as const
/** How near a stretch of the line a press comes between its ends, px. */
const BETWEEN_PX = 6
const TIMES = 1.5

type Drag =
  | { readonly kind: 'press'; readonly from: Point }
  | { readonly kind: 'point'; readonly k: number; readonly from: Point; moved: boolean }
  | { readonly kind: 'stroke'; readonly line: Point[] }
  | { readonly kind: 'photo'; readonly from: Point; readonly at: Point }
  | { readonly kind: 'view'; last: Point }

/** The photo laid flat under the grid of the plan, and the line traced over it. */
export function TracePad(p: {
  readonly picture: Picture
  readonly laid: Laid
  readonly map: Homography
  readonly mode: Mode
  readonly within: Catch
}) {
  const { picture, laid, map, within } = p
  const host = useRef<HTMLDivElement>(null)
  const size = useSize(host)
  const [own, setOwn] = useState<View | null>(null)
  const [hover, setHover] = useState<Point | null>(null)
  const [cross, setCross] = useState<Point | null>(null)
  const [stroke, setStrokeShown] = useState<readonly Point[]>([])
  const drag = useRef<Drag | null>(null)
  const fingers = useRef(new Map<number, Point>())
  const geometry = planned.value?.model.geometry ?? null
  const photoBox = unwarpSize(map, ...picture.sizePx, { unitsPerMm: 1, originX: 0, originY: 0 }).boxMm
  const outlineBox = geometry === null ? null : bounds(geometry.outline)
  const all = together(photoBox ?? outlineBox ?? { minX: -200, minY: -150, maxX: 200, maxY: 150 }, outlineBox)
  const view = own ?? whole(all, size)
  const sheet = sheetOf(view, size)
  const points = traceOnPlan(map, laid.trace).map(m => (m === null ? null : toPad(sheet, m)))
  const at = (e: { clientX: number; clientY: number }): Point => {
    const b = host.current!.getBoundingClientRect()
    return [e.clientX - b.left, e.clientY - b.top]
  }
  const mm = 1 / view.scale
  const zoom = (times: number, about: Point = [size[0] / 2, size[1] / 2]) =>
    setOwn(zoomed(view, size, about, times))
  const nearest = (px: Point, reach: number): number | null => {
    let [least, found] = [reach, null as number | null]
    points.forEach((q, k) => {
      const d = q === null ? Number.POSITIVE_INFINITY : Math.hypot(q[0] - px[0], q[1] - px[1])
      if (d < least) [least, found] = [d, k]
    })
    return found
  }
  const begin = (e: PointerEvent) => {
    if (e.button > 1) return
    host.current!.querySelector<HTMLElement>('.photo-face')!.setPointerCapture(e.pointerId)
    const from = at(e)
    fingers.current.set(e.pointerId, from)
    setCross(null)
    if (fingers.current.size > 1) {
      // A second finger pulls and spreads the view; what the first began is let go.
      drag.current = null
      setStrokeShown([])
      return
    }
    const k = nearest(from, HOLD_PX[e.pointerType === 'touch' ? 1 : 0])
    if (e.button === 1 || p.mode === 'view') drag.current = { kind: 'view', last: from }
    else if (p.mode === 'photo')
      drag.current = { kind: 'photo', from: toPlan(sheet, from), at: laid.at ?? [0, 0] }
    else if (k !== null) drag.current = { kind: 'point', k, from, moved: false }
    else if (p.mode === 'stroke') drag.current = { kind: 'stroke', line: [toPlan(sheet, from)] }
    else drag.current = { kind: 'press', from }
  }
  const pinch = (e: PointerEvent, now: Point) => {
    const other = [...fingers.current].find(([id]) => id !== e.pointerId)?.[1]
    const was = fingers.current.get(e.pointerId)
    if (other === undefined || was === undefined) return
    const spread = (q: Point) => Math.max(10, Math.hypot(q[0] - other[0], q[1] - other[1]))
    const middle: Point = [(now[0] + other[0]) / 2, (now[1] + other[1]) / 2]
    setOwn(
      zoomed(
        pulled(view, (now[0] - was[0]) / 2, (now[1] - was[1]) / 2),
        size,
        middle,
        spread(now) / spread(was)
      )
    )
  }
  const move = (e: PointerEvent) => {
    const now = at(e)
    if (e.pointerType !== 'touch' || e.buttons !== 0) setHover(now)
    if (fingers.current.size > 1) {
      pinch(e, now)
      fingers.current.set(e.pointerId, now)
      return
    }
    const d = drag.current
    if (d === null) return
    if (d.kind === 'view') {
      setOwn(pulled(view, now[0] - d.last[0], now[1] - d.last[1]))
      d.last = now
    } else if (d.kind === 'photo') {
      const [x, y] = toPlan(sheet, now)
      layPhoto({ at: [tenth(d.at[0] + x - d.from[0]), tenth(d.at[1] + y - d.from[1])] })
    } else if (d.kind === 'point') {
      if (!d.moved && Math.hypot(d.from[0] - now[0], d.from[1] - now[1]) < TREMBLE_PX) return
      d.moved = true
      movePoint(map, d.k, toPlan(sheet, now), null)
    } else if (d.kind === 'stroke') {
      for (const c of e.getCoalescedEvents?.() ?? [e]) d.line.push(toPlan(sheet, at(c)))
      setStrokeShown([...d.line])
    } else if (Math.hypot(now[0] - d.from[0], now[1] - d.from[1]) > TREMBLE_PX)
      drag.current = { kind: 'view', last: now }
  }
  const end = (e: PointerEvent) => {
    fingers.current.delete(e.pointerId)
    const d = drag.current
    drag.current = null
    setStrokeShown([])
    if (e.pointerType === 'touch') setHover(null)
    if (d === null || e.type === 'pointercancel') return
    const to = toPlan(sheet, at(e))
    const caught = e.altKey ? null : within
    // A press beside a point, which was not pulled, is a point of its own: else a finger could not set them close.
    const beside =
      d.kind === 'point' && !d.moved && p.mode === 'points' && nearest(at(e), TREMBLE_PX) === null
    if (d.kind === 'press' || beside) setPoint(map, to, caught, BETWEEN_PX * mm)
    else if (d.kind === 'point' && d.moved) movePoint(map, d.k, to, caught)
    else if (d.kind === 'stroke') setStroke(map, d.line, caught, mm)
  }
  const keys = (e: KeyboardEvent) => {
    if (e.altKey || e.ctrlKey || e.metaKey) return
    const by = arrow(e)
    if (e.key === '+' || e.key === '=') zoom(TIMES, cross ?? undefined)
    else if (e.key === '-') zoom(1 / TIMES, cross ?? undefined)
    else if (e.target !== e.currentTarget) return
    else if (by !== null) {
      const from = cross ?? [size[0] / 2, size[1] / 2]
      const to: Point = [from[0] + by[0], from[1] + by[1]]
      // At the rim the view goes along.
      const over: Point = [to[0] - clamp(to[0], size[0]), to[1] - clamp(to[1], size[1])]
      if (over[0] !== 0 || over[1] !== 0) setOwn(pulled(view, -over[0], -over[1]))
      setCross([to[0] - over[0], to[1] - over[1]])
    } else if (e.key === 'Enter' || e.key === ' ') {
      setPoint(map, toPlan(sheet, cross ?? [size[0] / 2, size[1] / 2]), within, BETWEEN_PX * mm)
    } else if (e.key === 'Backspace') removePoint((laying.value?.trace.length ?? 0) - 1)
    else return
    e.preventDefault()
  }
  const looked = cross ?? hover
  const photoPx = looked === null ? null : mmToPx(map, ...toPlan(sheet, looked))
  // Within how much of the screen an edge is caught: the photo is not equally large everywhere.
  const ring =
    photoPx === null || within === null ? 0 : within * mmPerPx(map, photoPx[0], photoPx[1]) * view.scale
  const { matrix3d } = unwarpSize(map, ...picture.sizePx, sheet)
  return (
    <div class="photo-pad trace" ref={host}>
      <div
        class={`photo-face ${p.mode}`}
        tabindex={0}
        role="application"
        aria-label={w.photo.plan}
        onKeyDown={keys}
        onPointerDown={begin}
        onPointerMove={move}
        onPointerUp={end}
        onPointerCancel={end}
        onPointerLeave={() => setHover(null)}
        onBlur={() => setCross(null)}
        onWheel={e => {
          e.preventDefault()
          zoom(Math.exp(-Math.max(-200, Math.min(200, e.deltaY)) / 300), at(e))
        }}
      >
        <img
          src={picture.url}
          alt=""
          draggable={false}
          width={picture.sizePx[0]}
          height={picture.sizePx[1]}
          style={{ transform: `matrix3d(${matrix3d.map(x => x.toPrecision(12)).join(',')})` }}
        />
        <svg class="over" viewBox={`0 0 ${size[0]} ${size[1]}`}>
          <g>
            <PlanOver view={view} size={size} geometry={geometry} />
            {stroke.length > 1 ? (
              <path class="line" d={`M${stroke.map(q => toPad(sheet, q).join(' ')).join('L')}`} />
            ) : null}
            {looked !== null && ring > 0 && (p.mode === 'points' || p.mode === 'stroke') ? (
              <circle class="within" cx={looked[0]} cy={looked[1]} r={Math.max(2, ring)} />
            ) : null}
            {cross === null ? null : (
              <path class="cross" d={`M${cross[0] - 12} ${cross[1]}h24M${cross[0]} ${cross[1] - 12}v24`} />
            )}
          </g>
          <TraceLine
            points={points}
            onMove={(k, dx, dy) => {
              const q = points[k]
              const px = laid.trace[k]
              if (q == null || px === undefined) return
              // A step is a px of the photo, in the direction of the arrow as seen.
              const step = mmPerPx(map, px[0], px[1]) * view.scale
              movePoint(map, k, toPlan(sheet, [q[0] + dx * step, q[1] + dy * step]), null)
            }}
            onRemove={removePoint}
          />
        </svg>
      </div>
      <PadControls
        onLarger={() => zoom(TIMES)}
        onSmaller={() => zoom(1 / TIMES)}
        onWhole={() => setOwn(null)}
      >
        <span class="q">{w.photo.grid(gridStep(view))}</span>
      </PadControls>
      {photoPx === null || looked === null || p.mode === 'photo' || p.mode === 'view' ? null : (
        <Loupe picture={picture} at={photoPx} left={looked[0] > size[0] / 2 && looked[1] < size[1] / 2} />
      )}
    </div>
  )
}

function clamp(x: number, most: number): number {
  return Math.min(most, Math.max(0, x))
}
