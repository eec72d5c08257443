// A photo as this server keeps it, for whoever keeps photos elsewhere: what is one, what it is called, how many there may be.

import { createHash } from 'node:crypto'

export { PHOTO_ID } from './document.ts'
export type { Picture } from './picture.ts'
export { pictureOf } from './picture.ts'
export { ServerProblem } from './problem.ts'

/** Largest photo, bytes; photos that a piece takes. */
export const MOST_PHOTO = 12_000_000
export const MOST_PHOTOS = 200

/**
 * Photos that a record of a build shows, bytes together: what is beyond is named. Just under the 25 MB that many mail
 * services take as an attachment (common practice, from memory), so that the record can be sent on.
 */
export const MOST_SHOWN = 24_000_000

/** The name of a photo: the head of the SHA-256 of its bytes, 24 hexadecimal digits. */
export function photoName(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex').slice(0, 24)
}
