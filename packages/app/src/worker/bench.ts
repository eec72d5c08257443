import type { Planned } from '../../../engine/src/plan.ts'
import { benchAsks } from '../../../engine/src/sheets/bench-ask.ts'
import { benchTimers, doneMoment } from '../../../engine/src/sheets/bench-timer.ts'
import { numbered } from '../../../engine/src/sheets/page-finding.ts'
import { factLines } from '../../../engine/src/sheets/run-part.ts'
import { runSheet } from '../../../engine/src/sheets/run-sheet.ts'
import { stepKeys } from '../../../engine/src/steps/step-key.ts'
import type { BenchStepView, BenchView } from './bench-view.ts'

/** What the bench shows of a plan: each step with what to do, its times, and what may be read at it. */
export function benchView(planned: Planned): BenchView {
  const { plan, work } = planned
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
          l.map(f => `${f.label} ${f.value}${f.unit === '' ? '' : ` ${f.unit}`}`).join(', ')
        ),
        tables: [s.sanding, s.table].filter(t => t !== null),
        findings: s.findings.map(f => ({ kind: f.kind, says: f.says })),
        safety: s.safety,
        timers: benchTimers(work, i),
        asks: benchAsks(plan, work, i),
        doneMs: doneMoment(work, keys[i]!)
      }
    }),
    makingSafe: sheet.makingSafe
  }
}
