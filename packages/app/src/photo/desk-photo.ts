import { computed, signal } from '@preact/signals'
import type { Homography } from '../../../engine/src/draw/perspective.ts'
import { ApiProblem, api } from '../net/api.ts'
import { piece } from '../state/desk.ts'
import { reached, unreached } from '../state/reach.ts'
import { w } from '../text/words.ts'
import type { Laid } from './laying.ts'
import { mapOf, readLaid, unlaid } from './laying.ts'
import type { Picture } from './picture.ts'
import { closePicture, openPicture, PictureProblem } from './picture.ts'

/** A photo kept with the piece, as the server lists it. */
export interface KeptPhoto {
  readonly id: string
  readonly width: number
  readonly height: number
  readonly size: number
  readonly laid: unknown
  readonly saved: string
}

/** Photos of the piece; null while they are asked for, `away` when the server is out of reach. */
export const photos = signal<readonly KeptPhoto[] | null | 'away'>(null)
export const picture = signal<Picture | null>(null)
export const laid = signal<Laid | null>(null)
export const opening = signal(false)
/** What went wrong, in words; empty when nothing did. */
export const photoSays = signal('')
/** How the photo in hand and its laying are kept. */
export const keeping = signal<'kept' | 'sending' | 'waits'>('kept')
export const map = computed<Homography | null>(() => {
  const now = laid.value
  const h = now === null ? null : mapOf(now)
  return h === null || 'problem' in h ? null : h
})

/** How long the hand rests before a laying is sent, ms. */
const REST_MS = 500

let at = ''
let photo: string | null = null
let unsent: Blob | null = null
let rest: ReturnType<typeof setTimeout> | undefined
let turn = 0

export async function showPhotos(id: string): Promise<void> {
  if (at !== id) {
    putAway()
    photos.value = null
    at = id
  }
  try {
    const answer = await api<{ photos: KeptPhoto[] }>('GET', `/api/pieces/${id}/photos`)
    if (at === id) photos.value = answer.photos
    reached()
  } catch (e) {
    if (at !== id) return
    photos.value = 'away'
    if (e instanceof ApiProblem) photoSays.value = e.message
    else unreached()
  }
}

/** Takes a photo in hand: shown at once, sent beside. */
export async function choosePhoto(file: Blob): Promise<void> {
  const mine = await show(async () => file)
  if (mine === null) return
  laid.value = unlaid(mine.sizePx)
  photo = null
  unsent = file
  await sendPhoto()
}

/** Opens a photo that was kept, laid as it was left. */
export async function openPhoto(kept: KeptPhoto): Promise<void> {
  const mine = await show(() => photoBytes(at, kept.id))
  if (mine === null) return
  photo = kept.id
  unsent = null
  keeping.value = 'kept'
  laid.value = readLaid(kept.laid, mine.sizePx) ?? unlaid(mine.sizePx)
}

async function photoBytes(of: string, id: string): Promise<Blob> {
  const answer = await fetch(`/api/pieces/${of}/photos/${id}`)
  if (!answer.ok) throw new ApiProblem(answer.status, {})
  return await answer.blob()
}

async function show(source: () => Promise<Blob>): Promise<Picture | null> {
  const mine = ++turn
  opening.value = true
  photoSays.value = ''
  try {
    const next = await openPicture(await source())
    // A photo that was chosen meanwhile stands before this one.
    if (mine !== turn) {
      closePicture(next)
      return null
    }
    shutPicture()
    picture.value = next
    return next
  } catch (e) {
    if (mine !== turn) return null
    if (e instanceof PictureProblem) photoSays.value = w.photo.refused[e.what](e.found)
    else if (e instanceof ApiProblem) photoSays.value = e.message
    else {
      photoSays.value = w.photo.unreachable
      unreached()
    }
    return null
  } finally {
    if (mine === turn) opening.value = false
  }
}

/** Sends the photo in hand, when it was not yet, and then how it lies. */
export async function sendPhoto(): Promise<void> {
  const [of, bytes, mine] = [at, unsent, turn]
  if (bytes === null) return sendLaid()
  keeping.value = 'sending'
  try {
    const { id } = await api<{ id: string }>('POST', `/api/pieces/${of}/photos`, bytes)
    if (mine !== turn || of !== at) return
    photo = id
    unsent = null
    await sendLaid()
    void showPhotos(of)
  } catch (e) {
    if (mine !== turn || of !== at) return
    keeping.value = 'waits'
    if (e instanceof ApiProblem) photoSays.value = w.photo.notKept(e.message)
    else unreached()
  }
}

/** Changes how the photo lies, or its trace. Kept when the hand rests. */
export function layPhoto(change: Partial<Laid>): void {
  if (laid.value === null) return
  laid.value = fine({ ...laid.value, ...change })
  clearTimeout(rest)
  if (keeping.value === 'kept') keeping.value = 'sending'
  rest = setTimeout(() => void sendLaid(), REST_MS)
}

async function sendLaid(): Promise<void> {
  clearTimeout(rest)
  const [of, id, now] = [at, photo, laid.value]
  if (id === null || now === null) return
  keeping.value = 'sending'
  try {
    await api('PUT', `/api/pieces/${of}/photos/${id}/laid`, now)
    if (laid.value === now) keeping.value = 'kept'
  } catch (e) {
    keeping.value = 'waits'
    if (e instanceof ApiProblem) photoSays.value = w.photo.notKept(e.message)
    else unreached()
  }
}

// A hundredth of a px is finer than any edge is found; what is shown is what is kept.
function fine(now: Laid): Laid {
  const hundredths = (list: Laid['marks']) =>
    list.map(([u, v]): [number, number] => [Math.round(u * 100) / 100, Math.round(v * 100) / 100])
  return { ...now, marks: hundredths(now.marks), trace: hundredths(now.trace) }
}

/** Removes a photo from the piece for good. */
export async function removePhoto(id: string): Promise<void> {
  try {
    await api('DELETE', `/api/pieces/${at}/photos/${id}`)
  } catch (e) {
    if (e instanceof ApiProblem) photoSays.value = e.message
    else unreached()
  }
  await showPhotos(at)
}

/** Puts the photo out of hand; what was not sent goes now. */
export function putAway(): void {
  if (photo !== null && keeping.value === 'sending') void sendLaid()
  clearTimeout(rest)
  turn++
  shutPicture()
  laid.value = null
  photo = null
  unsent = null
  opening.value = false
  photoSays.value = ''
  keeping.value = 'kept'
  if (piece.value?.id === at && at !== '') void showPhotos(at)
}

function shutPicture(): void {
  if (picture.value !== null) closePicture(picture.value)
  picture.value = null
}
