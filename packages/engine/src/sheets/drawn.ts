import type { Planned } from '../plan.ts'
import type { FaceImage } from './face-image.ts'
import type { Sheet } from './mark.ts'
import { coreModelOf } from './model.ts'
import { sheetViews } from './sheet-views.ts'

/** The drawings that stand on printed sheets: the plan and its section A to A, 166 mm wide, aligned. */
export interface Drawn {
  readonly front: Sheet
  readonly back: Sheet
  readonly section: Sheet
  /** Millimetres on paper for one of the piece, of the plan and of the section. */
  readonly scale: number
  readonly sectionScale: number
  /** Pictures of computed colours where they vary over the plan: an image mark names one as "picture:N". */
  readonly pictures: readonly FaceImage[]
}

/** Draws a planned piece for paper. */
export function drawnOf({ work }: Planned): Drawn {
  const pictures: FaceImage[] = []
  const wide = sheetViews(work, coreModelOf(work), image => `picture:${pictures.push(image) - 1}`)[0]!
  const scale = wide.views.find(v => v.face === 'front')!.scale
  return {
    front: wide.front,
    back: wide.back,
    section: wide.sectionTrue,
    scale,
    sectionScale: scale * wide.enlarged,
    pictures
  }
}
