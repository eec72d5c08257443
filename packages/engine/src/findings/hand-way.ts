import type { Check, Found } from './finding.ts'
import { setValue } from './fix.ts'
import type { Work } from './work.ts'

/** A cut whose way cannot make it: a square hole by drill, a closed pocket by saw, a bore nobody has a bit for. */
export const handWay: Check = {
  id: 'hand-way',
  about: 'a cut by hand that its way cannot make',
  cases: ['C94'],
  run
}

function run(work: Work): Found[] {
  return work.hand.flatMap((h): Found[] => {
    if (h.cannot === null) return []
    // The tool of the shop that would do; else a shop that has one.
    const other = h.ways.find(w => w.possible && w.way !== 'machine' && w.way !== 'sent out')
    const to = other?.way ?? 'sent out'
    const instead =
      other === undefined ? 'Send it out, with a drawing.' : `By ${other.way} it goes: ${other.why}.`
    return [
      {
        severity: 'caution',
        at: h.at,
        says: `${h.id} cannot be made by ${h.way}: ${h.cannot}. ${instead}`,
        basis:
          'shape and depth of the cut; bits, bushes and saw of the shop, where it lists none the usual sizes of the trade',
        settledBy: 'what lies in the drawer, measured and listed in the shop',
        fix: setValue(work.document, `${h.at}/way`, to),
        fixSays: to === 'sent out' ? `Send ${h.id} out` : `${h.id} by ${to}`
      }
    ]
  })
}
