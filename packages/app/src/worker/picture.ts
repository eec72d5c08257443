import type { Work } from '../../../engine/src/findings/work.ts'
import type { FaceImage } from '../../../engine/src/sheets/face-image.ts'
import { coreModelOf } from '../../../engine/src/sheets/model.ts'
import type { PlacedPicture } from '../../../engine/src/sheets/picture-mark.ts'
import { imageFor } from '../../../engine/src/sheets/sheet-views.ts'

/** The colours of a face where they vary over the plan, as an address; null where none do, or none can be made. */
export async function pictureOf(work: Work, face: 'front' | 'back'): Promise<PlacedPicture | null> {
  // A browser that draws in no worker shows the plain colours.
  if (typeof OffscreenCanvas === 'undefined') return null
  const image = imageFor(coreModelOf(work), face)
  return image === null ? null : { href: await addressOf(image), box: image.box }
}

async function addressOf({ rgba, width, height }: FaceImage): Promise<string> {
  const canvas = new OffscreenCanvas(width, height)
  canvas.getContext('2d')!.putImageData(new ImageData(rgba, width, height), 0, 0)
  return new FileReaderSync().readAsDataURL(await canvas.convertToBlob({ type: 'image/png' }))
}
