import type { WholeCast } from '../../../engine/src/cast/whole/whole-cast.ts'
import type { Work } from '../../../engine/src/findings/work.ts'
import { checkPiece, checkShop, readReadings, usualShop } from '../../../engine/src/piece/read.ts'
import type { Planned } from '../../../engine/src/plan.ts'
import { plan } from '../../../engine/src/plan.ts'
import { windowsAsked } from '../../../engine/src/sheets/page-card.ts'
import type { PlanInput } from '../../../engine/src/work.ts'
import { workOf } from '../../../engine/src/work.ts'
import type { Casting } from './casting.ts'
import { keepCast, keptCast } from './kept-casts.ts'
import type { Answer, Ask } from './messages.ts'
import { plannedView } from './planned-view.ts'
import type { SentView } from './views.ts'
import { carried, triedDocuments, whatIfView } from './what-if.ts'

/** Work that goes on in slices after an ask was first answered. */
export interface GoingOn {
  readonly seq: number
  /** Works for a slice; an answer to send, if there is one, and whether more is to do. */
  readonly slice: () => Promise<{ readonly answer: Answer | null; readonly more: boolean }>
}

interface Begun {
  readonly answer: Answer
  readonly on: GoingOn | null
}

type Full = Extract<Ask, { kind: 'plan' }>
type Try = Extract<Ask, { kind: 'what-if' }>
type Documents = Pick<Full, 'document' | 'shop' | 'files' | 'readings'>

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

/**
 * A pour of another depth or in another room: at once from how the column moves, then by a coarse cast of the whole
 * mould.
 */
export function whatIfAnswer(ask: Try): Begun {
  const { seq, pour, shown } = ask
  const key = keyOf(ask)
  const before = columnOf(ask)
  const tried = { ...ask, ...triedDocuments(ask, before.shop.climate) }
  const now = workOf({ ...inputOf(tried), effort: 'preview' })
  const [column, moved] = [before.casts[pour], now.casts[pour]]
  if (column == null || moved == null) return { answer: { kind: 'casting', seq, share: 1 }, on: null }
  const whole = (keptCast(key) ?? (latest?.key === key ? latest.whole : null))?.casts[pour] ?? null
  const was = whole ?? column
  const pours = now.piece.pours.map((p, i) => ({ kind: p.kind, stack: now.stack.pours[i]! }))
  const asked = windowsAsked(pours, pour)
  const { id } = now.entries.pours[pour]!
  const first = whole === null ? moved : carried(whole, column, moved)
  const view = whatIfView(id, was, first, asked, shown, whole === null ? 'column' : 'estimate')
  // Without a cast of the whole mould of the plan there is nothing of its kind to lay beside another one.
  if (whole === null) return { answer: { kind: 'what-if', seq, view, share: 1 }, on: null }
  let at: Casting | null = null
  let best: WholeCast | null = null
  return {
    answer: { kind: 'what-if', seq, view, share: 0 },
    on: {
      seq,
      slice: async () => {
        at ??= (await import('./casting.ts')).casting(inputOf(tried), { effort: 'preview', edges: false })
        at.slice()
        const share = at.share()
        const more = share < 1
        const next = at.best()
        const cast = next?.casts[pour] ?? null
        if (cast === null || next === best)
          return { answer: more ? null : { kind: 'casting', seq, share }, more }
        best = next
        const better = whatIfView(id, was, cast, asked, shown, 'whole')
        return { answer: { kind: 'what-if', seq, view: better, share }, more }
      }
    }
  }
}

let column: { readonly key: string; readonly work: Work } | null = null

/** The column of a piece as it stands, kept: asked for again with every move of the hand. */
export function columnOf(ask: Documents): Work {
  const key = keyOf(ask)
  if (column?.key !== key) column = { key, work: workOf({ ...inputOf(ask), effort: 'preview' }) }
  return column.work
}

// What a cast depends on; the face shown and the units are none of it.
function keyOf({ document, shop, files, readings = [] }: Documents): string {
  return JSON.stringify([document, shop, files, readings])
}

function inputOf({ document, shop, files, readings = [] }: Documents): PlanInput {
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
