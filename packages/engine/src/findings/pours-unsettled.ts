import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** Pours that wait for the window of the one below, whose windows move each time the pours do. */
export const poursUnsettled: Check = {
  id: 'pours-unsettled',
  about: 'moments of pours and the windows they wait for that do not come to agree',
  cases: [],
  run: (work: Work): Found[] => {
    const { whole } = work
    if (whole === null || whole.settled) return []
    return [
      {
        severity: 'caution',
        at: '/pours',
        says: `The pours wait for each other’s windows, and after ${whole.rounds} rounds of the cast the windows still move: take the latest opening of each band, or say how long each pour waits.`,
        value: whole.rounds,
        limit: whole.rounds,
        basis: 'at most four rounds of cast and windows',
        settledBy: 'a gloved finger on the pour below before the next one is mixed'
      }
    ]
  }
}
