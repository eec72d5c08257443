import { signal } from '@preact/signals'
import type { Json } from '../worker/document.ts'
import type { CupAsk } from '../worker/messages.ts'
import type { CupAnswer } from '../worker/views.ts'
import { askEngine } from './engine.ts'
import { units } from './preferences.ts'
import { width } from './screen.ts'
import { shop } from './shop.ts'

/** What the readings say; null: nothing was read, or it cannot be used. */
export const cup = signal<CupAnswer | null>(null)
/** What is wrong with them: in words, and whether the unit of the thermometer is what is asked for. */
export const cupWrong = signal<{ readonly says: string; readonly asksUnit: boolean } | null>(null)
export const cupBusy = signal(false)

/** Widths of the drawing, mm: on a screen with room, and on a phone. */
const WIDE_MM = 150
const NARROW_MM = 84

let asked = 0

/** Reads and fits a cup test; nothing is kept. */
export function readCup(ask: Pick<CupAsk, 'resin' | 'text' | 'given' | 'kept'>): void {
  cupBusy.value = true
  asked = askEngine(
    {
      kind: 'cup',
      shop: shop.value?.document ?? null,
      widthMm: width.value === 'wide' ? WIDE_MM : NARROW_MM,
      shown: units.value,
      ...ask
    },
    answer => {
      if (answer.seq !== asked) return
      cupBusy.value = false
      cup.value = answer.kind === 'cup' ? answer.cup : null
      cupWrong.value = null
      if (answer.kind === 'failed') cupWrong.value = { says: answer.says, asksUnit: false }
      if (answer.kind !== 'refused') return
      const p = answer.problems[0]!
      const asksUnit = p.allowed.includes('--unit')
      const where = p.path.replace(/^\//, '').replaceAll('/', ', ')
      cupWrong.value = {
        says: [
          where === '' ? '' : `${where}: `,
          `found ${p.found}; allowed: `,
          // What is an option of the command is a button here.
          asksUnit ? p.allowed.replace(/: if these are .*$/, '') : p.allowed,
          p.example === '' ? '' : `; for example ${p.example}`
        ].join(''),
        asksUnit
      }
    }
  )
}

export function clearCup(): void {
  asked = 0
  cup.value = null
  cupWrong.value = null
  cupBusy.value = false
}

/** Cup tests that the shop keeps, with the resin each belongs to. */
export function keptTests(document: Json): readonly { at: string; resin: string; test: Json }[] {
  return ((document['resins'] as Json[] | undefined) ?? []).flatMap((r, i) =>
    ((r['cupTests'] as Json[] | undefined) ?? []).map((test, k) => ({
      at: `/resins/${i}/cupTests/${k}`,
      resin: String(r['id']),
      test
    }))
  )
}
