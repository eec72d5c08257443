import type { PageView } from '../../../engine/src/sheets/page-data.ts'
import { sectionSheet } from '../../../engine/src/sheets/section.ts'
import type { SectionPath } from '../../../engine/src/sheets/section-cut.ts'
import { sectionOf } from '../../../engine/src/sheets/section-cut.ts'
import { STRETCH, sectionPlace } from '../../../engine/src/sheets/section-place.ts'
import { svgBody } from '../../../engine/src/sheets/svg.ts'
import type { Drawn, PlannedView } from '../worker/views.ts'

/** Step of looking along the section, mm on the sheet. */
const STEP_MM = 0.3

/** A section, and how it lies on its sheet, mm. */
export interface SectionDrawn {
  readonly drawn: Drawn
  readonly scale: number
  /** Against the plan's scale. */
  readonly enlarged: number
  readonly stretch: number
  readonly from: number
  readonly to: number
}

/** The section along a line, aligned under the plan; one across is drawn in the middle, as large as fits. */
export function sectionDrawn(view: PlannedView, path: SectionPath, stretch: boolean): SectionDrawn {
  const front = frontOf(view)
  const own = path !== view.section.path
  const { enlarged, scale, originX } = sectionPlace(path, front)
  const section = sectionOf(view.model, path, STEP_MM / scale)
  const sheet = sectionSheet(view.model, section, {
    scale,
    stretch: stretch ? STRETCH : 1,
    originX,
    widthMm: front.widthMm,
    parts: front.id === 'wide' && !own ? view.section.parts : [],
    rounds: own ? [] : view.section.rounds
  })
  const last = path.legs.at(-1)!
  return {
    drawn: { widthMm: sheet.widthMm, heightMm: sheet.heightMm, body: svgBody(sheet) },
    scale,
    enlarged,
    stretch: stretch ? STRETCH : 1,
    from: originX + path.legs[0]!.from * scale,
    to: originX + last.to * scale
  }
}

// Where the front lies, when the back is shown: it is centred alike, and mirrored.
function frontOf({ plane }: PlannedView): PageView {
  const v = plane.view
  return v.face === 'front' ? v : { ...v, face: 'front', originX: v.widthMm - v.originX }
}
