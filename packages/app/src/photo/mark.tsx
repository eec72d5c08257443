import { useRef } from 'preact/hooks'
import type { Point } from '../../../engine/src/draw/perspective.ts'
import { arrowStep } from '../look/arrow-keys.ts'
import { w } from '../text/words.ts'
import type { Laid } from './laying.ts'
import { errorAt, marksOf } from './laying.ts'

/** A mark on the photo, pulled by pointer and arrow keys, with the error to expect there. */
export function Mark(p: {
  readonly k: number
  readonly at: Point
  readonly laid: Laid
  readonly shown: number
  readonly placeOf: (e: PointerEvent) => Point
  readonly onMove: (to: Point) => void
  readonly onLook: (on: boolean) => void
}) {
  const { laid, k } = p
  const needs = marksOf(laid.way)
  const all = laid.marks.length === needs
  const error = all ? errorAt(laid, p.at) : Number.POSITIVE_INFINITY
  const name = (laid.way === 'rectangle' ? w.photo.marks : w.photo.points)[k] ?? ''
  // A mark is held where it was taken: it does not jump under the finger.
  const grip = useRef<Point | null>(null)
  return (
    <>
      <button
        type="button"
        class="mark-at"
        style={placed(p.at, p.shown)}
        aria-label={`${all ? `${name}. ` : ''}${w.photo.mark(k + 1, needs)}`}
        onFocus={() => p.onLook(true)}
        onBlur={() => p.onLook(false)}
        onKeyDown={e => {
          const by = arrow(e)
          if (by === null) return
          e.preventDefault()
          p.onMove([p.at[0] + by[0], p.at[1] + by[1]])
        }}
        onPointerDown={e => {
          if (e.button !== 0) return
          e.currentTarget.setPointerCapture(e.pointerId)
          const from = p.placeOf(e)
          grip.current = [p.at[0] - from[0], p.at[1] - from[1]]
          p.onLook(true)
        }}
        onPointerMove={e => {
          if (grip.current === null) return
          const now = p.placeOf(e)
          p.onMove([now[0] + grip.current[0], now[1] + grip.current[1]])
        }}
        onPointerUp={() => (grip.current = null)}
        onPointerCancel={() => (grip.current = null)}
      />
      {Number.isFinite(error) ? (
        <span class="tag" style={placed(p.at, p.shown)}>
          ± {error.toFixed(error < 1 ? 2 : 1)} mm
        </span>
      ) : null}
    </>
  )
}

/** Where a place of the photo stands on its stage, `shown` px of the screen a px. */
export function placed([x, y]: Point, shown: number): { left: string; top: string } {
  return { left: `${x * shown}px`, top: `${y * shown}px` }
}

/** The step an arrow key means on a photo, px: x to the right and y down; null for other keys. */
export function arrow(e: KeyboardEvent): readonly [number, number] | null {
  const step = arrowStep(e)
  return step === null ? null : [step[0], -step[1]]
}
