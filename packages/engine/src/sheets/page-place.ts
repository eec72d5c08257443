import type { Work } from '../findings/work.ts'
import type { Plan } from '../plan.ts'
import type { Numbered } from './page-finding.ts'

/** Where a finding stands on the page. */
export type Place =
  | { readonly kind: 'pour'; readonly index: number }
  | { readonly kind: 'step'; readonly number: number }
  | { readonly kind: 'mould' }
  | { readonly kind: 'piece' }

/**
 * The entry a finding concerns: its layer for a pour, else the step that makes it, the mould for the mould;
 * what concerns no entry stands over the steps.
 */
function placeOf(plan: Plan, at: string): Place {
  const [, list, index] = at.split('/')
  if (list === 'pours' && index !== undefined) return { kind: 'pour', index: Number(index) }
  const own = plan.steps.filter(s => s.at !== '' && (at === s.at || at.startsWith(`${s.at}/`)))
  const step = own.find(s => s.kind !== 'wait') ?? own[0]
  if (list === 'mould' && plan.mould.needsMould) return { kind: 'mould' }
  return step === undefined ? { kind: 'piece' } : { kind: 'step', number: step.number }
}

/** Findings sorted to where they stand. */
export interface Placed {
  readonly pours: ReadonlyMap<number, readonly Numbered[]>
  readonly steps: ReadonlyMap<number, readonly Numbered[]>
  readonly mould: readonly Numbered[]
  readonly piece: readonly Numbered[]
}

export function placed(plan: Plan, all: readonly Numbered[]): Placed {
  const pours = new Map<number, Numbered[]>()
  const steps = new Map<number, Numbered[]>()
  const mould: Numbered[] = []
  const piece: Numbered[] = []
  const put = (map: Map<number, Numbered[]>, key: number, n: Numbered) => {
    const list = map.get(key)
    if (list === undefined) map.set(key, [n])
    else list.push(n)
  }
  for (const n of all) {
    const place = placeOf(plan, n.finding.at)
    if (place.kind === 'pour' && place.index < plan.pours.length) put(pours, place.index, n)
    else if (place.kind === 'step') put(steps, place.number, n)
    else if (place.kind === 'mould') mould.push(n)
    else piece.push(n)
  }
  return { pours, steps, mould, piece }
}

/** Parts of the mould that a finding may concern by themselves. */
const MOULD_PARTS = {
  wall: 'walls',
  liner: 'lining',
  bearers: 'bearers',
  base: 'base',
  margin: 'margin',
  joints: 'joints',
  corners: 'corners',
  wallBoard: 'walls'
} as const

/** Entries of the piece whose key is no noun. */
const SETTINGS = {
  flatten: 'flattening',
  holding: 'how it is held',
  food: 'the face that meets food'
} as const

/** What the entry of a JSON Pointer is called. */
export function entryName(work: Work, at: string): string {
  const [, list, second, third] = at.split('/')
  if (list === 'steps' && second !== undefined) {
    const step = work.steps.find(s => s.at === `/steps/${second}`)
    if (step !== undefined) return `step ${step.number}, ${step.says}`
  }
  const { entries } = work
  const lists = {
    timbers: entries.timbers,
    pours: entries.pours,
    cuts: entries.cuts,
    hardware: entries.hardware,
    markings: entries.markings
  } as const
  if (list !== undefined && list in lists) {
    const entry = lists[list as keyof typeof lists][Number(second)]
    if (entry !== undefined) return entry.id
  }
  if (list === 'mould' && second === 'formers') return entries.formers[Number(third)]?.id ?? 'the mould'
  if (list === 'mould' && second !== undefined && second in MOULD_PARTS)
    return `the mould’s ${MOULD_PARTS[second as keyof typeof MOULD_PARTS]}`
  if (list !== undefined && list in SETTINGS) return SETTINGS[list as keyof typeof SETTINGS]
  return list === undefined || list === '' ? 'the piece' : `the ${list}`
}
