import { usualHandWay } from '../cuts/hand/hand-work.ts'
import type { Patch } from '../piece/patch.ts'
import type { Check, Found } from './finding.ts'
import { setValue } from './fix.ts'
import type { Work } from './work.ts'

/** Cuts by machine in a shop that names none. */
export const noMachine: Check = {
  id: 'no-machine',
  about: 'cuts by machine in a shop that names no machine',
  cases: [],
  run
}

function run(work: Work): Found[] {
  if (work.shop.machine !== undefined || !worksByHand(work)) return []
  const parts = { ...work, timbers: work.materials.timbers }
  const jobs = work.steps.flatMap((step, i) => {
    const entry = step.cut ?? step.marking
    return (step.kind === 'cut' || step.kind === 'mark') && entry?.value.way === 'machine'
      ? [{ entry, step, i }]
      : []
  })
  if (jobs.length === 0) return []
  const fix: Patch = jobs.flatMap(({ entry, step, i }) => {
    return setValue(work.document, `${entry.at}/way`, usualHandWay(parts, step, i))
  })
  const names = jobs.map(j => j.entry.id)
  const some =
    names.length <= 3 ? names.join(', ') : `${names.slice(0, 2).join(', ')} and ${names.length - 2} more`
  return [
    {
      severity: 'note',
      at: jobs[0]!.entry.at,
      says: `${some} ${names.length === 1 ? 'is' : 'are'} cut by machine, and the shop names none: no program is written and nothing says whether it reaches. Name the machine in the shop, or cut by hand.`,
      basis: 'the shop, which names no machine',
      settledBy: 'the machine, named in the shop',
      fix,
      fixSays: names.length === 1 ? `${names[0]} by hand` : 'All by hand, or sent out'
    }
  ]
}

// A shop that says nothing of its tools may well have a machine: one that lists those of the hand has none.
function worksByHand({ shop, piece }: Work): boolean {
  const { bits, bearings, drill } = shop.hand
  return (
    bits.length + bearings.length + drill.length > 0 ||
    [...piece.cuts, ...piece.markings].some(c => ['router', 'saw', 'sled'].includes(c.way))
  )
}
