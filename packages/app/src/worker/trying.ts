import type { WholeCast } from '../../../engine/src/cast/whole/whole-cast.ts'
import { windowsAsked } from '../../../engine/src/sheets/page-card.ts'
import { workOf } from '../../../engine/src/work.ts'
import type { Casting } from './casting.ts'
import type { Ask } from './messages.ts'
import type { Begun } from './planner.ts'
import { bestCast, columnOf, inputOf, keyOf } from './planner.ts'
import { carried, triedDocuments, whatIfView } from './what-if.ts'

type Try = Extract<Ask, { kind: 'what-if' }>

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
  const whole = bestCast(key)?.casts[pour] ?? null
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
