import type { Planned } from '../plan.ts'
import { bounds } from '../shape/measure.ts'
import { base64 } from './base64.ts'
import type { FaceImage } from './face-image.ts'
import { faceImage, pixelFor } from './face-image.ts'
import { coreModelOf } from './model.ts'

/** Compresses bytes into the zlib format (RFC 1950): the platform's own, since the engine brings none. */
export type Deflate = (bytes: Uint8Array) => Uint8Array

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]

/**
 * A picture as a PNG file: eight bits a channel, red, green, blue and opacity (colour type 6), sRGB said, no filter.
 *
 * Source: PNG (W3C Recommendation, third edition; ISO/IEC 15948): signature, IHDR, sRGB, IDAT, IEND, each chunk with
 * its length before and its CRC-32 after (memory). Check: decoded by a browser in the tests, pixel by pixel.
 */
export function pngFile({ width, height, rgba }: FaceImage, deflate: Deflate): Uint8Array<ArrayBuffer> {
  const rows = new Uint8Array(height * (4 * width + 1))
  for (let j = 0; j < height; j++)
    rows.set(rgba.subarray(4 * width * j, 4 * width * (j + 1)), j * (4 * width + 1) + 1)
  const head = new Uint8Array(13)
  const view = new DataView(head.buffer)
  view.setUint32(0, width)
  view.setUint32(4, height)
  head.set([8, 6, 0, 0, 0], 8)
  const parts = [
    Uint8Array.from(SIGNATURE),
    chunk('IHDR', head),
    chunk('sRGB', Uint8Array.of(0)),
    chunk('IDAT', deflate(rows)),
    chunk('IEND', new Uint8Array(0))
  ]
  const out = new Uint8Array(parts.reduce((sum, p) => sum + p.length, 0))
  let at = 0
  for (const p of parts) {
    out.set(p, at)
    at += p.length
  }
  return out
}

/** The same as an address that a page carries in itself. */
export function pngAddress(image: FaceImage, deflate: Deflate): string {
  return `data:image/png;base64,${base64(pngFile(image, deflate))}`
}

/** Most pixels of a picture of a face as a file, and its finest pixel, mm. */
const FILE_PIXELS = 4_000_000
const FILE_PIXEL_MM = 0.25

/** The computed colour of both faces at every point, as PNG files. */
export function facePictures({ work }: Planned, deflate: Deflate): Record<'front' | 'back', Uint8Array> {
  const model = coreModelOf(work)
  const pixelMm = pixelFor(bounds(model.geometry.outline), FILE_PIXELS, FILE_PIXEL_MM)
  const file = (face: 'front' | 'back') => pngFile(faceImage(model, { face, pixelMm }), deflate)
  return { front: file('front'), back: file('back') }
}

function chunk(kind: string, data: Uint8Array): Uint8Array {
  const out = new Uint8Array(data.length + 12)
  const view = new DataView(out.buffer)
  view.setUint32(0, data.length)
  for (let k = 0; k < 4; k++) out[4 + k] = kind.charCodeAt(k)
  out.set(data, 8)
  view.setUint32(8 + data.length, crc32(out.subarray(4, 8 + data.length)))
  return out
}

/** Remainders of the bytes by the polynomial of ISO 3309, 0xedb88320 with its bits turned round. */
const TABLE = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n
  for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1
  return c
})

/** CRC-32 of bytes. Check: "123456789" gives cbf43926. */
export function crc32(bytes: Uint8Array): number {
  let c = 0xffffffff
  for (const b of bytes) c = TABLE[(c ^ b) & 255]! ^ (c >>> 8)
  return (c ^ 0xffffffff) >>> 0
}
