import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  renameSync,
  rmSync,
  writeSync
} from 'node:fs'
import { dirname, join } from 'node:path'
import type { Reading } from '@castwright/engine'
import type { Picture } from '@castwright/server/photo'
import {
  MOST_PHOTO,
  MOST_PHOTOS,
  MOST_SHOWN,
  PHOTO_ID,
  photoName,
  pictureOf,
  ServerProblem
} from '@castwright/server/photo'
import { diskWords, Failure } from './failure.ts'
import { flushFolder } from './readings-file.ts'
import { bytesOf } from './text-file.ts'

/** A photo with the name it is kept under. */
export interface Photo {
  readonly name: string
  readonly type: Picture['type']
  readonly bytes: Uint8Array
}

const ENDINGS = { 'image/jpeg': '.jpg', 'image/png': '.png', 'image/webp': '.webp' } as const

/** The folder of the photos that belong to a readings file: NAME.photos beside NAME.readings.jsonl. */
export function photoFolder(readings: string): string {
  return `${readings.replace(/(\.readings)?\.jsonl$/, '')}.photos`
}

/** The photo in a file. @throws Failure for what cannot be read, is too large, or is no PNG, JPEG or WebP */
export function photoAt(path: string): Photo {
  return photoOf(bytesOf(path, MOST_PHOTO), path)
}

/** Bytes as a photo; `from` says where they are from. @throws Failure when they are none */
export function photoOf(bytes: Uint8Array, from: string): Photo {
  try {
    return { name: photoName(bytes), type: pictureOf(bytes).type, bytes }
  } catch (e) {
    if (e instanceof ServerProblem) throw new Failure(`${from}: ${e.message.replace(/^a photo: /, '')}`)
    throw e
  }
}

/**
 * Keeps a photo in its folder, whole or not at all, flushed to the disk before this returns.
 * @returns what takes it away again
 * @throws Failure when the folder cannot be written to, or is full
 */
export function keepPhoto(folder: string, photo: Photo): () => void {
  if (photoIn(folder, photo.name) !== null) return () => {}
  const place = join(folder, photo.name + ENDINGS[photo.type])
  const waiting = `${place}.castwright-part`
  const made = !existsSync(folder)
  const back = () => {
    rmSync(place, { force: true })
    rmSync(waiting, { force: true })
    if (made) rmSync(folder, { recursive: true, force: true })
  }
  try {
    if (made) mkdirSync(folder)
    const count = readdirSync(folder).filter(isPhoto).length
    if (count >= MOST_PHOTOS)
      throw new Failure(`${folder}: found ${count} photos of this piece; allowed: ${MOST_PHOTOS}`)
    const handle = openSync(waiting, 'w', 0o666)
    try {
      let done = 0
      while (done < photo.bytes.length) done += writeSync(handle, photo.bytes, done)
      fsyncSync(handle)
    } finally {
      closeSync(handle)
    }
    renameSync(waiting, place)
    flushFolder(folder)
    if (made) flushFolder(dirname(folder))
    return back
  } catch (e) {
    back()
    if (e instanceof Failure) throw e
    throw new Failure(`${folder}: found ${diskWords(e)}; allowed: a folder that can be written to`)
  }
}

/** The photo of a name; null: it is not there, or what is there is no longer what the name says. */
export function photoIn(folder: string, name: string): Photo | null {
  if (!PHOTO_ID.test(name)) return null
  const path = Object.values(ENDINGS)
    .map(e => join(folder, name + e))
    .find(p => existsSync(p))
  if (path === undefined) return null
  try {
    const photo = photoAt(path)
    return photo.name === name ? photo : null
  } catch (e) {
    if (e instanceof Failure) return null
    throw e
  }
}

/** Names of the photos that readings tell of, each once. */
export function photoNames(readings: readonly Reading[]): string[] {
  return [...new Set(readings.flatMap(r => (r.kind === 'photo' ? [r.photo] : [])))]
}

/** Photos for the record as made, as long as they are together no larger than it shows; and what is said of the others. */
export function photosShown(folder: string, readings: readonly Reading[]) {
  const photos = new Map<string, Uint8Array>()
  const says: string[] = []
  let left = MOST_SHOWN
  for (const name of photoNames(readings)) {
    const photo = photoIn(folder, name)
    if (photo === null) says.push(`${folder}: found no photo ${name}; the record as made names it`)
    else if (photo.bytes.length <= left) {
      left -= photo.bytes.length
      photos.set(name, photo.bytes)
    } else says.push(`photo ${name}: more than the record as made shows; it is named there`)
  }
  return { photos, says }
}

function isPhoto(file: string): boolean {
  return PHOTO_ID.test(file.replace(/\.(jpg|png|webp)$/, ''))
}
