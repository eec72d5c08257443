import { signal } from '@preact/signals'
import { api } from '../net/api.ts'
import type { KeptShop } from '../offline/keep.ts'
import { keepShop, keptShop } from '../offline/keep.ts'
import type { Json } from '../worker/messages.ts'

/** The maker's own facts. null until they are read, or when nobody said any: usual ones are then taken. */
export const shop = signal<KeptShop | null>(null)

/** Reads the shop from the server, or what this browser keeps of it. */
export async function readShop(): Promise<void> {
  try {
    const { revision, document } = await api<{ revision: number; document: Json | null }>('GET', '/api/shop')
    if (document !== null && revision > 0) {
      shop.value = { revision, document, pending: null }
      await keepShop(shop.value)
    }
  } catch {
    shop.value = await keptShop()
  }
}
