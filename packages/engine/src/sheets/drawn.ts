import type { Planned } from '../plan.ts'
import type { Sheet } from './mark.ts'
import { coreModelOf } from './model.ts'
import type { Addressed } from './sheet-views.ts'
import { sheetViews } from './sheet-views.ts'

/** The drawings that stand on printed sheets: the plan and its section A to A, 166 mm wide, aligned. */
export interface Drawn {
  readonly front: Sheet
  readonly back: Sheet
  readonly section: Sheet
  /** Millimetres on paper for one of the piece, of the plan and of the section. */
  readonly scale: number
  readonly sectionScale: number
}

/** Draws a planned piece for paper; `address` gives pictures of computed colours an address that holds them. */
export function drawnOf({ work }: Planned, address?: Addressed): Drawn {
  const wide = sheetViews(work, coreModelOf(work), address)[0]!
  const scale = wide.views.find(v => v.face === 'front')!.scale
  return {
    front: wide.front,
    back: wide.back,
    section: wide.sectionTrue,
    scale,
    sectionScale: scale * wide.enlarged
  }
}
