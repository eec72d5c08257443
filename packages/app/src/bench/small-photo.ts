import { sha256Hex } from '../../../engine/src/sheets/sha256.ts'

/** Longest side a photo of the bench is kept with, px, and how well it is written: about 300 kB. */
const MOST_SIDE_PX = 1600
const QUALITY = 0.8
/** Largest file that is opened, bytes, and area, px: what the memory of a phone takes. */
const MOST_BYTES = 40_000_000
const MOST_PX = 120_000_000
/** The server names a photo by so many digits of its content. */
const NAME_DIGITS = 24

/** A photo made small, with the name the server will give it. */
export interface SmallPhoto {
  readonly name: string
  readonly picture: Blob
}

/**
 * A photo as it is kept: upright, no longer than it has to be, without what the camera wrote beside it (place, device).
 * null: it is no picture this browser reads.
 */
export async function smallPhoto(file: Blob): Promise<SmallPhoto | null> {
  if (file.size > MOST_BYTES) return null
  let bitmap: ImageBitmap
  try {
    bitmap = await createImageBitmap(file)
  } catch {
    return null
  }
  const { width, height } = bitmap
  try {
    if (width * height > MOST_PX) return null
    const share = Math.min(1, MOST_SIDE_PX / Math.max(width, height))
    const canvas = new OffscreenCanvas(
      Math.max(1, Math.round(width * share)),
      Math.max(1, Math.round(height * share))
    )
    const pen = canvas.getContext('2d')
    if (pen === null) return null
    pen.fillStyle = '#fff'
    pen.fillRect(0, 0, canvas.width, canvas.height)
    pen.imageSmoothingQuality = 'high'
    pen.drawImage(bitmap, 0, 0, canvas.width, canvas.height)
    const picture = await canvas.convertToBlob({ type: 'image/jpeg', quality: QUALITY })
    const name = sha256Hex(new Uint8Array(await picture.arrayBuffer())).slice(0, NAME_DIGITS)
    return { name, picture }
  } finally {
    bitmap.close()
  }
}
