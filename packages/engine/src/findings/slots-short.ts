import type { ScrewMove } from '../fits/in-use.ts'
import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { rounded, setQuantity, setValue } from './fix.ts'
import type { Work } from './work.ts'

/** What a screw and the wood round it give way before anything is forced, mm, in all (common practice, no source). */
const GIVES_MM = 1

/** Screws that do not let a top move with the seasons as far as it goes over them. */
export const slotsShort: Check = {
  id: 'slots-short',
  about: 'screws through a top that hold it while it moves',
  cases: ['C58'],
  run
}

function run(work: Work): Found[] {
  const { supports } = work.piece
  if (work.inUse === null || supports === undefined || supports.held === 'loose') return []
  const round = supports.held === 'round holes'
  const given = round ? 0 : supports.slots
  const worst = work.inUse.screws.reduce<ScrewMove | null>(
    (a, b) => (a !== null && a.needMm[0] >= b.needMm[0] ? a : b),
    null
  )
  if (worst === null || given === undefined || worst.needMm[0] <= given + GIVES_MM) return []
  const [need, upper] = worst.needMm
  const goal = rounded(need, 'up', 0.5)
  return [
    {
      severity: 'caution',
      at: round ? '/supports/held' : '/supports/slots',
      says: `over the screw near ${decimals(worst.at[0], 0)}, ${decimals(worst.at[1], 0)} it moves by ± ${decimals(need / 2, 1, 1)} mm over the year, ${round ? 'and a round hole lets it go nowhere' : `and its slot gives ± ${decimals(given / 2, 1)} mm`}: the top splits or pulls the screw. Slots of ± ${decimals(goal / 2, 2)} mm along ${worst.along} let it go, ± ${decimals(rounded(upper / 2, 'up', 0.5), 1)} mm any board of its kind; with washers that slide.`,
      value: need,
      unit: 'mm',
      band: [need, upper],
      limit: given + GIVES_MM,
      basis:
        'movement of the timber from now to the driest and dampest air (Wood Handbook, a quarter more for single boards), held by the resin beside it; 1 mm of give: common practice, no source',
      settledBy: 'moisture of the timber when it is screwed down',
      ...(round
        ? { fix: setValue(work.document, '/supports/held', 'slots'), fixSays: 'Slots instead of round holes' }
        : {
            fix: setQuantity(work.document, '/supports/slots', 'length', goal, 'up', 0.5),
            fixSays: `Slots of ${decimals(goal, 1)} mm in all`
          })
    }
  ]
}
