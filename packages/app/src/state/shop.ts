import { signal } from '@preact/signals'
import type { Patch } from '../../../engine/src/piece/patch.ts'
import { applyPatch } from '../../../engine/src/piece/patch.ts'
import { ApiProblem, api, newId } from '../net/api.ts'
import type { KeptShop } from '../offline/keep.ts'
import { keepShop, keptShop } from '../offline/keep.ts'
import type { Json } from '../worker/messages.ts'

/** The maker's own facts. null until they are read, or when nobody said any: usual ones are then taken. */
export const shop = signal<KeptShop | null>(null)
/** What the last change of the shop met; empty when it was saved. */
export const shopSays = signal('')

/** Reads the shop from the server, or what this browser keeps of it. What was not sent yet stands before both. */
export async function readShop(): Promise<void> {
  const kept = await keptShop()
  if (kept?.pending) {
    shop.value = kept
    await sendShop()
    return
  }
  try {
    const { revision, document } = await api<{ revision: number; document: Json | null }>('GET', '/api/shop')
    if (document !== null && revision > 0) {
      shop.value = { revision, document, pending: null }
      await keepShop(shop.value)
    }
  } catch {
    shop.value = kept
  }
}

/** Changes the shop: at once here, then on the server. */
export async function editShop(patch: Patch): Promise<void> {
  const was: KeptShop = shop.value ?? { revision: 0, document: { castwright: 1 }, pending: null }
  const document = applyPatch(was.document, patch)
  shop.value = {
    revision: was.revision,
    document,
    pending: { base: was.revision, edit: newId(), document, says: '' }
  }
  await keepShop(shop.value)
  await sendShop()
}

async function sendShop(): Promise<void> {
  const now = shop.value
  if (now?.pending == null) return
  try {
    const { revision } = await api<{ revision: number }>('PUT', '/api/shop', {
      ...now.pending,
      base: now.revision
    })
    const still = shop.value?.pending?.edit === now.pending.edit
    shop.value = { ...(shop.value ?? now), revision, ...(still ? { pending: null } : {}) }
    shopSays.value = ''
    await keepShop(shop.value)
    if (!still) await sendShop()
  } catch (e) {
    if (e instanceof ApiProblem) shopSays.value = e.message
    // Changed on another device: theirs is laid here; what was said here stands in its fields no longer.
    if (e instanceof ApiProblem && e.status === 409) {
      shop.value = {
        revision: e.body['revision'] as number,
        document: e.body['document'] as Json,
        pending: null
      }
      await keepShop(shop.value)
    }
  }
}
