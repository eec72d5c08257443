import { showLength } from '../../../engine/src/draw/units.ts'
import type { PageView } from '../../../engine/src/sheets/page-data.ts'
import { toSheet } from '../sheet/place.ts'
import { units } from '../state/preferences.ts'
import type { Drag } from './drag.ts'
import { drag } from './drag.ts'

/** How far beyond what it belongs to a guide reaches; where figures stand beside the middle, mm on the sheet. */
const BEYOND_MM = 3
const BESIDE_MM = 3

/** The lines that what is dragged lies on, drawn as axes, and the numbers it would leave. */
export function DragGuides({ view }: { readonly view: PageView }) {
  const now = drag.value
  if (now === null) return null
  const { x, y } = now.frame
  const at = x === undefined || y === undefined ? null : toSheet(view, x, y)
  const says = words(now)
  return (
    <g class="guides">
      {now.guides.map(g => {
        const beyond = BEYOND_MM / view.scale
        const [from, to] = [g.from - beyond, g.to + beyond]
        const [x0, y0] = g.axis === 'x' ? toSheet(view, g.at, from) : toSheet(view, from, g.at)
        const [x1, y1] = g.axis === 'x' ? toSheet(view, g.at, to) : toSheet(view, to, g.at)
        return <path key={`${g.axis} ${g.at}`} class="guide" d={`M${x0} ${y0}L${x1} ${y1}`} />
      })}
      {at === null ? null : (
        <text class="l-figure drag-says" x={at[0] + BESIDE_MM} y={at[1] - BESIDE_MM} font-size="3.5">
          {says}
        </text>
      )}
    </g>
  )
}

function words({ frame, changes }: Drag): string {
  const length = (mm: number | undefined) => {
    const shown = showLength(mm ?? 0, { unit: units.value.length })
    return shown.text.replace('-', '−')
  }
  const unit = showLength(1, { unit: units.value.length }).unit
  if (changes === 'turn') return `${Math.round((frame.turnDeg ?? 0) * 10) / 10}°`.replace('-', '−')
  return changes === 'size'
    ? `${length(frame.widthMm)} × ${length(frame.heightMm)} ${unit}`
    : `${length(frame.x)}, ${length(frame.y)} ${unit}`
}
