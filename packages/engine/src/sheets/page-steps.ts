import type { Work } from '../findings/work.ts'
import type { Lengths } from '../piece/lengths.ts'
import type { Plan } from '../plan.ts'
import { decimals } from '../quantity/format.ts'
import type { DayTimes } from './day-times.ts'
import type { Markup } from './markup.ts'
import { html } from './markup.ts'
import { capital } from './model.ts'
import { dateOf, dayNumber, firstMoment } from './moment.ts'
import type { Numbered } from './page-finding.ts'
import { findingBlock } from './page-finding.ts'
import type { Placed } from './page-place.ts'
import { entryName } from './page-place.ts'
import { byCalendar, clockWords } from './run-when.ts'
import { stepFacts, stepWords } from './step-facts.ts'

/**
 * The run sheet: steps in the order of doing, each with its figures, findings and safety lines. While a stop
 * stands that nobody overrode it is not written: what stands against it is said instead, and of the steps only
 * what readings show as begun.
 */
export function stepsPart(
  plan: Plan,
  work: Work,
  L: Lengths,
  at: Placed,
  all: readonly Numbered[],
  days: DayTimes | null = null
): Markup {
  const stops = all.filter(n => n.despite === null && n.finding.severity === 'stop')
  const whole = at.piece.map(n => findingBlock(n, L, named(work, n)))
  const body = stops.length > 0 ? notWritten(plan, work, L, at, stops) : written(plan, work, L, at, days)
  return html`<section class="run" aria-labelledby="steps-head">
<h2 id="steps-head">Steps <span>${stops.length > 0 ? 'not written' : 'in order of doing'}</span></h2>
${whole}${body}</section>`
}

function named(work: Work, n: Numbered): string {
  return capital(entryName(work, n.finding.at))
}

function written(plan: Plan, work: Work, L: Lengths, at: Placed, days: DayTimes | null): Markup {
  let day = ''
  const rows = plan.steps.map((s, i) => {
    const told = days === null ? null : byCalendar(days, i)
    const when = told === null ? dayOf(work, s.startMin, beforePours(plan, i)) : told.day || day
    const head = when === day ? null : html`<li class="day">${when}</li>`
    day = when
    return html`${head}${stepRow(plan, work, L, i, at.steps.get(s.number) ?? [], told?.when)}`
  })
  return html`<p class="f lead">${days === null ? 'Days count waiting only: work, nights and days away come on top.' : clockWords(work, { first: null, days })}</p>
<ol class="steps plain">${rows}</ol>`
}

function stepRow(
  plan: Plan,
  work: Work,
  L: Lengths,
  i: number,
  found: readonly Numbered[],
  when = ''
): Markup {
  const s = plan.steps[i]!
  const facts = [when, ...stepFacts(plan, work, i, L.shown)].filter(f => f !== '')
  return html`<li class="step${s.kind === 'wait' ? ' wait' : ''}" id="step-${s.number}"><span class="n">${s.number}</span><div>
<div class="r"><h3>${stepWords(work.steps[i]!, s)}</h3><p class="f">${facts.map(f => html`<span>${f}</span>`)}</p></div>
${found.map(n => findingBlock(n, L))}${safety(s.safety, L)}</div></li>`
}

function safety(lines: Plan['steps'][number]['safety'], L: Lengths): Markup | null {
  if (lines.length === 0) return null
  return html`<details class="safety"><summary>Safety</summary><ul class="plain">${lines.map(
    l =>
      html`<li>${L.beside(l.line)} <span class="q">${capital(l.defersTo.join('; '))} go before.</span></li>`
  )}</ul></details>`
}

export function beforePours(plan: Plan, i: number): boolean {
  const first = plan.steps.findIndex(s => s.kind === 'pour' && s.startMin >= 0 && s.inMould)
  return first >= 0 && i < first
}

/** The heading a step stands under: before the pours, or the day at the earliest. */
export function dayOf(work: Work, startMin: number, before: boolean): string {
  if (before) return 'Before the first pour'
  const number = dayNumber(startMin)
  const first = firstMoment(work)
  return first === null
    ? `Day ${number}`
    : `Day ${number}, ${dateOf(first.ms + startMin * 60_000, first.clock)}`
}

/** Pours that readings show as begun: making safe what is begun is always said. */
export function begun(work: Work): string[] {
  return work.entries.pours
    .filter(p => work.readings.some(r => 'pour' in r && r.pour === p.id))
    .map(p => p.id)
}

function notWritten(plan: Plan, work: Work, L: Lengths, at: Placed, stops: readonly Numbered[]): Markup {
  const rest = [...at.steps.values()].flat().sort((a, b) => a.number - b.number)
  const started = begun(work)
  const startedSteps = plan.steps.flatMap((s, i) => {
    const pour = work.steps[i]!.pour
    return s.kind === 'pour' && pour !== undefined && started.includes(pour.id) ? [i] : []
  })
  return html`<div class="not-written"><p class="big">Run sheet not written while a stop stands</p>
<p>${stops.length === 1 ? 'One stop stands' : `${stops.length} stops stand`}: ${stops.map((n, i) => html`${i === 0 ? '' : '; '}<a href="#finding-${n.number}">${entryName(work, n.finding.at)}</a>`)}. The ${decimals(plan.steps.length, 0)} steps are written once it is cleared, or gone on despite with a reason.</p></div>
${
  startedSteps.length === 0
    ? null
    : html`<p class="f lead">Begun already, so it is written:</p><ol class="steps plain">${startedSteps.map(i => stepRow(plan, work, L, i, []))}</ol>`
}
${rest.length === 0 ? null : html`<h3 class="sub">What stands, by entry</h3>${rest.map(n => findingBlock(n, L, named(work, n)))}`}`
}
