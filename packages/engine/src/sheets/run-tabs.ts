import type { Work } from '../findings/work.ts'
import type { Lengths } from '../piece/lengths.ts'
import type { Cut } from '../piece/piece-schema.ts'
import type { RunFact } from './run-part.ts'
import { fact } from './run-part.ts'

/** Tabs that are asked for by a plain yes, or left where an outline says nothing: the schema's own defaults. */
const USUAL = { count: 4, width: 8, thick: 3 } as const

type Tabs = typeof USUAL | { readonly count: number; readonly width: number; readonly thick: number }

/** The tabs a cut leaves on the machine; null where it leaves none. */
function tabsIn({ tabs, skin, kind, through }: Cut, { machine }: Work['shop']): Tabs | null {
  if (skin !== undefined || tabs === false) return null
  if (tabs === undefined)
    return machine !== undefined && kind === 'outline' && through === true ? USUAL : null
  return tabs === true ? USUAL : tabs
}

/** What is done once a cut with tabs or a skin is made: only the machine leaves them. */
export function heldDoes(cut: Cut, shop: Work['shop']): string[] {
  if (cut.way !== 'machine') return []
  if (cut.skin !== undefined)
    return [
      'Saw through the skin that is left, the cutter stopped and the piece off the machine; plane the edge flush.'
    ]
  return tabsIn(cut, shop) === null
    ? []
    : ['Saw the tabs through, the cutter stopped; plane or sand what stands of them flush.']
}

/** How a machined cut is held, what stands in it, and what its walls and corners are to be: only what is asked for. */
export function pocketFacts(cut: Cut, shop: Work['shop'], L: Lengths): RunFact[] {
  const out: RunFact[] = []
  const { islands, skin, corners, allowance, direction, cutter } = cut
  if (islands !== undefined)
    out.push(fact('Left standing', `${islands.length}`, islands.length === 1 ? 'island' : 'islands'))
  if (cut.way !== 'machine') return out
  const tabs = tabsIn(cut, shop)
  if (skin !== undefined) out.push(fact('Skin', L.of(skin, 1), `${L.unit} left all round`))
  else if (tabs !== null)
    out.push(fact('Tabs', `${tabs.count}`, `of ${L.of(tabs.width, 1)} × ${L.of(tabs.thick, 1)} ${L.unit}`))
  if (corners === 'relieved') out.push(fact('Corners', 'bored out', 'so that a square part goes in'))
  if (allowance !== undefined && allowance > 0)
    out.push(fact('Last pass', L.of(allowance, 2), `${L.unit} off the walls`))
  if (direction !== undefined) out.push(fact('Direction', direction))
  if (cutter !== undefined) out.push(fact('Cutter', cutter))
  return out
}

/** The same in few words, for the card. */
export function heldPhrases(cut: Cut, shop: Work['shop'], L: Lengths): string[] {
  if (cut.way !== 'machine') return []
  const tabs = tabsIn(cut, shop)
  return [
    ...(cut.skin === undefined ? [] : [`a skin of ${L.of(cut.skin, 1)} left`]),
    ...(tabs !== null ? [`${tabs.count} tabs`] : [])
  ]
}
