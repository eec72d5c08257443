import type { Work } from '../findings/work.ts'
import { pouredG, standingReadings } from '../piece/standing-readings.ts'
import { formatMass, formatMinutes, formatMm } from '../quantity/format.ts'
import { needsMould } from '../steps/step.ts'
import { stepKeys } from '../steps/step-key.ts'
import type { StepState } from '../steps/step-states.ts'
import { stepStatesOf } from '../steps/step-states.ts'
import type { PlanInput } from '../work.ts'
import { workOf } from '../work.ts'
import type { Change } from './changes.ts'
import { changesOf } from './changes.ts'
import type { Contradiction } from './contradictions.ts'
import { contradictionsOf } from './contradictions.ts'
import { momentWords } from './moment-words.ts'

/** Where a build stands. Plain data; the same input gives the same bytes. */
export interface BuildState {
  readonly asOf: string
  /** In one or two sentences. */
  readonly says: string
  readonly steps: readonly StepState[]
  /** Index of the step that comes next; null when all is done. */
  readonly next: number | null
  /** What stands, each a sentence. */
  readonly stands: readonly string[]
  /** What is left to do, each a sentence. */
  readonly left: readonly string[]
  readonly changed: readonly Change[]
  readonly contradictions: readonly Contradiction[]
}

/**
 * The state of a build after its readings: which steps are done, what stands, what is left, what is otherwise than
 * planned, and which readings do not go together. Heat is told from the column.
 * @throws InputProblem when the piece cannot be used
 */
export function stateOf(input: PlanInput, asOf: string): BuildState {
  const readings = standingReadings(input.readings ?? [])
  const quick = { ...input, effort: 'preview' as const, whole: null }
  const built = workOf(quick)
  const plan = readings.length === 0 ? built : workOf({ ...quick, readings: [] })
  return stateFrom(plan, built, asOf)
}

/** The same from a plan without its readings and one with them. */
export function stateFrom(plan: Work, built: Work, asOf: string): BuildState {
  const { readings, entries, stack } = built
  const ids = (list: readonly { readonly id: string }[]) => list.map(e => e.id)
  const steps = stepStatesOf(built, asOf)
  const at = steps.findIndex(s => s.progress === 'left')
  const next = at < 0 ? null : at
  return {
    asOf,
    says: sentence(steps, next),
    steps,
    next,
    stands: standing(built, steps),
    left: leftOver(built, steps, next),
    changed: readings.length === 0 ? [] : changesOf(plan, built),
    contradictions: contradictionsOf(
      readings,
      {
        pours: ids(entries.pours),
        cast: new Set(entries.pours.filter(p => p.value.kind === 'cast').map(p => p.id)),
        timbers: ids(entries.timbers),
        cuts: ids(entries.cuts),
        steps: stepKeys(built.steps),
        floorsMm: stack.pours.map(p => (p.side === null ? p.floor : null))
      },
      asOf
    )
  }
}

function sentence(steps: readonly StepState[], next: number | null): string {
  const begun = steps.filter(s => s.progress === 'begun')
  const done = steps.filter(s => s.progress === 'done' || s.progress === 'implied').length
  if (next === null && begun.length === 0) return 'All steps are done.'
  if (done === 0 && begun.length === 0) return `Nothing is begun. First: ${steps[0]?.says ?? 'nothing'}.`
  const now = begun.length > 0 ? ` Begun: ${begun.map(s => s.says).join(', ')}.` : ''
  const then = next === null ? '' : ` Next: ${steps[next]!.says}.`
  return `${done} of ${steps.length} steps are done.${now}${then}`
}

const isDone = (s: StepState | undefined) => s?.progress === 'done' || s?.progress === 'implied'

function standing(work: Work, states: readonly StepState[]): string[] {
  const { steps, stack, entries, readings, piece } = work
  const last = states.findLastIndex(s => s.progress !== 'left')
  if (last < 0) return []
  const out: string[] = []
  const doneOf = (kind: string) => steps.some((s, i) => s.kind === kind && isDone(states[i]))
  const inMould = needsMould(piece) && !doneOf('demould')
  out.push(
    inMould
      ? doneOf('make mould') || last > 0
        ? 'it is in its mould'
        : 'the mould is being made'
      : `it is out of the mould${steps[last]!.up === null ? '' : `, the ${upAfter(work, last)} up`}`
  )
  entries.pours.forEach(({ id, index, value }) => {
    const k = steps.findIndex(s => s.kind === 'pour' && s.pour!.index === index)
    if (k < 0 || states[k]!.progress === 'left') return
    const { level, massG } = stack.pours[index]!
    const poured = pouredG(readings, id)
    const read = readings.some(r => r.kind === 'height' && r.pour === id)
    const high = value.kind === 'cast' ? `, ${formatMm(level)} high ${read ? 'as read' : 'as planned'}` : ''
    const much = poured > 0 ? `${formatMass(poured)} poured` : `about ${formatMass(massG)}`
    const begun = states[k]!.progress === 'begun'
    out.push(`${id}${begun ? ' is being poured' : ' stands'}: ${much}${begun ? '' : high}`)
  })
  if (!inMould) {
    const s = stack.states[last]!
    out.push(`it is ${formatMm(s.highZ - s.lowZ)} thick`)
  }
  const cuts = steps.flatMap((s, i) => (s.kind === 'cut' && isDone(states[i]) ? [s.cut!.id] : []))
  if (cuts.length > 0) out.push(`cut: ${cuts.join(', ')}`)
  return out
}

function upAfter(work: Work, last: number): string {
  const { steps } = work
  const { up, kind } = steps[last]!
  if (kind !== 'turn over') return up ?? 'front'
  return up === 'front' ? 'back' : 'front'
}

function leftOver(work: Work, states: readonly StepState[], next: number | null): string[] {
  if (next === null) return []
  const { steps, stack, entries, clock, readings } = work
  const out: string[] = []
  const left = states.filter(s => s.progress === 'left')
  out.push(`${left.length} ${left.length === 1 ? 'step' : 'steps'}, next: ${states[next]!.says}`)
  for (const { id, index } of entries.pours) {
    const k = steps.findIndex(s => s.kind === 'pour' && s.pour!.index === index)
    if (k < 0 || isDone(states[k])) continue
    const poured = pouredG(readings, id)
    const need = Math.max(0, stack.pours[index]!.massG * work.quantity.blanks - poured)
    out.push(`${formatMass(need)} of ${id} to pour`)
  }
  const waits = states.reduce((sum, s, i) => (s.progress === 'left' ? sum + clock[i]!.waitMin : sum), 0)
  const wait = states.findIndex((s, i) => s.progress === 'begun' && steps[i]!.kind === 'wait')
  if (wait >= 0) {
    const from = states[wait]!.beganAt!
    const ends = new Date(Date.parse(from) + clock[wait]!.waitMin * 60_000).toISOString()
    out.push(`the wait that is going on ends ${momentWords(ends)} UTC`)
  }
  if (waits > 0) out.push(`${formatMinutes(waits)} of waiting`)
  return out
}
