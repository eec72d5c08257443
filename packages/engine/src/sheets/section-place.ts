import type { PageView } from './page-data.ts'
import type { SectionPath } from './section-cut.ts'

/** Factor of the stretched section. */
export const STRETCH = 3
/** Room left beside a plan and a section across, mm on the sheet. */
export const SIDES = { wide: 17, narrow: 11 } as const
/** Enlargements a section across is drawn at. */
const ENLARGED = [5, 4, 3, 2.5, 2, 1.5, 1]

/** Where a section lies on its sheet: its scale against the plan's, and mm of the sheet per mm of the piece. */
export interface SectionPlace {
  readonly enlarged: number
  readonly scale: number
  /** Where 0 of the section lies, mm from the left of the sheet. */
  readonly originX: number
}

/**
 * A section along the piece is aligned under the plan, at its scale. One across is not tied to the plan over it: it
 * is drawn in the middle, as large as fits.
 */
export function sectionPlace(
  path: SectionPath,
  plan: Pick<PageView, 'id' | 'widthMm' | 'scale' | 'originX'>
): SectionPlace {
  if (path.along !== 'y') return { enlarged: 1, scale: plan.scale, originX: plan.originX }
  const leg = path.legs[0]!
  const room = plan.widthMm - 2 * SIDES[plan.id]
  const enlarged = ENLARGED.find(e => (leg.to - leg.from) * plan.scale * e <= room) ?? 1
  const scale = plan.scale * enlarged
  return { enlarged, scale, originX: plan.widthMm / 2 - ((leg.from + leg.to) / 2) * scale }
}
