import { signal } from '@preact/signals'
import type { Frame } from '../../../engine/src/draw/frame.ts'
import type { PlanMap } from '../../../engine/src/draw/pull.ts'
import type { Guide } from '../../../engine/src/draw/snap.ts'
import type { PageView } from '../../../engine/src/sheets/page-data.ts'
import { sheetTransform } from '../sheet/place.ts'
import { handHolds } from '../state/hand.ts'

/** What a hand drags on the plan: the guides it lies on, and the numbers it would leave. */
export interface Drag {
  readonly at: string
  readonly guides: readonly Guide[]
  readonly frame: Partial<Frame>
  /** Which of the numbers change. */
  readonly changes: 'place' | 'size' | 'turn' | 'point'
}

/** Set while a part is dragged. */
export const drag = signal<Drag | null>(null)

let lifted: SVGElement | null = null

/** Draws the outline of a part where the hand holds it: its transform alone is set, nothing is drawn anew. */
export function lift(svg: SVGSVGElement, v: PageView, at: string, map: PlanMap): void {
  if (lifted?.getAttribute('data-at') !== at) lifted = svg.querySelector(`.part[data-at="${at}"]`)
  lifted?.setAttribute('transform', sheetTransform(v, map))
  lifted?.classList.add('moving')
  svg.classList.add('dragging')
}

/** The hand let go. What was changed stays drawn there until the plan is drawn anew. */
export function letGo(changed: boolean): void {
  drag.value = null
  lifted?.ownerSVGElement?.classList.remove('dragging')
  if (!changed) lay()
}

/** Lays what was lifted: the plan now shows it where it is. */
export function lay(): void {
  lifted?.removeAttribute('transform')
  lifted?.classList.remove('moving')
  lifted = null
}

/**
 * Follows a pointer from where it was pressed until it lets go (`meant`) or the drag is broken off: by Escape, or by
 * the system that takes the pointer for something else.
 */
export function followHand(
  on: Element,
  pointerId: number,
  move: (e: PointerEvent) => void,
  end: (meant: boolean) => void
): void {
  on.setPointerCapture(pointerId)
  handHolds.value = true
  const over = new AbortController()
  const stop = (meant: boolean) => {
    over.abort()
    if (on.hasPointerCapture(pointerId)) on.releasePointerCapture(pointerId)
    end(meant)
    // After what the hand meant: a plan that waited for it is by then of yesterday.
    handHolds.value = false
  }
  const listen = (type: string, does: (e: Event) => void, where: EventTarget = on) =>
    where.addEventListener(type, does, { signal: over.signal, capture: where === window })
  listen('pointermove', e => move(e as PointerEvent))
  listen('pointerup', () => stop(true))
  listen('pointercancel', () => stop(false))
  listen(
    'keydown',
    e => {
      if ((e as KeyboardEvent).key !== 'Escape') return
      // What is in hand stays in hand.
      e.stopPropagation()
      stop(false)
    },
    window
  )
}
