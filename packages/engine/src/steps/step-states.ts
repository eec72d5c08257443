import type { Reading } from '../piece/reading-schema.ts'
import type { Step } from './step.ts'
import { stepKeys } from './step-key.ts'

/** How far a step is. 'implied': nothing was read of it, but a step after it was begun. */
export type StepProgress = 'done' | 'implied' | 'begun' | 'left'

/** A step with what was read of it. Moments ISO 8601, minutes as read. */
export interface StepState {
  readonly number: number
  readonly key: string
  readonly says: string
  readonly progress: StepProgress
  readonly beganAt: string | null
  readonly doneAt: string | null
  readonly minutes: number | null
  /** From "began" to "done" as both were recorded, min; null where one of them was not. */
  readonly spanMin: number | null
}

/** What a pour takes before it counts as poured, share of what it needs (practice: the last of it stays in the vessel). */
const POURED_SHARE = 0.9

/** Where no cast says when a pour has gelled: by a day it has (practice). */
const SET_MIN = 24 * 60

/** What the steps are judged by. */
interface StepFacts {
  readonly steps: readonly Step[]
  /** Mass each pour needs, g. */
  readonly needsG: readonly number[]
  /** When what was poured has gelled at the latest, min from its pouring. */
  readonly setMin: readonly number[]
  /** Length of each wait as planned, min; 0 for other steps. */
  readonly waitMin: readonly number[]
}

/** A piece with its readings, as it stands built. */
interface Built {
  readonly steps: readonly Step[]
  readonly stack: { readonly pours: readonly { readonly massG: number }[] }
  readonly quantity: { readonly blanks: number }
  readonly casts: readonly ({
    readonly windows: { readonly gel: { readonly band: readonly [number | null, number | null] } }
  } | null)[]
  readonly clock: readonly { readonly waitMin: number }[]
  readonly readings: readonly Reading[]
}

/** How far each step of a piece is: what the state of the build and the calendar both go by. */
export function stepStatesOf(
  { steps, stack, quantity, casts, clock, readings }: Built,
  asOf: string
): StepState[] {
  const needsG = stack.pours.map(p => p.massG * quantity.blanks)
  const setMin = stack.pours.map((_, i) => casts[i]?.windows.gel.band[1] ?? SET_MIN)
  return stepStates({ steps, needsG, setMin, waitMin: clock.map(t => t.waitMin) }, readings, asOf)
}

/**
 * How far each step is, by what was read: `began` and `done` of its key, what left the vessels, a height, that it was
 * demoulded, a film. A pour of which too little was read is over once that has gelled. A step is taken as done when a later one was begun: nobody demoulds what was not poured. A wait
 * is done when what comes after it was begun, or when its time is over.
 */
function stepStates(facts: StepFacts, readings: readonly Reading[], asOf: string): StepState[] {
  const keys = stepKeys(facts.steps)
  const own = facts.steps.map((step, i) => progressOf(step, keys[i]!, facts, readings, asOf))
  const last = own.findLastIndex(s => s.progress !== 'left')
  const now = Date.parse(asOf)
  const out: StepState[] = []
  facts.steps.forEach((step, i) => {
    const read = own[i]!
    const before = out[i - 1]
    let { progress, beganAt, doneAt } = read
    if (i < last && progress !== 'done') progress = 'implied'
    else if (step.kind === 'wait' && i > last && before?.progress === 'done' && before.doneAt !== null) {
      const ends = Date.parse(before.doneAt) + facts.waitMin[i]! * 60_000
      progress = now >= ends ? 'implied' : 'begun'
      beganAt = before.doneAt
      doneAt = null
    }
    out.push({ ...read, number: step.number, key: keys[i]!, says: step.says, progress, beganAt, doneAt })
  })
  return out
}

function progressOf(
  step: Step,
  key: string,
  facts: StepFacts,
  readings: readonly Reading[],
  asOf: string
): Pick<StepState, 'progress' | 'beganAt' | 'doneAt' | 'minutes' | 'spanMin'> {
  const named = readings.filter(r => 'step' in r && r.step === key)
  const began = edge(
    named.filter(r => r.kind === 'began'),
    'first'
  )
  const done = edge(
    named.filter(r => r.kind === 'done'),
    'last'
  )
  const minutes = named.reduce<number | null>(
    (sum, r) => (r.kind === 'done' || r.kind === 'minutes' ? (r.minutes ?? sum) : sum),
    null
  )
  const seen = seenOf(step, facts, readings, asOf)
  const doneAt = done ?? seen.doneAt
  const beganAt = began ?? seen.beganAt
  return {
    progress: doneAt !== null ? 'done' : beganAt !== null ? 'begun' : 'left',
    beganAt,
    doneAt,
    minutes,
    spanMin: began === null || done === null ? null : (Date.parse(done) - Date.parse(began)) / 60_000
  }
}

// What other readings say of a step: nobody reads the height of what was not poured.
function seenOf(
  step: Step,
  facts: StepFacts,
  readings: readonly Reading[],
  asOf: string
): { readonly beganAt: string | null; readonly doneAt: string | null } {
  if (step.kind === 'demould') {
    const at = edge(
      readings.filter(r => r.kind === 'demoulded'),
      'first'
    )
    return { beganAt: at, doneAt: at }
  }
  if (step.kind === 'coat' && step.face !== undefined) {
    const faces = step.face === 'both' ? (['front', 'back'] as const) : [step.face]
    const films = readings.filter(r => r.kind === 'film' && faces.includes(r.face))
    const all = faces.every(f => films.some(r => r.kind === 'film' && r.face === f))
    return { beganAt: edge(films, 'first'), doneAt: all ? edge(films, 'last') : null }
  }
  if (step.kind !== 'pour') return { beganAt: null, doneAt: null }
  const { id, index } = step.pour!
  const own = readings.filter(r => 'pour' in r && r.pour === id)
  const poured = own.filter(r => r.kind === 'poured')
  const sumG = poured.reduce((sum, r) => sum + (r.kind === 'poured' ? r.mass : 0), 0)
  const beganAt = edge(
    own.filter(r => r.kind === 'mixed' || r.kind === 'poured'),
    'first'
  )
  const after = own.filter(r => r.kind === 'height' || r.kind === 'stage')
  const enough = poured.length > 0 && sumG >= POURED_SHARE * facts.needsG[index]!
  const lastAt = edge(poured, 'last')
  const set = lastAt !== null && Date.parse(asOf) >= Date.parse(lastAt) + facts.setMin[index]! * 60_000
  return { beganAt, doneAt: enough ? lastAt : (edge(after, 'first') ?? (set ? lastAt : null)) }
}

/** The earliest or the latest moment of some readings. */
function edge(readings: readonly Reading[], which: 'first' | 'last'): string | null {
  return readings.reduce<string | null>((best, r) => {
    if (best === null) return r.at
    const later = Date.parse(r.at) > Date.parse(best)
    return later === (which === 'last') ? r.at : best
  }, null)
}
