import type { PageView } from '../../../engine/src/sheets/page-data.ts'
import { sectionSheet } from '../../../engine/src/sheets/section.ts'
import type { SectionPath } from '../../../engine/src/sheets/section-cut.ts'
import { sectionOf } from '../../../engine/src/sheets/section-cut.ts'
import { svgBody } from '../../../engine/src/sheets/svg.ts'
import type { Drawn, PlannedView } from '../worker/messages.ts'

/** Factor of the stretched section, as the page has it. */
const STRETCH = 3
/** Room left beside a section across, mm on the sheet. */
const SIDES = { wide: 17, narrow: 11 } as const
const ENLARGED = [5, 4, 3, 2.5, 2, 1.5, 1]
/** Step of looking along the section, mm on the sheet. */
const STEP_MM = 0.3

/** A section, and how it lies on its sheet, mm. */
export interface SectionDrawn {
  readonly drawn: Drawn
  readonly scale: number
  readonly stretch: number
  readonly from: number
  readonly to: number
}

/** The section along a line, aligned under the plan; one across is drawn in the middle, as large as fits. */
export function sectionDrawn(view: PlannedView, path: SectionPath, stretch: boolean): SectionDrawn {
  const front = frontOf(view)
  const own = path !== view.section.path
  const across = path.along === 'y'
  const leg = path.legs[0]!
  const room = front.widthMm - 2 * SIDES[front.id]
  const enlarged = across ? (ENLARGED.find(e => (leg.to - leg.from) * front.scale * e <= room) ?? 1) : 1
  const scale = front.scale * enlarged
  const section = sectionOf(view.model, path, STEP_MM / scale)
  const sheet = sectionSheet(view.model, section, {
    scale,
    stretch: stretch ? STRETCH : 1,
    originX: across ? front.widthMm / 2 - ((leg.from + leg.to) / 2) * scale : front.originX,
    widthMm: front.widthMm,
    parts: front.id === 'wide' && !own ? view.section.parts : [],
    rounds: own ? [] : view.section.rounds
  })
  const originX = across ? front.widthMm / 2 - ((leg.from + leg.to) / 2) * scale : front.originX
  const last = path.legs.at(-1)!
  return {
    drawn: { widthMm: sheet.widthMm, heightMm: sheet.heightMm, body: svgBody(sheet) },
    scale,
    stretch: stretch ? STRETCH : 1,
    from: originX + leg.from * scale,
    to: originX + last.to * scale
  }
}

// Where the front lies, when the back is shown: it is centred alike, and mirrored.
function frontOf({ plane }: PlannedView): PageView {
  const v = plane.view
  return v.face === 'front' ? v : { ...v, face: 'front', originX: v.widthMm - v.originX }
}
