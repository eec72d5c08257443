import type { Patch } from '../piece/patch.ts'
import type { OrderFault } from '../steps/fault.ts'
import { orderFaults } from '../steps/fault.ts'
import { orderOf } from '../steps/order.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** Longest order in which another place for a step is looked for: each place is one pass over the order. */
const MOST_STEPS = 120

/** An order of steps that cannot be done. */
export const orderImpossible: Check = {
  id: 'order-impossible',
  about: 'steps in an order that cannot be done',
  cases: ['O2'],
  run
}

function run(work: Work): Found[] {
  const byPlace = new Map<string, OrderFault[]>()
  for (const fault of work.faults) {
    const list = byPlace.get(fault.step.at)
    if (list === undefined) byPlace.set(fault.step.at, [fault])
    else list.push(fault)
  }
  return [...byPlace.values()].map((faults): Found => {
    const { step } = faults[0]!
    const whole = [...new Set(faults.map(f => f.says))]
    const why = whole.slice(0, 3).join('; ') + (whole.length > 3 ? ` and ${whole.length - 3} more` : '')
    return {
      severity: 'stop',
      at: step.at,
      says: `step ${step.number}, ${step.says}: ${why}.`,
      basis: 'what each step needs to stand before it: order of the steps',
      ...fixOf(work, step.number - 1)
    }
  })
}

// The step at the nearest other place that leaves no fault; else the usual order.
function fixOf(work: Work, from: number): Pick<Found, 'fix' | 'fixSays'> {
  const { steps } = work.piece
  if (steps === undefined) return {}
  if (steps.length <= MOST_STEPS && steps.length > 1) {
    for (let far = 1; far < steps.length; far++) {
      for (const to of [from + far, from - far]) {
        if (to < 0 || to >= steps.length) continue
        const moved = [...steps]
        moved.splice(to, 0, ...moved.splice(from, 1))
        const piece = { ...work.piece, steps: moved }
        if (orderFaults(piece, work.entries, orderOf(piece, work.entries)).length > 0) continue
        const fix: Patch = [{ op: 'move', from: `/steps/${from}`, path: `/steps/${to}` }]
        const beside = work.steps[to]!
        return { fix, fixSays: `${work.steps[from]!.says} ${to > from ? 'after' : 'before'}: ${beside.says}` }
      }
    }
  }
  return { fix: [{ op: 'remove', path: '/steps' }], fixSays: 'The usual order of the build' }
}
