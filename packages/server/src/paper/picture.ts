import type { FaceImage, Mark } from '@castwright/engine'
import type { Blackboard } from './printed.ts'

/** What a picture needs of the library that its types do not tell: objects of the file, and operators of a page. */
interface FileObjects {
  ref(data: Readonly<Record<string, unknown>>): { end(bytes: Uint8Array): void }
  readonly page: { readonly xobjects: Record<string, unknown> }
  addContent(operators: string): unknown
}

/**
 * Lays a picture on the page: colours and opacity as two images of the file (ISO 32000-1, 8.9.5 and 11.6.5.3: an image
 * and its soft mask; memory), from the lower left corner of the mark, in the coordinates of its sheet.
 *
 * The library reads opaque pictures at once but others only after the file was ended: a file that is taken at once would
 * lack them.
 */
export function drawPicture(
  doc: Blackboard,
  { width, height, rgba }: FaceImage,
  mark: Extract<Mark, { kind: 'image' }>
): void {
  const colours = Buffer.alloc(3 * width * height)
  const opacity = Buffer.alloc(width * height)
  for (let p = 0; p < opacity.length; p++) {
    for (let k = 0; k < 3; k++) colours[3 * p + k] = rgba[4 * p + k]!
    opacity[p] = rgba[4 * p + 3]!
  }
  const file = doc as unknown as FileObjects
  const image = (space: string, bytes: Buffer, more: Readonly<Record<string, unknown>> = {}) => {
    const made = file.ref({
      Type: 'XObject',
      Subtype: 'Image',
      Width: width,
      Height: height,
      BitsPerComponent: 8,
      ColorSpace: space,
      ...more
    })
    made.end(bytes)
    return made
  }
  const name = `P${Object.keys(file.page.xobjects).length + 1}`
  file.page.xobjects[name] = image('DeviceRGB', colours, { SMask: image('DeviceGray', opacity) })
  doc.save()
  // An image fills a square of one: its first row lies at the top.
  doc.transform(mark.widthMm, 0, 0, mark.heightMm, mark.at[0], mark.at[1])
  file.addContent(`/${name} Do`)
  doc.restore()
}
