import type { StoredPiece } from '../net/api.ts'
import { ApiProblem, api } from '../net/api.ts'
import type { Json } from '../worker/document.ts'
import { edit } from './desk.ts'
import { asides, piece, withUnsent } from './open-piece.ts'
import { told } from './reach.ts'

/** Lays a document that the server keeps of the piece on the desk, as an edit of its own; what it met, in words. */
export async function layKept(id: string, at: string, says: string): Promise<string> {
  return told(async () => {
    const { document } = await api<{ document: Json }>('GET', `/api/pieces/${id}/${at}`)
    // It may name drawings that came with it from another device.
    const stored = await api<StoredPiece>('GET', `/api/pieces/${id}`)
    const now = piece.value
    if (now?.id !== id) return
    piece.value = { ...now, files: withUnsent(stored.files, now.files) }
    edit(says, [{ op: 'replace', path: '', value: document }])
  })
}

/** Reads what is kept aside of the piece on the desk; what it met, in words. */
export async function readAsides(id: string): Promise<string> {
  return told(async () => {
    const listed = asides.value
    const stored = await api<StoredPiece>('GET', `/api/pieces/${id}`)
    // What was put aside or settled meanwhile is newer than the answer.
    if (piece.value?.id === id && asides.value === listed) asides.value = stored.aside ?? []
  })
}

/** Sets something that is kept aside of a piece aside for good; what it met, in words. */
export async function dropAside(id: string, number: number): Promise<string> {
  return told(async () => {
    try {
      await api('DELETE', `/api/pieces/${id}/asides/${number}`)
    } catch (e) {
      // Gone by another device's hand: that is what was wanted.
      if (!(e instanceof ApiProblem && e.code === 'no-such-aside')) throw e
    }
    if (piece.value?.id === id) asides.value = asides.value.filter(a => a.number !== number)
  })
}
