import { find } from '../catalogue/find.ts'
import type { Finding } from '../findings/finding.ts'
import type { Patch } from '../piece/patch.ts'
import { applyPatch, PatchProblem } from '../piece/patch.ts'
import { InputProblem } from '../piece/problem.ts'
import { checkPiece } from '../piece/read.ts'
import type { Planned } from '../plan.ts'
import { plan } from '../plan.ts'
import type { Totals } from '../plan-answer.ts'
import type { PlanInput } from '../work.ts'
import type { Chance, TroubleCase, WayDraft } from './condition.ts'
import { orderKept } from './order-kept.ts'
import type { Reckoned, TimeMoney } from './time-money.ts'
import { reckoned, timeMoney } from './time-money.ts'

/** A way on, re-planned: what it does, what it costs, what it risks and what it gives up. */
export interface Way {
  readonly id: string
  readonly does: string
  readonly how: readonly string[]
  readonly safety: readonly {
    readonly name: string
    readonly line: string
    readonly defersTo: readonly string[]
  }[]
  readonly patch: Patch
  readonly gives: readonly string[]
  readonly cost: TimeMoney
  readonly chance: Chance
  readonly chanceBasis: string
  readonly lost: boolean
  readonly favoured: string | null
  /** Figures of the re-planned plan, its very own. */
  readonly after: Totals
  /** Findings of the re-planned plan that the plan as it stands does not have. */
  readonly risks: readonly Pick<Finding, 'id' | 'severity' | 'says' | 'at'>[]
}

/** A way that is not open, and why. */
export interface ClosedWay {
  readonly id: string
  readonly does: string
  readonly why: string
}

const CHANCE_BASIS = 'common practice, no source'

/** The input of a plan with its piece changed. @throws PatchProblem, InputProblem */
function patched(input: PlanInput, patch: Patch): PlanInput {
  const document = applyPatch(input.piece.document, patch)
  return { ...input, whole: null, piece: checkPiece(document, input.source ?? 'piece') }
}

/** The plan as it stands, with its calendar and its cost. */
export interface Base extends Planned {
  readonly reckoned: Reckoned
  readonly effort: 'quick' | 'full'
}

/**
 * Re-plans a way. A change that would put a step before what is done gets the order written out. A way whose piece
 * cannot be used is closed, with the reason.
 */
export function weigh(at: TroubleCase, base: Base, draft: WayDraft): Way | ClosedWay {
  const closed = (why: string): ClosedWay => ({ id: draft.id, does: draft.does, why })
  if (draft.excluded) return closed(draft.excluded)
  try {
    const options = { asOf: at.asOf, effort: 'preview' as const }
    let patch = draft.patch
    let input = at.input
    let next: Planned = base
    if (patch.length > 0) {
      input = patched(at.input, patch)
      next = plan(input, options)
    }
    const kept = patch.length === 0 ? null : orderKept(base.work, at.state, next.work)
    if (kept !== null) {
      // A change that wrote into the order of the document is replaced by the whole order.
      patch = [...patch.filter(op => !op.path.startsWith('/steps')), ...kept]
      input = patched(at.input, patch)
      next = plan(input, options)
    }
    const same = patch.length === 0 && draft.handsMin === 0 && draft.waitDays === 0
    const had = new Set(base.plan.findings.map(f => `${f.id} ${f.severity} ${nameOf(base, f.at)}`))
    return {
      id: draft.id,
      does: draft.does,
      how: draft.how,
      safety: draft.hazards.map(id => {
        const row = find('hazard', id)
        if (row === null) throw new Error(`no safety line "${id}"`)
        return { name: row.name, line: row.lines.join(' '), defersTo: row.defersTo }
      }),
      patch,
      gives: draft.gives,
      cost: timeMoney(
        base.reckoned,
        same ? base.reckoned : reckoned(input, next.work, { asOf: at.asOf, effort: base.effort }, draft),
        draft.waitDays,
        at.input.shop
      ),
      chance: draft.chance,
      chanceBasis: CHANCE_BASIS,
      lost: draft.lost ?? false,
      favoured: draft.favoured ?? null,
      after: next.plan.totals,
      risks: next.plan.findings
        .filter(f => f.severity !== 'note' && !had.has(`${f.id} ${f.severity} ${nameOf(next, f.at)}`))
        .map(({ id, severity, says, at: place }) => ({ id, severity, says, at: place }))
    }
  } catch (e) {
    if (e instanceof InputProblem || e instanceof PatchProblem)
      return closed(`it cannot be planned: ${e.message.split('\n')[0]}`)
    throw e
  }
}

// Entries move in their lists when one is put in: a finding is the same when it is of the same name.
function nameOf({ work }: Planned, at: string): string {
  const entry = Object.values(work.entries)
    .flat()
    .find(e => at === e.at || at.startsWith(`${e.at}/`))
  return entry === undefined ? at : `${entry.id}${at.slice(entry.at.length)}`
}
