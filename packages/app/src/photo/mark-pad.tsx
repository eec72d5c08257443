import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { Point } from '../../../engine/src/draw/perspective.ts'
import { cornersInOrder } from '../../../engine/src/draw/perspective.ts'
import { w } from '../text/words.ts'
import { layPhoto } from './desk-photo.ts'
import type { Laid } from './laying.ts'
import { marksOf, sidesAsSeen } from './laying.ts'
import { Loupe } from './loupe.tsx'
import { arrow, Mark, placed } from './mark.tsx'
import { PadControls } from './pad-controls.tsx'
import type { Picture } from './picture.ts'

/** How much larger one press shows the photo, and how much larger than whole at most. */
const STEP_TIMES = 1.6
const MOST_TIMES = 10

/** The photo as it was taken, with its marks to set and to pull. */
export function MarkPad({ picture, laid }: { readonly picture: Picture; readonly laid: Laid }) {
  const host = useRef<HTMLDivElement>(null)
  const stage = useRef<HTMLDivElement>(null)
  const paper = useRef<HTMLCanvasElement>(null)
  const [look, setLook] = useState<Point | null>(null)
  const [cross, setCross] = useState<Point>([laid.sizePx[0] / 2, laid.sizePx[1] / 2])
  const [fit, setFit] = useState(0.1)
  const [times, setTimes] = useState(1)
  const [wide, high] = laid.sizePx
  const needs = marksOf(laid.way)
  // Px of the screen a px of the photo.
  const shown = fit * times
  useLayoutEffect(() => {
    const box = host.current
    if (box === null) return
    const measure = () => setFit(Math.min(box.offsetWidth / wide, box.offsetHeight / high))
    measure()
    const watch = new ResizeObserver(measure)
    watch.observe(box)
    return () => watch.disconnect()
  }, [wide, high])
  // What was in the middle stays there while the photo grows.
  const before = useRef(shown)
  useLayoutEffect(() => {
    const box = host.current
    const grown = shown / before.current
    before.current = shown
    if (box === null || grown === 1) return
    box.scrollLeft = (box.scrollLeft + box.clientWidth / 2) * grown - box.clientWidth / 2
    box.scrollTop = (box.scrollTop + box.clientHeight / 2) * grown - box.clientHeight / 2
  }, [shown])
  useEffect(() => {
    const canvas = paper.current
    const pen = canvas?.getContext('2d') ?? null
    if (canvas === null || pen === null) return
    // No more px than the screen shows, and none that the photo has not.
    const scale = Math.min(1, shown * (devicePixelRatio || 1))
    canvas.width = Math.max(1, Math.round(wide * scale))
    canvas.height = Math.max(1, Math.round(high * scale))
    pen.imageSmoothingQuality = 'high'
    pen.drawImage(picture.bitmap, 0, 0, canvas.width, canvas.height)
  }, [picture, shown])
  const within = ([u, v]: Point): Point => [Math.min(wide, Math.max(0, u)), Math.min(high, Math.max(0, v))]
  const placeOf = (e: { clientX: number; clientY: number }): Point => {
    const b = stage.current!.getBoundingClientRect()
    return within([((e.clientX - b.left) / b.width) * wide, ((e.clientY - b.top) / b.height) * high])
  }
  const set = (k: number, to: Point) =>
    layPhoto({ marks: laid.marks.map((m, j) => (j === k ? within(to) : m)) })
  const add = (to: Point) => {
    if (laid.marks.length >= needs) return
    const marks = [...laid.marks, within(to)]
    if (marks.length < needs || laid.way === 'distance') layPhoto({ marks })
    else {
      const ordered = cornersInOrder(marks)
      layPhoto({ marks: ordered, sidesMm: sidesAsSeen(ordered, laid.sidesMm) })
    }
  }
  const keys = (e: KeyboardEvent) => {
    if (e.target !== e.currentTarget) return
    const by = arrow(e)
    if (by !== null) {
      e.preventDefault()
      const to = within([cross[0] + by[0], cross[1] + by[1]])
      setCross(to)
      setLook(to)
    } else if (e.key === 'Enter') {
      e.preventDefault()
      add(cross)
    } else if (e.key === 'Backspace' && laid.marks.length > 0) {
      e.preventDefault()
      layPhoto({ marks: laid.marks.slice(0, -1) })
    }
  }
  const unit = 1 / shown
  return (
    // No taller than the photo is at the full width of the screen.
    <div class="photo-pad marks" style={{ maxHeight: `calc(${((high / wide) * 100).toFixed(1)}vw + 3rem)` }}>
      <div class="photo-scroll" ref={host}>
        <div
          class="photo-stage"
          ref={stage}
          style={{ width: `${wide * shown}px`, height: `${high * shown}px` }}
        >
          <div
            class="photo-face"
            tabindex={0}
            role="application"
            aria-label={w.photo.picture}
            onKeyDown={keys}
            onBlur={() => setLook(null)}
            onPointerMove={e => {
              if (e.pointerType === 'mouse' && laid.marks.length < needs) setLook(placeOf(e))
            }}
            onPointerLeave={() => setLook(null)}
            onClick={e => add(placeOf(e))}
          >
            <canvas ref={paper} />
            <svg class="over" viewBox={`0 0 ${wide} ${high}`} aria-hidden="true">
              {laid.marks.length > 1 ? (
                <path
                  class="under"
                  d={`M${laid.marks.map(p => p.join(' ')).join('L')}${laid.marks.length === 4 ? 'Z' : ''}`}
                />
              ) : null}
              {laid.marks.length > 1 ? (
                <path
                  class="line"
                  d={`M${laid.marks.map(p => p.join(' ')).join('L')}${laid.marks.length === 4 ? 'Z' : ''}`}
                />
              ) : null}
              {laid.marks.length < needs ? (
                <path
                  class="cross"
                  d={`M${cross[0] - 14 * unit} ${cross[1]}h${28 * unit}M${cross[0]} ${cross[1] - 14 * unit}v${28 * unit}`}
                />
              ) : null}
            </svg>
          </div>
          {laid.marks.map((m, k) => (
            <Mark
              key={k}
              k={k}
              at={m}
              laid={laid}
              shown={shown}
              placeOf={placeOf}
              onMove={to => {
                set(k, to)
                setLook(to)
              }}
              onLook={on => setLook(on ? m : null)}
            />
          ))}
          {sideWords(laid).map(({ at, words, side }) => (
            <span key={words + at[0]} class={`tag side ${side}`} style={placed(at, shown)}>
              {words}
            </span>
          ))}
        </div>
      </div>
      <PadControls
        onLarger={() => setTimes(Math.min(MOST_TIMES, times * STEP_TIMES))}
        onSmaller={times === 1 ? null : () => setTimes(Math.max(1, times / STEP_TIMES))}
        onWhole={times === 1 ? null : () => setTimes(1)}
      />
      {look === null ? null : (
        <Loupe picture={picture} at={look} left={underLoupe(host.current, look, shown)} />
      )}
    </div>
  )
}

// Whether a place of the photo lies in the upper right quarter of what is seen of it, where the loupe rests.
function underLoupe(box: HTMLElement | null, [u, v]: Point, shown: number): boolean {
  if (box === null) return false
  return u * shown - box.scrollLeft > box.clientWidth / 2 && v * shown - box.scrollTop < box.clientHeight / 2
}

// The length that each side is taken for, written at its middle.
function sideWords(laid: Laid): { at: Point; words: string; side: 'near' | 'right' }[] {
  const m = laid.marks
  if (m.length !== marksOf(laid.way)) return []
  const mid = (i: number, j: number): Point => [(m[i]![0] + m[j]![0]) / 2, (m[i]![1] + m[j]![1]) / 2]
  return laid.way === 'distance'
    ? [{ at: mid(0, 1), words: `${laid.distanceMm} mm`, side: 'near' }]
    : [
        { at: mid(0, 1), words: `${laid.sidesMm[0]} mm`, side: 'near' },
        { at: mid(1, 2), words: `${laid.sidesMm[1]} mm`, side: 'right' }
      ]
}
