import type { Bounds } from '../../../engine/src/shape/region.ts'
import type { PageView } from '../../../engine/src/sheets/page-data.ts'
import { PartHandles } from '../sheet/part-handles.tsx'
import type { PlannedView } from '../worker/views.ts'
import { DragGuides } from './drag-guides.tsx'
import { PlanStrokes } from './plan-strokes.tsx'
import { PullHandles } from './pull-handles.tsx'

/** All that a hand takes hold of on the plan, or draws there. */
export function PlanHands(p: {
  readonly planned: PlannedView
  readonly view: PageView
  readonly box: Bounds
  readonly x: number
  readonly y: number
}) {
  return (
    <>
      <PartHandles planned={p.planned} view={p.view} />
      <PullHandles planned={p.planned} view={p.view} />
      <DragGuides view={p.view} />
      <PlanStrokes view={p.view} box={p.box} x={p.x} y={p.y} />
    </>
  )
}
