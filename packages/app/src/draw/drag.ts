import { signal } from '@preact/signals'
import type { Frame } from '../../../engine/src/draw/frame.ts'
import type { PlanMap } from '../../../engine/src/draw/pull.ts'
import type { Guide } from '../../../engine/src/draw/snap.ts'
import type { PageView } from '../../../engine/src/sheets/page-data.ts'
import { sheetTransform } from '../sheet/place.ts'

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
