import { useLayoutEffect, useRef } from 'preact/hooks'
import { bounds } from '../../../engine/src/shape/measure.ts'
import { pictureMark } from '../../../engine/src/sheets/picture-mark.ts'
import { pointerMarks, pointerTo } from '../../../engine/src/sheets/pointer.ts'
import type { SectionPath } from '../../../engine/src/sheets/section-cut.ts'
import { svgMarks } from '../../../engine/src/sheets/svg.ts'
import { latePart } from '../late/part.tsx'
import { arrowStep } from '../look/arrow-keys.ts'
import { Drawing } from '../look/drawing.tsx'
import { picture, pictured } from '../state/open-piece.ts'
import { w } from '../text/words.ts'
import type { PlannedView } from '../worker/views.ts'
import { LineHandle } from './line-handle.tsx'
import { eventPlace, heatOn, pointer } from './place.ts'

/** What a hand takes hold of: a first verdict does without. */
const PlanHands = latePart(async () => (await import('../draw/plan-hands.tsx')).PlanHands)

const HeatOver = latePart(async () => (await import('./heat-map.tsx')).HeatOver)

/** How far beside the edge still counts as on it, mm. */
const SLACK_MM = 4

/** The plan of the face shown, with its pointer, the line of the section and the parts to take hold of. */
export function PlanPad(p: {
  readonly view: PlannedView
  readonly x: number
  readonly y: number
  readonly path: SectionPath
}) {
  const host = useRef<HTMLDivElement>(null)
  const { drawn, view } = p.view.plane
  const laid = picture.value?.of === pictured.value ? (picture.value.placed ?? null) : null
  // Between the colours of level parts and the grain, where the drawing keeps a place for it.
  useLayoutEffect(() => {
    const place = host.current?.querySelector('g.picture')
    if (place == null) return
    const marks = laid === null ? [] : [pictureMark({ ...view, mirrored: view.face === 'back' }, laid)]
    place.innerHTML = svgMarks(marks, view.heightMm)
  }, [drawn, view, laid])
  const shown = view.face
  const { outline } = p.view.model.geometry
  const box = bounds(outline)
  const go = (x: number, y: number) => {
    pointer.value = pointerTo(outline, [p.x, p.y], [x, y])
  }
  const point = (e: PointerEvent) => {
    // While a part is dragged the pointer stays where it was.
    if (e.buttons !== 0 && e.type === 'pointermove') return
    const svg = host.current?.querySelector('svg') ?? null
    const at = svg === null ? null : eventPlace(svg, view, e)
    if (at === null) return
    const beside =
      at[0] < box.minX - SLACK_MM ||
      at[0] > box.maxX + SLACK_MM ||
      at[1] < box.minY - SLACK_MM ||
      at[1] > box.maxY + SLACK_MM
    if (!beside) go(at[0], at[1])
  }
  const keys = (e: KeyboardEvent) => {
    const by = e.target === e.currentTarget ? arrowStep(e, shown === 'back') : null
    if (by === null) return
    e.preventDefault()
    go(p.x + by[0], p.y + by[1])
  }
  return (
    <div
      class={`plane ${view.id}`}
      ref={host}
      tabindex={0}
      role="application"
      aria-label={w.sheet.planWords}
      aria-describedby="core-says"
      onPointerMove={point}
      onPointerDown={point}
      onKeyDown={keys}
    >
      <Drawing drawn={drawn} name={`plan ${shown}`} words={w.sheet.plan}>
        {heatOn.value && p.view.heat !== null ? <HeatOver planned={p.view} heat={p.view.heat} /> : null}
        {shown === 'front' ? <LineHandle view={view} path={p.path} box={box} /> : null}
        <g
          class="pointer"
          dangerouslySetInnerHTML={{ __html: svgMarks(pointerMarks(view, p.x, p.y), view.heightMm) }}
        />
        <PlanHands planned={p.view} view={view} box={box} x={p.x} y={p.y} />
      </Drawing>
    </div>
  )
}
