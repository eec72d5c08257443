import { buildCost } from '../build-cost.ts'
import { daysOfPlanned } from '../days.ts'
import { foundInDays } from '../days-found.ts'
import { findingsOf } from '../findings/checks.ts'
import type { Finding } from '../findings/finding.ts'
import type { Work } from '../findings/work.ts'
import type { Patch } from '../piece/patch.ts'
import { applyPatch, PatchProblem } from '../piece/patch.ts'
import { InputProblem } from '../piece/problem.ts'
import { checkPiece } from '../piece/read.ts'
import { programsOf } from '../task-reckoning.ts'
import type { PlanInput } from '../work.ts'
import { workOf } from '../work.ts'

/** What an order comes to: figures of its own plan and calendar. */
export interface OrderFigures {
  /** When the piece is ready, ms since 1970; null: no calendar was found. */
  readonly readyMs: number | null
  /** Work of hands, min. */
  readonly handsMin: number
  readonly visits: number
  /** What the build costs the shop, coins of its currency; what has no price counts for nothing. */
  readonly coins: number
  readonly stops: number
  readonly cautions: number
}

/** An order planned anew. */
export interface OrderPlan {
  readonly figures: OrderFigures
  readonly work: Work
  readonly findings: readonly Finding[]
}

/** The piece with a patch laid on. @throws PatchProblem, InputProblem */
function patchedInput(input: PlanInput, patch: Patch): PlanInput {
  const document = applyPatch(input.piece.document, patch)
  return { ...input, whole: null, piece: checkPiece(document, input.source ?? 'piece') }
}

/**
 * Plans an order anew: the very findings, days and cost of the patched piece. A string: why it cannot be planned;
 * without a patch that is thrown.
 *
 * Check: figures equal those of `plan`, `daysOf` and `quoteOf` asked for the patched piece (test).
 */
export function planOrder(
  input: PlanInput,
  patch: Patch,
  options: { readonly asOf: string; readonly effort: 'quick' | 'full' }
): OrderPlan | string {
  try {
    const changed = patch.length === 0 ? { ...input, whole: null } : patchedInput(input, patch)
    const work = workOf({ ...changed, effort: 'preview', asOf: options.asOf })
    const [fault] = work.faults
    if (fault !== undefined && patch.length > 0) return fault.says
    const programs = options.effort === 'full' ? programsOf(work) : null
    const days = daysOfPlanned(changed, { work, programs }, options)
    const late = days.lateMin > 0 ? foundInDays(days, changed) : []
    const findings = [...findingsOf(work), ...late]
    const of = (severity: Finding['severity']) => findings.filter(f => f.severity === severity).length
    const { total } = buildCost(work, days.problem.tasks, programs)
    return {
      work,
      findings,
      figures: {
        readyMs: days.readyMs?.[0] ?? null,
        handsMin: days.handsOnMin,
        visits: days.visits,
        coins: total,
        stops: of('stop'),
        cautions: of('caution')
      }
    }
  } catch (e) {
    if (patch.length > 0 && (e instanceof InputProblem || e instanceof PatchProblem))
      return e.message.split('\n')[0]!
    throw e
  }
}
