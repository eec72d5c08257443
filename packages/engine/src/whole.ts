import type { WholeOptions, WholeRun } from './cast/whole/whole-run.ts'
import { wholeRun } from './cast/whole/whole-run.ts'
import type { Plan, Planned, PlanOptions } from './plan.ts'
import { plan } from './plan.ts'
import type { PlanInput } from './work.ts'
import { workOf } from './work.ts'

/**
 * Sets up the cast of the whole mould of a piece: a run to be taken on step by step, from the moments and the
 * readings that the column has read. null where nothing is cast or predicted.
 * @throws InputProblem when the piece cannot be used
 */
export function castRun(input: PlanInput, options: WholeOptions): WholeRun | null {
  const work = workOf({ ...input, effort: 'preview', whole: null })
  const { stack, materials, speeds, shop } = work
  const { resins: choices, base: board, walls, stones, timbers } = materials
  const whole = { stack, choices, speeds, board, walls, stones, timbers, shop, effort: options.effort }
  return wholeRun(whole, work.casts, options)
}

/** Steps between two looks at how far a full plan is. */
const STEPS = 20

/**
 * The plan with the cast of the whole mould run to its end: what `plan` gives from the column alone, refined. Takes
 * seconds; `onProgress` hears the share done, 0..1; `probes` are places whose temperature is written down.
 * @throws InputProblem when the piece cannot be used
 */
export function fullPlan(
  input: PlanInput,
  options: PlanOptions,
  onProgress: (share: number) => void = () => {},
  probes: NonNullable<WholeOptions['probes']> = []
): Planned {
  const run = castRun(input, { effort: options.effort ?? 'full', probes })
  while (run !== null && !run.advance(STEPS)) onProgress(run.progress())
  return plan({ ...input, whole: run?.best() ?? null }, options)
}

/** Findings that follow from how hot a pour gets. */
const OF_HEAT = new Set(['pour-heat', 'mould-softens', 'hardware-heat'])

/**
 * What `check` says from the columns; where a stop by heat stands among it, the whole mould is cast on the coarse grid
 * before it is said: a column does not see what timber, walls and sides take, and a stop is to be one.
 * @throws InputProblem when the piece cannot be used
 */
export function surelyPlanned(input: PlanInput, options: PlanOptions): Planned {
  const first = plan(input, { ...options, effort: options.effort ?? 'preview' })
  if (!first.plan.findings.some(f => f.severity === 'stop' && OF_HEAT.has(f.id))) return first
  return fullPlan(input, { ...options, effort: 'preview' })
}

/** The same without the work. */
export function surelyChecked(
  input: PlanInput,
  options: PlanOptions
): Pick<Plan, 'verdict' | 'says' | 'totals' | 'findings'> {
  const { verdict, says, totals, findings } = surelyPlanned(input, options).plan
  return { verdict, says, totals, findings }
}
