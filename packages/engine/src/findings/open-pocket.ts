import { MACHINE_DAYS } from '../cast/windows.ts'
import type { Operation } from '../piece/patch.ts'
import { intersection } from '../shape/combine.ts'
import { sideOf } from '../stack/stack.ts'
import { pourFace } from '../steps/step.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** A flood coat that is poured over open pockets. */
export const openPocket: Check = {
  id: 'open-pocket',
  about: 'an open pocket under a later flood coat',
  cases: ['O2'],
  run
}

function run(work: Work): Found[] {
  const { stack } = work
  return work.steps.flatMap((step, k): Found[] => {
    if (step.kind !== 'pour' || step.pour!.value.kind !== 'flood') return []
    const pour = step.pour!
    const side = sideOf(work.piece, pourFace(pour.value, work.piece))
    const region = stack.geometry.pourRegions[pour.index] ?? null
    const open = stack.states[k]!.open.filter(c => {
      const plan = stack.geometry.cutRegions[c] ?? null
      const apart = region !== null && plan !== null && intersection(region, plan).rings.length === 0
      // Right through, a cut is open on both faces.
      return !apart && (stack.cuts[c]!.side === side || stack.cuts[c]!.finished === null)
    })
    if (open.length === 0) return []
    const names = open.map(c => work.entries.cuts[c]!.id)
    const first = work.steps.findIndex(s => s.kind === 'cut' && open.includes(s.cut!.index))
    return [
      {
        severity: 'stop',
        at: step.at,
        says: `${step.says} comes when ${names.join(', ')} ${names.length > 1 ? 'are' : 'is'} open: resin runs into what is cut. Flood first and cut after it, or plug or dam what is open.`,
        basis: 'order of the steps; a liquid runs into what is open',
        ...floodFirst(work, k, first)
      }
    ]
  })
}

// The flood comes before the first of these cuts and hardens before it is cut.
function floodFirst(work: Work, flood: number, firstCut: number): Pick<Found, 'fix' | 'fixSays'> {
  if (work.piece.steps === undefined || firstCut < 0 || firstCut >= flood) return {}
  const { says } = work.steps[flood]!
  const fix: Operation[] = [
    { op: 'move', from: `/steps/${flood}`, path: `/steps/${firstCut}` },
    { op: 'add', path: `/steps/${firstCut + 1}`, value: { do: 'wait', for: `${MACHINE_DAYS} d` } }
  ]
  return {
    fix,
    fixSays: `${says} before ${work.steps[firstCut]!.says.replace(/^C/, 'c')}, then ${MACHINE_DAYS} days`
  }
}
