import { computed, signal } from '@preact/signals'
import type { Patch } from '../../../engine/src/piece/patch.ts'
import { applyPatch } from '../../../engine/src/piece/patch.ts'
import type { Aside } from '../net/api.ts'
import { ApiProblem, api, newId, Unreachable } from '../net/api.ts'
import type { KeptShop, Pending } from '../offline/keep.ts'
import { keepShop, keptShop } from '../offline/keep.ts'
import { w } from '../text/words.ts'
import type { Json } from '../worker/document.ts'
import { told, unreached } from './reach.ts'

/** The maker's own facts. null until they are read, or when nobody said any: usual ones are then taken. */
export const shop = signal<KeptShop | null>(null)
/** What the last change of the shop met; empty when it was saved. */
export const shopSays = signal('')
/** What the server keeps of the shop that was changed on an older revision. */
export const shopAsides = signal<readonly Aside[]>([])
/** The shop before something kept aside was laid over it; null when nothing was. */
export const shopBefore = signal<Json | null>(null)

/** The device whose change stands in place of what was typed here, and the number that is kept aside under. */
const overtaken = signal<{ readonly device: string | null; readonly aside: number } | null>(null)
/** Which device's change stands in place of what was typed here, in words; empty when none does. */
export const shopStands = computed(() => {
  const by = overtaken.value
  if (by === null || !shopAsides.value.some(a => a.number === by.aside)) return ''
  return w.aside.shop(by.device)
})

interface Stored {
  readonly revision: number
  readonly document: Json | null
  readonly aside: readonly Aside[]
}

/** Reads the shop from the server, or what this browser keeps of it. What was not sent yet stands before both. */
export async function readShop(): Promise<void> {
  if (shop.value === null) {
    const kept = await keptShop().catch(() => null)
    shop.value ??= kept
  }
  if (shop.value?.pending != null) await sendShop()
  const was = shop.value
  const listed = shopAsides.value
  try {
    const { revision, document, aside } = await api<Stored>('GET', '/api/shop')
    // Put aside or settled meanwhile: asked anew.
    if (shopAsides.value !== listed) return await readShop()
    shopAsides.value = aside
    // What was typed meanwhile stands before what was asked for before it.
    if (shop.value !== was || was?.pending != null || document === null || revision === 0) return
    if (revision !== was?.revision) shopBefore.value = null
    await lay({ revision, document, pending: null })
  } catch (e) {
    if (e instanceof Unreachable) unreached()
    else if (!(e instanceof ApiProblem)) throw e
  }
}

async function lay(next: KeptShop): Promise<void> {
  shop.value = next
  // A browser without room still works while the server is there.
  await keepShop(next).catch(() => undefined)
}

/** Changes the shop: at once here, then on the server. */
export async function editShop(patch: Patch): Promise<void> {
  const was: KeptShop = shop.value ?? { revision: 0, document: { castwright: 1 }, pending: null }
  const document = applyPatch(was.document, patch)
  const pending = { base: was.revision, edit: newId(), document, says: '' }
  shopBefore.value = null
  await lay({ revision: was.revision, document, pending })
  await sendShop()
}

let sending = false

// One at a time; what is typed meanwhile goes next.
async function sendShop(): Promise<void> {
  if (sending) return
  sending = true
  try {
    for (let clashed: Aside | null = null; ; ) {
      const now = shop.value
      if (now?.pending == null) return
      const met = await put(now, now.pending)
      if (met === null) continue
      // The newer one holds all that the one kept aside before it does.
      if (clashed !== null) await api('DELETE', `/api/shop/asides/${clashed.number}`)
      // What was typed meanwhile is put aside as well before it leaves the screen.
      if (shop.value?.pending?.edit === now.pending.edit) return await yieldTo(met, clashed)
      clashed = met.aside
    }
  } catch (e) {
    if (e instanceof Unreachable) unreached()
    else if (e instanceof ApiProblem) shopSays.value = e.message
    else throw e
  } finally {
    sending = false
  }
}

/** What was changed on another device: that one, and mine as the server keeps it aside. */
interface Met extends Omit<Stored, 'document' | 'aside'> {
  readonly document: Json
  readonly device: string | null
  readonly aside: Aside
}

async function put(now: KeptShop, pending: Pending): Promise<Met | null> {
  try {
    const sent = { ...pending, base: now.revision }
    const { revision } = await api<{ revision: number }>('PUT', '/api/shop', sent)
    const next = shop.value ?? now
    const still = next.pending?.edit === pending.edit
    shopSays.value = ''
    await lay({ ...next, revision, ...(still ? { pending: null } : {}) })
    return null
  } catch (e) {
    if (!(e instanceof ApiProblem) || e.status !== 409) throw e
    return e.body as unknown as Met
  }
}

async function yieldTo({ revision, document, device, aside }: Met, settled: Aside | null): Promise<void> {
  const others = shopAsides.value.filter(a => a.number !== aside.number && a.number !== settled?.number)
  shopAsides.value = [...others, aside]
  overtaken.value = { device, aside: aside.number }
  shopSays.value = ''
  shopBefore.value = null
  await lay({ revision, document, pending: null })
}

/** Lays what is kept aside over the shop; what it met, in words. */
export async function layShopAside(number: number): Promise<string> {
  return told(async () => {
    const { document } = await api<{ document: Json }>('GET', `/api/shop/asides/${number}`)
    const before = shop.value?.document ?? { castwright: 1 }
    const sent = editShop([{ op: 'replace', path: '', value: document }])
    shopBefore.value = before
    overtaken.value = null
    await sent
  })
}

/** Lays the shop as it was before something kept aside was laid over it. */
export async function takeBackShop(): Promise<void> {
  const before = shopBefore.value
  if (before === null) return
  await editShop([{ op: 'replace', path: '', value: before }])
}

/** Sets something that is kept aside of the shop aside for good; what it met, in words. */
export async function dropShopAside(number: number): Promise<string> {
  return told(async () => {
    try {
      await api('DELETE', `/api/shop/asides/${number}`)
    } catch (e) {
      if (!(e instanceof ApiProblem && e.code === 'no-such-aside')) throw e
    }
    shopAsides.value = shopAsides.value.filter(a => a.number !== number)
  })
}
