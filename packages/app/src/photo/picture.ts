import type { PictureEdge } from '../../../engine/src/draw/picture-edge.ts'
import { grayOf, snapToEdge } from '../../../engine/src/draw/picture-edge.ts'

/** A photo in hand: its px, upright as its own note of orientation says, and its address for the screen. */
export interface Picture {
  readonly bitmap: ImageBitmap
  readonly url: string
  readonly sizePx: readonly [number, number]
}

/** Largest file, bytes, and area, px: the server takes no larger file, and a phone's memory no larger picture. */
const MOST_BYTES = 12_000_000
const MOST_PX = 50_000_000
const LEAST_SIDE_PX = 100
/** Px about a press that the slope at its rim looks at. */
const RIM_PX = 8

/** What stands in the way of a picture: `size` its file, `kind` its content, `px` its sides. */
export class PictureProblem extends Error {
  readonly what: 'size' | 'kind' | 'px'
  readonly found: string
  constructor(what: 'size' | 'kind' | 'px', found: string) {
    super(found)
    this.what = what
    this.found = found
  }
}

/** Opens a file as a picture. @throws PictureProblem */
export async function openPicture(file: Blob): Promise<Picture> {
  if (file.size > MOST_BYTES) throw new PictureProblem('size', `${(file.size / 1e6).toFixed(1)} MB`)
  let bitmap: ImageBitmap
  try {
    bitmap = await createImageBitmap(file)
  } catch {
    throw new PictureProblem('kind', file.type === '' ? 'something else' : file.type)
  }
  const { width, height } = bitmap
  if (width * height > MOST_PX || Math.min(width, height) < LEAST_SIDE_PX) {
    bitmap.close()
    throw new PictureProblem('px', `${width} × ${height} px`)
  }
  return { bitmap, url: URL.createObjectURL(file), sizePx: [width, height] }
}

export function closePicture(picture: Picture): void {
  URL.revokeObjectURL(picture.url)
  picture.bitmap.close()
}

/** The strongest edge within `radiusPx` of a place, px; null where there is none. Only what lies about it is read. */
export function edgeNear(picture: Picture, u: number, v: number, radiusPx: number): PictureEdge | null {
  const [wide, high] = picture.sizePx
  const reach = Math.ceil(radiusPx) + RIM_PX
  // Cut at the rim of the picture, so that its last px go on as they do for the whole of it.
  const [x0, y0] = [Math.max(0, Math.floor(u) - reach), Math.max(0, Math.floor(v) - reach)]
  const [x1, y1] = [Math.min(wide, Math.ceil(u) + reach), Math.min(high, Math.ceil(v) + reach)]
  if (x1 - x0 < 3 || y1 - y0 < 3) return null
  const pen = new OffscreenCanvas(x1 - x0, y1 - y0).getContext('2d', { willReadFrequently: true })
  if (pen === null) return null
  pen.drawImage(picture.bitmap, -x0, -y0)
  const gray = grayOf(pen.getImageData(0, 0, x1 - x0, y1 - y0).data)
  const edge = snapToEdge(gray, x1 - x0, y1 - y0, u - x0, v - y0, radiusPx)
  return edge === null ? null : { ...edge, x: edge.x + x0, y: edge.y + y0 }
}
