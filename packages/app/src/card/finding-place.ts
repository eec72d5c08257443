import type { FindingView, PlannedView } from '../worker/views.ts'

export type Place =
  | { readonly kind: 'pour'; readonly index: number }
  | { readonly kind: 'step'; readonly number: number }
  | { readonly kind: 'piece' }

/**
 * The findings that stand at a place of the card: those of a pour at its layer, of another entry at the first step
 * that does it, of the mould at its making; the rest over everything.
 */
export function findingsAt(v: PlannedView, place: Place): FindingView[] {
  return v.findings.filter(f => {
    const p = placeOf(v, f.at)
    if (p.kind !== place.kind) return false
    if (p.kind === 'pour') return p.index === (place as typeof p).index
    return p.kind === 'piece' || p.number === (place as typeof p).number
  })
}

function placeOf(v: PlannedView, at: string): Place {
  const [, list, index] = at.split('/')
  if (list === 'pours' && index !== undefined && v.layers.some(l => l.index === Number(index)))
    return { kind: 'pour', index: Number(index) }
  const own = v.steps.filter(s => s.at !== '' && (at === s.at || at.startsWith(`${s.at}/`)))
  const step =
    own.find(s => s.kind !== 'wait') ??
    own[0] ??
    (list === 'mould' ? v.steps.find(s => s.kind === 'make mould') : undefined)
  return step === undefined ? { kind: 'piece' } : { kind: 'step', number: step.number }
}
