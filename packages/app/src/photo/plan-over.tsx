import { useMemo } from 'preact/hooks'
import type { PlannedView } from '../worker/views.ts'
import type { Size, View } from './trace-view.ts'
import { gridPaths, ringsOnPad, sheetOf } from './trace-view.ts'

/** Over the photo laid flat: the grid of the plan, the outline of the piece and its timbers. */
export function PlanOver(p: {
  readonly view: View
  readonly size: Size
  readonly geometry: PlannedView['model']['geometry'] | null
}) {
  const { view, size, geometry } = p
  const grid = useMemo(() => gridPaths(view, size), [view.scale, ...view.middle, ...size])
  const sheet = sheetOf(view, size)
  return (
    <>
      <path class="grid" d={grid.fine} />
      <path class="grid pale" d={grid.fine} />
      <path class="grid tenth" d={grid.coarse} />
      <path class="grid tenth pale" d={grid.coarse} />
      {geometry === null ? null : (
        <>
          {geometry.timbers.map((t, i) => (
            <path key={i} class="timber-line" d={ringsOnPad(sheet, t.upper.rings)} />
          ))}
          <path class="outline-line" d={ringsOnPad(sheet, geometry.outline.rings)} />
        </>
      )}
    </>
  )
}
