import type { WholeCast } from '../../../engine/src/cast/whole/whole-cast.ts'
import type { Work } from '../../../engine/src/findings/work.ts'
import { checkPiece, checkShop, readReadings, usualShop } from '../../../engine/src/piece/read.ts'
import type { Planned } from '../../../engine/src/plan.ts'
import { plan } from '../../../engine/src/plan.ts'
import type { PlanInput } from '../../../engine/src/work.ts'
import { workOf } from '../../../engine/src/work.ts'
import type { Casting } from './casting.ts'
import { keepCast, keptCast } from './kept-casts.ts'
import type { Answer, Ask } from './messages.ts'
import { plannedView } from './planned-view.ts'
import type { SentView } from './views.ts'

/** Work that goes on in slices after an ask was first answered. */
export interface GoingOn {
  readonly seq: number
  /** Works for a slice; an answer to send, if there is one, and whether more is to do. */
  readonly slice: () => Promise<{ readonly answer: Answer | null; readonly more: boolean }>
}

export interface Begun {
  readonly answer: Answer
  readonly on: GoingOn | null
}

type Full = Extract<Ask, { kind: 'plan' }>
export type Documents = Pick<Full, 'document' | 'shop' | 'files' | 'readings'>

/** How often it is told how far a cast is, ms. */
const TOLD_EVERY_MS = 200

/** The best cast of the piece that is cast last, as far as it is. */
let latest: { readonly key: string; readonly whole: WholeCast } | null = null

/** A plan from the column at once; a full one goes on with the cast of the whole mould, unless that is known. */
export function planAnswer(ask: Full): Begun {
  const { seq } = ask
  const key = keyOf(ask)
  const whole = keptCast(key)
  if (whole !== null) {
    const view = viewOf({ ...ask, effort: 'full' }, whole)
    return { answer: { kind: 'planned', seq, view, share: 1 }, on: null }
  }
  const answer = { kind: 'planned', seq, view: viewOf(ask, null), share: 0 } as const
  return { answer, on: ask.effort === 'full' ? castingFor(ask, key) : null }
}

function castingFor(ask: Full, key: string): GoingOn {
  const { seq } = ask
  let at: Casting | null = null
  let shown: WholeCast | null = null
  let told = 0
  return {
    seq,
    slice: async () => {
      at ??= (await import('./casting.ts')).casting(inputOf(ask), { effort: 'full' })
      at.slice()
      const share = at.share()
      const best = at.best()
      const more = share < 1
      if (best !== null) latest = { key, whole: best }
      if (!more && best !== null) keepCast(key, best)
      const due = !more || performance.now() - told > TOLD_EVERY_MS
      if (best === shown && !due) return { answer: null, more }
      told = performance.now()
      if (best === shown || best === null) return { answer: { kind: 'casting', seq, share }, more }
      shown = best
      return { answer: { kind: 'planned', seq, view: viewOf(ask, best), share }, more }
    }
  }
}

/** The best cast of the whole mould that is known of these documents. */
export function bestCast(key: string): WholeCast | null {
  return keptCast(key) ?? (latest?.key === key ? latest.whole : null)
}

let column: { readonly key: string; readonly work: Work } | null = null

/** The column of a piece as it stands, kept: asked for again with every move of the hand. */
export function columnOf(ask: Documents): Work {
  const key = keyOf(ask)
  if (column?.key !== key) column = { key, work: workOf({ ...inputOf(ask), effort: 'preview' }) }
  return column.work
}

// What a cast depends on; the face shown and the units are none of it.
export function keyOf({ document, shop, files, readings = [] }: Documents): string {
  return JSON.stringify([document, shop, files, readings])
}

export function inputOf({ document, shop, files, readings = [] }: Documents): PlanInput {
  const piece = checkPiece(document, 'the piece')
  const usual = shop === null ? usualShop() : checkShop(shop, 'the shop').value
  const lines = readings.map(r => `${JSON.stringify(r)}\n`).join('')
  return {
    piece,
    shop: usual,
    files,
    source: 'the piece',
    readings: readReadings(lines, 'the readings').readings
  }
}

/** A plan of documents; the column's unless a cast is given. @throws InputProblem when the piece cannot be used */
export function planned(
  ask: Documents & Pick<Full, 'asOf' | 'effort'>,
  whole: WholeCast | null = null
): Planned {
  const { asOf, effort } = ask
  return plan({ ...inputOf(ask), whole }, { asOf, effort })
}

function viewOf(ask: Full, whole: WholeCast | null): SentView {
  return plannedView(planned(ask, whole), ask.width, ask.face, ask.shown)
}
