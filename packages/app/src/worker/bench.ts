import type { Work } from '../../../engine/src/findings/work.ts'
import type { Planned } from '../../../engine/src/plan.ts'
import { RESCUE_KINDS } from '../../../engine/src/rescue/rescues.ts'
import { stateFrom } from '../../../engine/src/rescue/state.ts'
import { benchAsks } from '../../../engine/src/sheets/bench-ask.ts'
import { benchTimers, doneMoment } from '../../../engine/src/sheets/bench-timer.ts'
import { numbered } from '../../../engine/src/sheets/page-finding.ts'
import { factLines } from '../../../engine/src/sheets/run-part.ts'
import { runSheet } from '../../../engine/src/sheets/run-sheet.ts'
import { stepKeys } from '../../../engine/src/steps/step-key.ts'
import type { StepState } from '../../../engine/src/steps/step-states.ts'
import type { BenchKept, BenchStepView, BenchView } from './bench-view.ts'

/**
 * What the bench shows of a plan: each step with what to do, its times, and what may be read at it; and how far the
 * build is. `unread` is the same piece without its readings.
 */
export function benchView(planned: Planned, unread: Work): BenchView {
  const { plan, work } = planned
  const state = stateFrom(unread, work, plan.asOf)
  // A wait goes on by itself: that it is begun says nothing of what stands before it.
  const begun = state.steps.findLastIndex(
    s => s.progress === 'done' || (s.progress === 'begun' && !s.key.startsWith('wait '))
  )
  const sheet = runSheet(planned)
  const keys = stepKeys(work.steps)
  return {
    name: plan.name,
    verdict: plan.verdict,
    written: sheet.written,
    stops: numbered(plan)
      .filter(n => n.finding.severity === 'stop')
      .map(n => n.finding.says),
    count: plan.steps.length,
    says: state.says,
    changed: state.changed.map(c => c.says),
    odd: state.contradictions.map(c => c.says),
    steps: sheet.steps.map((s): BenchStepView => {
      const i = s.number - 1
      return {
        number: s.number,
        key: keys[i]!,
        kind: s.kind,
        title: s.title,
        face: s.face,
        brief: s.brief,
        when: [s.day, s.when].filter(x => x !== '').join(', '),
        does: s.does,
        amounts: s.amounts,
        facts: factLines(s.facts).map(l =>
          l.map(f => `${f.label} ${f.value}${f.unit === '' ? '' : ` ${f.unit}`}.`).join(' ')
        ),
        tables: [s.sanding, s.table].filter(t => t !== null),
        findings: s.findings.map(f => ({ kind: f.kind, says: f.says })),
        safety: s.safety,
        timers: benchTimers(work, i),
        asks: benchAsks(plan, work, i),
        done: doneWords(state.steps[i]!, i, begun, doneMoment(work, keys[i]!)),
        begunMs: begunMoment(state.steps[i]!),
        mayBegin: !NOT_BEGUN.has(s.kind) && state.steps[i]!.progress === 'left',
        kept: keptAt(work, keys[i]!)
      }
    }),
    makingSafe: sheet.makingSafe,
    troubles: RESCUE_KINDS
  }
}

/** A wait begins by itself, a pour by mixing. */
const NOT_BEGUN: ReadonlySet<string> = new Set(['wait', 'pour'])

function begunMoment({ beganAt, progress }: StepState): number | null {
  return progress === 'begun' && beganAt !== null ? Date.parse(beganAt) : null
}

function keptAt({ readings }: Work, step: string): BenchKept[] {
  return readings.flatMap((r): BenchKept[] =>
    (r.kind === 'note' || r.kind === 'photo') && r.step === step
      ? [{ id: r.id, atMs: Date.parse(r.at), note: r.note ?? '', photo: r.kind === 'photo' ? r.photo : null }]
      : []
  )
}

// What was poured is still watched until it is said to be done; a wait whose time is over is still to be looked at: the
// tack is felt before the next is poured.
function doneWords(step: StepState, i: number, begun: number, saidMs: number | null): BenchStepView['done'] {
  if (saidMs !== null) return { atMs: saidMs }
  if (step.progress === 'done' && (i < begun || !step.key.startsWith('pour ')))
    return { atMs: step.doneAt === null ? null : Date.parse(step.doneAt) }
  return step.progress === 'implied' && i < begun ? { atMs: null } : null
}
