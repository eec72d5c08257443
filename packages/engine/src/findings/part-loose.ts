import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { setValue } from './fix.ts'
import type { Work } from './work.ts'

/** A part cut free on the machine that nothing holds at the end. */
export const partLoose: Check = {
  id: 'part-loose',
  about: 'an outline cut right through that asks for no tabs and no skin, held by its waste alone',
  cases: [],
  run
}

/** Hold what lies on them all over, cut free or not. */
const HOLDS_ALL = new Set(['tape', 'vacuum'])

function run(work: Work): Found[] {
  const { by } = work.piece.holding
  if (work.shop.machine === undefined || HOLDS_ALL.has(by)) return []
  return work.entries.cuts.flatMap(({ at, id, value }): Found[] => {
    const { kind, way, through, tabs, skin } = value
    if (kind !== 'outline' || way !== 'machine' || !through) return []
    // An outline that says nothing of it is given tabs.
    if (skin !== undefined || tabs !== false) return []
    return [
      {
        severity: 'stop',
        at,
        says: `${id} goes right through all round, and ${by === 'clamps' ? 'clamps hold' : `${by} ${by === 'pins' ? 'hold' : 'holds'}`} what is cut off, not the part: with the last pass it comes loose beside the running cutter. Leave tabs, or a skin of ${decimals(0.5, 1)} mm that is sawn through afterwards.`,
        basis: 'a part is held until the cutter stands: common practice, no source',
        fix: setValue(work.document, `${at}/tabs`, true),
        fixSays: `${id} with four tabs`
      }
    ]
  })
}
