import type { Patch } from '../piece/patch.ts'
import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { typedAt } from './fix.ts'
import type { Work } from './work.ts'

/** Change of depth that is worth a word, mm, and that spoils a fit. Judgement, no source. */
const WORTH_MM = 0.05
const SPOILS_MM = 0.5

/** A cut whose depth is from a face that is not the finished one. */
export const depthChanges: Check = {
  id: 'depth-changes',
  about: 'a depth from a face that is sanded, flattened or coated after the cut',
  cases: ['O2', 'O3'],
  run
}

function run(work: Work): Found[] {
  return work.stack.cuts.flatMap((cut): Found[] => {
    const { at, id, value } = work.entries.cuts[cut.index]!
    // The width of a V changes with it: that is a finding of its own.
    const line = value.along !== undefined && value.profile === 'v'
    if (value.depth === undefined || cut.day === null || cut.finished === null || line) return []
    const change = cut.finished - cut.day
    if (Math.abs(change) < WORTH_MM) return []
    const why = change > 0 ? 'a coat goes on' : 'the face is worked down'
    const fix: Patch = [
      { op: 'remove', path: `${at}/depth` },
      { op: 'add', path: `${at}/finishedDepth`, value: typedAt(work.document, `${at}/depth`) }
    ]
    return [
      {
        severity: Math.abs(change) >= SPOILS_MM ? 'caution' : 'note',
        at,
        says: `${id} is cut ${decimals(cut.day, 2)} mm deep from the face of that day; ${why} after it, and it is ${decimals(cut.finished, 2)} mm deep in the finished piece. If ${decimals(cut.day, 2)} is meant for the finished piece, cut ${decimals(cut.day - change, 2)} on the day.`,
        value: change,
        unit: 'mm',
        basis: 'heights of the face on the day of the cut and at the end, by the order of the steps',
        fix,
        fixSays: `${id} ${decimals(cut.day, 2)} deep in the finished piece`
      }
    ]
  })
}
