import { formatMass } from '../quantity/format.ts'
import { HOLD_DOWN_SAFETY_FACTOR } from '../timber/float.ts'
import type { Check, Found } from './finding.ts'
import { rounded, setValue } from './fix.ts'
import type { Work } from './work.ts'

/** The hold-down of a fix is rounded up to this, g. */
const STEP_G = 10
/** Grams that are let pass: what a fix is rounded by in other units. */
const SLACK_G = 0.5

/**
 * A timber that resin lifts more than what holds it down.
 *
 * A stop when the first pour that reaches it already lifts it; where only later pours do, the timber is set in
 * resin by then, and it is a caution. How much a cured layer holds is not reckoned.
 */
export const timberFloats: Check = {
  id: 'timber-floats',
  about: 'timber that floats up in the resin',
  cases: ['C26'],
  run: work => work.floating.flatMap(f => one(work, f))
}

function one(work: Work, floating: Work['floating'][number]): Found[] {
  const { timber, held, hold, first, massG, densityKgM3 } = floating
  const needed = hold.holdDownG
  // What the document leaves to the plan is asked for in the step that sets the timber.
  if (held === null || hold.netLiftHighG <= 0 || held >= needed - SLACK_G) return []
  const { id, at, value } = work.entries.timbers[timber]!
  const stop = held < first.netLiftG
  const holding = rounded(needed, 'up', STEP_G)
  const lift = Math.max(0, hold.netLiftG)
  const fixed = value.held !== 'nothing'
  return [
    {
      severity: stop ? 'stop' : 'caution',
      at,
      says: `${id} weighs ${formatMass(massG)} and the resin lifts it by ${formatMass(lift)} once some has crept under; ${value.held === 'nothing' ? 'nothing holds it' : `its ${value.held} hold ${formatMass(held)}`}. Hold it with ${formatMass(holding)}: ${HOLD_DOWN_SAFETY_FACTOR} times the lift, spread over it, and left on until the resin has gelled.`,
      value: lift,
      unit: 'g',
      band: [Math.max(0, hold.netLiftLowG), Math.max(0, hold.netLiftHighG)],
      limit: held,
      basis: `buoyancy of the whole timber less its weight, at ${Math.round(densityKgM3)} kg/m³ ± 10 % (catalogue); ${HOLD_DOWN_SAFETY_FACTOR} times: common practice, no source`,
      settledBy: `the timber on a scale: ${formatMass(massG)} is reckoned`,
      fix: fixed
        ? setValue(work.document, `${at}/holding`, holding)
        : [
            ...setValue(work.document, `${at}/held`, 'weights'),
            ...(value.holding === undefined || value.holding >= needed
              ? []
              : setValue(work.document, `${at}/holding`, holding))
          ],
      fixSays: `${fixed ? `Hold ${id}` : `Weights on ${id},`} ${formatMass(holding)}`
    }
  ]
}
