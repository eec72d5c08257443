import type { StoredPiece } from '../net/api.ts'
import { ApiProblem, api, newId, Unreachable } from '../net/api.ts'
import type { Pending } from '../offline/keep.ts'
import { changeKept, keepPiece } from '../offline/keep.ts'
import { w } from '../text/words.ts'
import type { Json } from '../worker/document.ts'
import type { Clash, OpenPiece } from './open-piece.ts'
import { asides, clash, deskSays, piece, saveSays, saving, unsent } from './open-piece.ts'
import { plan } from './planning.ts'
import { reached, unreached } from './reach.ts'

/** Largest drawing the server takes, bytes. One that is larger is not sent: the line would break in the middle. */
const MOST_DRAWING = 4_000_000
/** Answers that say nothing of what was sent: not paired, too slow, too many, a server in trouble. */
export const passing = (status: number) => [401, 408, 429].includes(status) || status >= 500

let sending = false
let roomSaid = false
/** Drawings of the piece on the desk that the server does not take. */
const refused = new Set<string>()
/** Ids of readings that the server does not take: they stay here and hold nothing up. */
const unfit = new Set<unknown>()

/** Keeps in this browser what lies on the desk, with what the server has not got. */
export async function keepHere(): Promise<void> {
  const at = piece.value
  if (at === null) return
  const { edit, drawings, settled, readings: unread } = unsent.value
  try {
    await keepPiece({ ...at, saved: new Date().toISOString(), pending: edit, drawings, settled, unread })
  } catch {
    // A browser without room still works while the server is there: said once.
    if (!roomSaid) deskSays.value = w.state.noRoom
    roomSaid = true
  }
}

/** Lets the drawings that were refused be sent once more: the piece comes onto the desk anew. */
export function forgetRefused(): void {
  refused.clear()
}

/** Puts a drawing beside the piece, for shapes that name it: at once on the desk, kept here, then sent. */
export async function addFile(name: string, text: string): Promise<void> {
  const at = piece.value
  if (at === null) return
  refused.delete(name)
  piece.value = { ...at, files: { ...at.files, [name]: text } }
  unsent.value = { ...unsent.value, drawings: [...unsent.value.drawings.filter(n => n !== name), name] }
  saving.value = clash.value === null ? 'saving' : 'kept'
  void keepHere()
  plan()
  void send()
}

/** The document of the desk is another one: kept here, planned, sent. */
export function changeTo(document: Json, says: string): void {
  const at = piece.value
  if (at === null) return
  piece.value = { ...at, document }
  unsent.value = { ...unsent.value, edit: { base: at.revision, edit: newId(), document, says } }
  saving.value = clash.value === null ? 'saving' : 'kept'
  void keepHere()
  plan()
  void send()
}

/** Sends what was not acknowledged, one after the other; what comes meanwhile goes next. */
export async function send(): Promise<void> {
  if (sending) return
  sending = true
  try {
    while (await sendNext());
  } catch (e) {
    if (!(e instanceof Unreachable)) throw e
    unreached()
    if (saving.value === 'saving') saving.value = 'kept'
  } finally {
    sending = false
  }
}

// Whether there may be more. What is on the desk may be another piece after each answer.
async function sendNext(): Promise<boolean> {
  const at = piece.value
  if (at === null || clash.value !== null) return false
  const { edit, settled, drawings, readings } = unsent.value
  const reading = readings.find(r => !unfit.has(r['id']))
  // What was measured goes first: it is the hardest to come by again.
  if (reading !== undefined && at.revision > 0) return sendReading(at, reading)
  const drawing = drawings.find(name => !refused.has(name))
  // A piece that the server has not got takes no drawing yet; else the drawing goes before the edit that names it.
  if (drawing !== undefined && !(edit !== null && at.revision === 0)) return sendDrawing(at, drawing)
  if (edit !== null) return sendEdit(at, edit)
  saving.value = 'saved'
  const [aside] = settled
  if (aside === undefined) return false
  await settleAside(at.id, aside)
  return true
}

async function sendReading(at: OpenPiece, reading: Json): Promise<boolean> {
  const without = (list: readonly Json[]) => list.filter(r => r['id'] !== reading['id'])
  try {
    if (reading['kind'] === 'photo') await sendBytes(at.id, String(reading['photo']))
    await api('POST', `/api/pieces/${at.id}/readings`, reading)
    reached()
  } catch (e) {
    if (!(e instanceof ApiProblem)) throw e
    if (passing(e.status)) return piece.value?.id === at.id ? failed(e) : true
    unfit.add(reading['id'])
    deskSays.value = w.state.readingRefused(e.message)
    return true
  }
  if (piece.value?.id === at.id) {
    unsent.value = { ...unsent.value, readings: without(unsent.value.readings) }
    void keepHere()
  } else await changeKept(at.id, k => ({ ...k, unread: without(k.unread) }))
  return true
}

// The bytes of a photo go before the record that names them: named by what is in them, they are kept once.
async function sendBytes(id: string, photo: string): Promise<void> {
  const { dropPhoto, unsentPhoto } = await import('../offline/bench-photos.ts')
  const picture = await unsentPhoto(id, photo)
  if (picture === null) return
  await api('POST', `/api/pieces/${id}/photos`, picture)
  await dropPhoto(id, photo)
}

/** Keeps something measured or done: on the desk at once, in this browser, then sent. */
export async function record(reading: Json): Promise<void> {
  const at = piece.value
  if (at === null) return
  piece.value = { ...at, readings: [...(at.readings ?? []), reading] }
  unsent.value = { ...unsent.value, readings: [...unsent.value.readings, reading] }
  saving.value = clash.value === null ? 'saving' : 'kept'
  plan()
  // Kept before it is sent: a window that is closed meanwhile loses nothing.
  await keepHere()
  void send()
}

async function sendDrawing(at: OpenPiece, name: string): Promise<boolean> {
  const text = at.files[name]
  const isHere = () => piece.value?.id === at.id
  try {
    if (text !== undefined) await putDrawing(at.id, name, text)
    reached()
  } catch (e) {
    if (!(e instanceof ApiProblem)) throw e
    if (!isHere()) return true
    if (passing(e.status)) return failed(e)
    refused.add(name)
    deskSays.value = w.state.drawingRefused(name, e.message)
    return true
  }
  if (isHere()) {
    // Another text under the same name goes by itself.
    if (piece.value?.files[name] === text)
      unsent.value = { ...unsent.value, drawings: unsent.value.drawings.filter(n => n !== name) }
    void keepHere()
  } else
    await changeKept(at.id, k =>
      k.files[name] === text ? { ...k, drawings: k.drawings.filter(n => n !== name) } : k
    )
  return true
}

/** Sends a drawing. @throws ApiProblem, also for one that is too large; Unreachable */
export async function putDrawing(id: string, name: string, text: string): Promise<void> {
  const body = new Blob([text], { type: 'text/plain' })
  if (body.size > MOST_DRAWING) {
    const says = w.file.tooLarge(Math.ceil(body.size / 1000), MOST_DRAWING / 1000)
    throw new ApiProblem(413, { error: { code: 'too-large', says } })
  }
  await api('PUT', `/api/pieces/${id}/files/${encodeURIComponent(name)}`, body)
}

async function sendEdit(at: OpenPiece, edit: Pending): Promise<boolean> {
  const now = { ...edit, base: at.revision }
  try {
    const { revision } = await api<{ revision: number }>('PUT', `/api/pieces/${at.id}`, now)
    reached()
    if (piece.value?.id === at.id) {
      piece.value = { ...piece.value, revision }
      if (unsent.value.edit?.edit === edit.edit) unsent.value = { ...unsent.value, edit: null }
      void keepHere()
    } else await acknowledged(at.id, edit, revision)
    return true
  } catch (e) {
    if (!(e instanceof ApiProblem)) throw e
    if (piece.value?.id !== at.id) return true
    if (e.status !== 409) return failed(e)
    const other = await clashOf(at.id, edit, e)
    if (piece.value?.id !== at.id) return true
    clash.value = other
    if (other.aside !== null)
      asides.value = [...asides.value.filter(a => a.number !== other.aside?.number), other.aside]
    saving.value = 'kept'
    return false
  }
}

/** Notes in this browser that an edit of a piece which lies on no desk is at the server. */
export async function acknowledged(id: string, edit: Pending, revision: number): Promise<void> {
  await changeKept(id, k =>
    k.pending?.edit === edit.edit
      ? { ...k, revision, document: edit.document, pending: null }
      : // A later edit was made on this one.
        { ...k, revision: Math.max(k.revision, revision) }
  )
}

/** What the other device made, out of the answer 409, with the drawings beside it. */
export async function clashOf(id: string, edit: Pending, { body }: ApiProblem): Promise<Clash> {
  const stored = await api<StoredPiece>('GET', `/api/pieces/${id}`).catch(() => null)
  return {
    revision: body['revision'] as number,
    document: body['document'] as Json,
    files: stored?.files ?? null,
    aside: (body['aside'] as Clash['aside'] | undefined) ?? null,
    edit: edit.edit
  }
}

async function settleAside(id: string, number: number): Promise<void> {
  try {
    await api('DELETE', `/api/pieces/${id}/asides/${number}`)
  } catch (e) {
    // One that is not there is settled; one that is refused stays to be seen among those kept aside.
    if (!(e instanceof ApiProblem)) throw e
  }
  const without = (list: readonly number[]) => list.filter(n => n !== number)
  if (piece.value?.id === id) {
    unsent.value = { ...unsent.value, settled: without(unsent.value.settled) }
    asides.value = asides.value.filter(a => a.number !== number)
    void keepHere()
  } else await changeKept(id, k => ({ ...k, settled: without(k.settled) }))
}

function failed(e: ApiProblem): false {
  saving.value = 'failed'
  saveSays.value = e.message
  return false
}
