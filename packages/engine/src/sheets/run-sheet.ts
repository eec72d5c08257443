import { find } from '../catalogue/find.ts'
import type { Days } from '../days-answer.ts'
import type { Work } from '../findings/work.ts'
import type { Lengths } from '../piece/lengths.ts'
import { lengthsOf } from '../piece/lengths.ts'
import type { Plan, Planned, PlanStep } from '../plan.ts'
import { aboutTime, kilos } from '../quantity/rough.ts'
import { dayTimes } from './day-times.ts'
import { byTheClock } from './day-windows.ts'
import { capital } from './model.ts'
import { firstMoment, momentOf } from './moment.ts'
import { verdictWords } from './page.ts'
import type { Numbered } from './page-finding.ts'
import { numbered, sentence } from './page-finding.ts'
import type { Placed } from './page-place.ts'
import { entryName, placed } from './page-place.ts'
import { begun } from './page-steps.ts'
import type { RunDetail, RunFact, RunTable } from './run-part.ts'
import { fact } from './run-part.ts'
import type { ProvedSet } from './run-programs.ts'
import { programTable, withPrograms } from './run-programs.ts'
import { stepDetail } from './run-step.ts'
import type { RunClock } from './run-when.ts'
import { clockWords, whenWords, windowFacts } from './run-when.ts'
import { stepFacts, stepWords } from './step-facts.ts'

/** A finding as the run sheet says it. */
export interface RunFinding {
  readonly number: number
  readonly kind: 'stop' | 'caution' | 'note'
  readonly id: string
  readonly says: string
  readonly fix: string | null
  readonly settledBy: string | null
  /** What it concerns, and the step it stands at; null when it concerns the whole piece. */
  readonly about: string
  readonly step: number | null
  /** The reason it is gone on despite. */
  readonly because: string | null
}

/** A hazard at a step: the line, and who goes before it. */
export type RunSafety = PlanStep['safety'][number]

/** One step of the run sheet. */
export interface RunStep extends RunDetail {
  readonly number: number
  readonly kind: PlanStep['kind']
  readonly title: string
  /** The few words beside the title. */
  readonly brief: string
  /** Which face is up, and whether it lies in the mould; empty before there is one. */
  readonly face: string
  /** The heading it stands under, and its time at the earliest. */
  readonly day: string
  readonly when: string
  readonly findings: readonly RunFinding[]
  readonly safety: readonly RunSafety[]
}

/** The run sheet in no form yet: what the writers of Markdown and HTML share. */
export interface RunSheet {
  readonly name: string
  readonly about: string | null
  readonly asOf: string
  readonly verdict: string
  readonly preview: boolean
  readonly facts: readonly RunFact[]
  /** How many are made at once; null for a single piece. */
  readonly quantity: string | null
  readonly findings: readonly RunFinding[]
  /** Reasons for going on despite a finding; they stand on every sheet. */
  readonly despite: readonly { readonly id: string; readonly because: string; readonly says: string }[]
  /** false: a stop stands, and only what is begun is written, with what makes it safe. */
  readonly written: boolean
  /** Programs in the order they are run; null where none were made, or a stop stands. */
  readonly programs: RunTable | null
  readonly steps: readonly RunStep[]
  /** Steps that are kept back while a stop stands. */
  readonly keptBack: number
  /** What makes safe what is begun; empty when the sheet is written. */
  readonly makingSafe: readonly RunSafety[]
  /** How the times are to be read. */
  readonly clock: string
  readonly closing: string
}

/** What a run sheet is made with beside the plan. */
export interface RunSheetOptions {
  /** What was made for the machine; null: nothing was, and nothing is said of it. */
  readonly programs?: ProvedSet | null
  /** The calendar of the piece: steps and windows stand in its days. null: they count from the first pour. */
  readonly days?: Days | null
}

/** Hazards whose lines make safe what is begun. */
const MAKING_SAFE = ['leftover-in-cup', 'hot-piece', 'pouring'] as const

/**
 * The run sheet of a plan. While a stop stands that nobody overrode, the steps are kept back: only pours that
 * readings show as begun, the waits after them and the lines that make safe are in it.
 */
export function runSheet(
  { plan, work }: Planned,
  { programs = null, days = null }: RunSheetOptions = {}
): RunSheet {
  const L = lengthsOf(work.shop)
  const all = numbered(plan)
  const at = placed(plan, all)
  const findings = all.map(n => runFinding(plan, work, at, n))
  const stops = findings.filter(f => f.kind === 'stop' && f.because === null)
  const written = stops.length === 0
  const clock: RunClock = { first: firstMoment(work), days: dayTimes(days, work) }
  const kept = written ? plan.steps.map((_, i) => i) : begunSteps(work)
  return {
    name: plan.name,
    about: work.piece.about ?? null,
    asOf: plan.asOf,
    verdict: verdict(plan),
    preview: plan.effort === 'preview',
    facts: headFacts(plan, clock, L),
    quantity: quantityWords(plan),
    findings,
    despite: plan.despite.map(d => ({
      ...d,
      says: plan.findings
        .filter(f => f.id === d.id)
        .map(f => L.beside(sentence(f.says)))
        .join(' ')
    })),
    written,
    programs: written && programs !== null ? programTable(programs) : null,
    steps: kept.map(i => runStep(plan, work, i, findings, clock, written ? programs : null)),
    keptBack: plan.steps.length - kept.length,
    makingSafe: written ? [] : MAKING_SAFE.map(safetyLine),
    clock: clockWords(work, clock),
    closing:
      'Where work can hurt someone, the safety data sheets, the manuals of the machines, local codes and licensed trades go before anything written here.'
  }
}

// What stands is listed below it: here it is counted.
function verdict(plan: Plan): string {
  const standing = plan.findings.filter(f => !plan.despite.some(d => d.id === f.id))
  const count = (kind: 'stop' | 'caution') => {
    const n = standing.filter(f => f.severity === kind).length
    return `${n} ${kind}${n === 1 ? ' stands' : 's stand'}`
  }
  if (plan.verdict === 'stop') return `Not ready to pour: ${count('stop')}.`
  if (plan.verdict === 'caution') return `It can go on, with your judgement: ${count('caution')}.`
  return verdictWords(plan)
}

function headFacts(plan: Plan, { days }: RunClock, L: Lengths): RunFact[] {
  const { sizeMm, massG, resinMixedG, waitDays, pours, ready } = plan.totals
  return [
    fact('Finished size', sizeMm.map(x => L.of(x, 1)).join(' × '), L.unit),
    fact('Mass', kilos(massG)),
    fact('Pours', String(pours)),
    fact('Resin mixed', kilos(resinMixedG), plan.quantity.blanks > 1 ? 'a blank' : ''),
    fact('Waits', aboutTime(waitDays * 1440), 'without work and nights'),
    ...(days !== null
      ? [fact('Ready', momentOf(days.readyMs, days.clock))]
      : ready === null
        ? []
        : [fact('Ready', ready.slice(0, 10), ready.slice(11, 16))])
  ]
}

function quantityWords(plan: Plan): string | null {
  const q = plan.quantity
  if (q.pieces === 1 && q.blanks === 1) return null
  const moulds = !plan.mould.needsMould
    ? ''
    : q.moulds === 1
      ? ' One mould, filled once.'
      : ` The mould is filled ${q.moulds} times${q.gang > 1 ? `, ${q.gang} side by side` : ''}.`
  return `${q.blanks} blanks are started for ${q.pieces} good piece${q.pieces === 1 ? '' : 's'}.${moulds} Amounts are for one blank unless they say for how many.`
}

function runFinding(plan: Plan, work: Work, at: Placed, n: Numbered): RunFinding {
  const L = lengthsOf(work.shop)
  const f = n.finding
  return {
    number: n.number,
    kind: f.severity,
    id: f.id,
    says: L.beside(sentence(f.says)),
    fix: f.fixSays === null ? null : L.beside(f.fixSays),
    settledBy: f.settledBy,
    about: capital(entryName(work, f.at)),
    step: stepOf(plan, work, at, n),
    because: n.despite?.because ?? null
  }
}

// The step a finding stands at: that of its pour, of the mould, or its own.
function stepOf(plan: Plan, work: Work, at: Placed, n: Numbered): number | null {
  for (const [number, list] of at.steps) if (list.includes(n)) return number
  for (const [index, list] of at.pours)
    if (list.includes(n))
      return work.steps.find(s => s.kind === 'pour' && s.pour!.index === index)?.number ?? null
  if (at.mould.includes(n)) return plan.steps.find(s => s.kind === 'make mould')?.number ?? null
  return null
}

function runStep(
  plan: Plan,
  work: Work,
  i: number,
  findings: readonly RunFinding[],
  clock: RunClock,
  programs: ProvedSet | null
): RunStep {
  const s = plan.steps[i]!
  const L = lengthsOf(work.shop)
  const brief = BRIEF.includes(s.kind) ? stepFacts(plan, work, i, L.shown).filter(f => f !== '') : []
  const own = withPrograms(programs, i, stepDetail(plan, work, i))
  const pour = work.steps[i]!.pour?.index
  const detail =
    clock.days === null || own.windows === null || pour === undefined
      ? own
      : { ...own, windows: byTheClock(own.windows, plan, pour, clock.days) }
  return {
    number: s.number,
    kind: s.kind,
    title: stepWords(work.steps[i]!, s),
    brief: [...brief, ...rowWords(work, i)].join(', '),
    face: faceWords(s),
    ...whenWords(plan, work, i, clock),
    ...detail,
    // Sentences of the models are written in mm and °C.
    does: detail.does.map(L.beside),
    facts: [...windowFacts(work, i, clock), ...detail.facts],
    findings: findings.filter(f => f.step === s.number),
    safety: s.safety.map(l => ({ ...l, line: L.beside(l.line) }))
  }
}

/** Kinds whose few words say what their figures do not. */
const BRIEF: readonly PlanStep['kind'][] = ['prepare timber', 'wait', 'mark', 'fit']

// For how many blanks it is done; a mould filled again and again has its number of fills.
function rowWords({ steps, fills, quantity }: Work, i: number): string[] {
  const { kind } = steps[i]!
  if (quantity.blanks === 1 || kind === 'make mould' || kind === 'wait') return []
  if (kind === 'fit' || kind === 'deliver') return quantity.pieces === 1 ? [] : [`${quantity.pieces} pieces`]
  const fill =
    fills !== null && fills.blanks.length > 1 && i >= fills.from && i <= fills.to ? fills.blanks : null
  if (fill === null) return [`${quantity.blanks} blanks`]
  return [
    `${fill[0]} ${fill[0] === 1 ? 'blank' : 'blanks'} at a time, ${fill.length} fills for ${quantity.blanks}`
  ]
}

function faceWords(s: PlanStep): string {
  if (s.faceUp === null || s.kind === 'make mould' || s.kind === 'turn over') return ''
  return s.inMould ? `${s.faceUp} up, in the mould` : `${s.faceUp} up`
}

// Pours that readings show as begun, and the wait that follows each.
function begunSteps(work: Work): number[] {
  const started = begun(work)
  return work.steps.flatMap((s, i) => {
    const own = s.kind === 'pour' && started.includes(s.pour!.id)
    const last = work.steps[i - 1]
    const after = s.kind === 'wait' && last?.kind === 'pour' && started.includes(last.pour!.id)
    return own || after ? [i] : []
  })
}

function safetyLine(id: string): RunSafety {
  const row = find('hazard', id)
  if (row === null) throw new Error(`no safety line "${id}"`)
  return { line: row.lines.join(' '), defersTo: row.defersTo }
}
