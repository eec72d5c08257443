import { batch } from '@preact/signals'
import type { StoredPiece } from '../net/api.ts'
import { ApiProblem, api, Unreachable } from '../net/api.ts'
import { w } from '../text/words.ts'
import { edit, layNewer } from './desk.ts'
import { asides, clash, deskSays, done, piece, saving, undone, unsent, withUnsent } from './open-piece.ts'
import { plan } from './planning.ts'
import { problemSays, reached, unreached } from './reach.ts'
import { clashOf, keepHere, send } from './sending.ts'

/**
 * Settles a clash. Mine goes on over theirs, as an edit: what the server kept aside of it is settled once that is
 * there. Or theirs is laid on the desk: mine, as it stands now, stays aside on the server.
 */
export async function settle(whose: 'mine' | 'theirs'): Promise<void> {
  if (whose === 'theirs' && !(await keptAside())) return
  const at = piece.value
  const other = clash.value
  if (at === null || other === null) return
  const mine = at.document
  const number = other.aside?.number
  const settled = whose === 'mine' && number !== undefined ? [number] : []
  batch(() => {
    clash.value = null
    unsent.value = { ...unsent.value, edit: null, settled: [...unsent.value.settled, ...settled] }
    piece.value = {
      ...at,
      revision: other.revision,
      document: other.document,
      files: other.files === null ? at.files : withUnsent(other.files, at.files)
    }
    done.value = []
    undone.value = []
    saving.value = 'saved'
  })
  if (whose === 'mine') edit(w.aside.mine, [{ op: 'replace', path: '', value: mine }])
  else {
    void keepHere()
    plan()
    void send()
  }
}

// What was changed here after the answer 409 is not at the server yet: it is put aside there before it leaves the desk.
async function keptAside(): Promise<boolean> {
  for (;;) {
    const at = piece.value
    const other = clash.value
    const now = unsent.value.edit
    if (at === null || other === null) return false
    if (now === null || now.edit === other.edit) return true
    try {
      // Made on a revision that is not the newest: this is answered with 409, or not at all.
      await api('PUT', `/api/pieces/${at.id}`, { ...now, base: at.revision })
      return true
    } catch (e) {
      if (!(e instanceof ApiProblem)) return cannot(e, w.aside.notNow)
      if (e.status !== 409) return cannot(e, problemSays(e))
      const newer = await clashOf(at.id, now, e)
      if (piece.value?.id !== at.id || clash.value !== other) return false
      // The newer one holds all that the one before it does.
      const before = other.aside?.number
      batch(() => {
        clash.value = newer
        asides.value = [...asides.value, ...(newer.aside === null ? [] : [newer.aside])]
        if (before !== undefined)
          unsent.value = { ...unsent.value, settled: [...unsent.value.settled, before] }
      })
    }
  }
}

function cannot(e: unknown, says: string): false {
  if (e instanceof Unreachable) unreached()
  deskSays.value = says
  return false
}

/** Another device saved the piece that lies here. */
export async function changedElsewhere(id: string, revision: number): Promise<void> {
  const stays = () => piece.value?.id !== id || revision <= piece.value.revision || unsent.value.edit !== null
  if (stays() || clash.value !== null) return
  try {
    const stored = await api<StoredPiece>('GET', `/api/pieces/${id}`)
    reached()
    if (!stays() && stored.revision > (piece.value?.revision ?? 0)) layNewer(stored)
  } catch (e) {
    if (piece.value?.id !== id) return
    if (e instanceof ApiProblem) deskSays.value = problemSays(e)
    else if (e instanceof Unreachable) unreached()
    else throw e
  }
}
