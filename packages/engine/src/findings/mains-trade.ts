import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** Parts of a mains circuit: work for a licensed trade. */
export const mainsTrade: Check = {
  id: 'mains-trade',
  about: 'parts of a mains circuit',
  cases: [],
  run
}

function run(work: Work): Found[] {
  return work.fits.flatMap((fit): Found[] => {
    if (!fit.record.mains) return []
    const { at, id } = work.entries.hardware[fit.hardware]!
    return [
      {
        severity: 'caution',
        at,
        says: `${id} (${fit.record.name}) belongs to a mains circuit: have it planned, wired and tested by a licensed electrician after the local codes. This plan gives its place and its room only, and says nothing of its use.`,
        basis: 'local electrical codes and the maker’s sheet of the part go before anything here'
      }
    ]
  })
}
