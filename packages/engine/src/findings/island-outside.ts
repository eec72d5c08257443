import type { Operation } from '../piece/patch.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** An island that lies beside its pocket: nothing is left standing for it. */
export const islandOutside: Check = {
  id: 'island-outside',
  about: 'an island no part of which lies in its pocket',
  cases: [],
  run
}

function run(work: Work): Found[] {
  return work.entries.cuts.flatMap(({ index, at, id, value }): Found[] => {
    const idle = work.stack.geometry.idleIslands[index] ?? []
    return idle.map((j): Found => {
      const only = value.islands?.length === 1
      const fix: Operation[] = [{ op: 'remove', path: only ? `${at}/islands` : `${at}/islands/${j}` }]
      return {
        severity: 'caution',
        at: `${at}/islands/${j}`,
        says: `island ${j + 1} of ${id} lies wholly outside it: nothing is left standing for it. Places of islands count from the middle of the piece, as that of the cut does.`,
        basis: 'plane geometry: what island and cut have in common',
        fix,
        fixSays: `Leave out island ${j + 1} of ${id}`
      }
    })
  })
}
