import { signal } from '@preact/signals'
import type { CardAsk } from '../worker/messages.ts'
import type { CardAnswer } from '../worker/views.ts'
import { askEngine } from './engine.ts'
import { shop } from './shop.ts'

/** What a hiding card says; null: none was read, or it cannot be used. */
export const card = signal<CardAnswer | null>(null)
export const cardWrong = signal<string | null>(null)
export const cardBusy = signal(false)

let asked = 0

/** Reads a hiding card; nothing is kept. */
export function readCard(ask: Omit<CardAsk, 'shop'>): void {
  cardBusy.value = true
  asked = askEngine({ kind: 'card', shop: shop.value?.document ?? null, ...ask }, answer => {
    if (answer.seq !== asked) return
    cardBusy.value = false
    card.value = answer.kind === 'card' ? answer.card : null
    cardWrong.value = null
    if (answer.kind === 'failed') cardWrong.value = answer.says
    if (answer.kind !== 'refused') return
    const p = answer.problems[0]!
    const where = p.path
      .replace(/^\/cards\/\d+/, '')
      .replace(/^\//, '')
      .replaceAll('/', ', ')
    cardWrong.value = [
      where === '' ? '' : `${where}: `,
      `found ${p.found}; allowed: ${p.allowed}`,
      p.example === '' ? '' : `; for example ${p.example}`
    ].join('')
  })
}

export function clearCard(): void {
  asked = 0
  card.value = null
  cardWrong.value = null
  cardBusy.value = false
}
