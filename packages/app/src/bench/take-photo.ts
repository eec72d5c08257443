import { keepPhoto } from '../offline/bench-photos.ts'
import { take } from '../state/bench.ts'
import { piece } from '../state/open-piece.ts'
import { benchWords as b } from '../text/bench.ts'
import { smallPhoto } from './small-photo.ts'

/** Keeps a note on a step. */
export function keepNote(step: string, note: string): void {
  take({ kind: 'note', step, note }, b.noteKept)
}

/** Makes a photo small and keeps it with a step: sent before the record that names it. @returns whether it is one */
export async function takePhoto(step: string, file: Blob): Promise<boolean> {
  const at = piece.value
  const photo = at === null ? null : await smallPhoto(file)
  if (at === null || photo === null || piece.value?.id !== at.id) return false
  await keepPhoto(at.id, photo.name, photo.picture)
  take({ kind: 'photo', photo: photo.name, step }, b.photoKept)
  return true
}
