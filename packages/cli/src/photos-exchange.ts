import type { Reading } from '@castwright/engine'
import { PHOTO_ID } from '@castwright/server/photo'
import { Failure } from './failure.ts'
import { keepPhoto, photoIn, photoNames, photoOf } from './photo-folder.ts'
import { asked, bytesAt, bytesTo } from './server-answer.ts'

/**
 * Sends a server the photos it lacks of those that readings tell of, and takes those that only the server has. A photo is
 * named by its content, so that it may be broken off anywhere and done again. @returns what was done, in words; nothing
 * where the readings tell of no photo
 * @throws Failure
 */
export async function photosExchanged(
  home: string,
  piece: string,
  folder: string,
  readings: readonly Reading[]
): Promise<string[]> {
  const names = photoNames(readings).filter(n => PHOTO_ID.test(n))
  if (names.length === 0) return []
  const path = `/api/pieces/${encodeURIComponent(piece)}/photos`
  const { photos } = (await asked(home, path)) as { photos: { id: string }[] }
  const theirs = new Set(photos.map(p => p.id))
  const nowhere: string[] = []
  let sent = 0
  let taken = 0
  for (const name of names) {
    const own = photoIn(folder, name)
    if (own !== null && theirs.has(name)) continue
    if (own !== null) {
      await bytesTo(home, path, own.type, own.bytes)
      sent++
    } else if (theirs.has(name)) {
      const photo = photoOf(await bytesAt(home, `${path}/${name}`), `${home}: photo ${name}`)
      if (photo.name !== name)
        throw new Failure(
          `${home}: found another photo under the name ${name}; allowed: the one of that name`
        )
      keepPhoto(folder, photo)
      taken++
    } else nowhere.push(`photo ${name}: found neither in ${folder} nor on ${home}`)
  }
  return [`photos: ${sent} sent to ${home}, ${taken} taken from it`, ...nowhere]
}
