import type { Bounds } from '../shape/region.ts'
import type { Mark } from './mark.ts'
import type { View } from './view.ts'

/** A picture of a face: its address, and where it lies on the plan. */
export interface PlacedPicture {
  readonly href: string
  readonly box: Bounds
}

/** A picture as it lies on a view. */
export function pictureMark(
  view: Pick<View, 'scale' | 'originX' | 'originY' | 'mirrored'>,
  picture: PlacedPicture
): Mark {
  const { box, href } = picture
  return {
    kind: 'image',
    href,
    at: [
      view.originX + (view.mirrored ? -box.maxX : box.minX) * view.scale,
      view.originY + box.minY * view.scale
    ],
    widthMm: (box.maxX - box.minX) * view.scale,
    heightMm: (box.maxY - box.minY) * view.scale
  }
}
