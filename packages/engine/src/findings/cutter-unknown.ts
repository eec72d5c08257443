import { nearest } from '../piece/nearest.ts'
import type { Check, Found } from './finding.ts'
import { removeValue, setValue } from './fix.ts'
import type { Work } from './work.ts'

/** Most names told. */
const MOST_NAMED = 4

/** A cut that asks for a cutter the shop does not list. */
export const cutterUnknown: Check = {
  id: 'cutter-unknown',
  about: 'a cut given a cutter that the shop does not list',
  cases: [],
  run
}

function run(work: Work): Found[] {
  const { cutters, machine } = work.shop
  // Without a machine nothing is milled, and the name waits for whoever has one.
  if (machine === undefined) return []
  const ids = cutters.map(c => c.id)
  return work.entries.cuts.flatMap(({ at, id, value: { cutter, way } }): Found[] => {
    if (cutter === undefined || way !== 'machine' || ids.includes(cutter)) return []
    const near = nearest(cutter, ids)
    const more = ids.length > MOST_NAMED ? ` and ${ids.length - MOST_NAMED} more` : ''
    const listed =
      ids.length === 0 ? 'the shop lists none' : `the shop has ${ids.slice(0, MOST_NAMED).join(', ')}${more}`
    return [
      {
        severity: 'caution',
        at: `${at}/cutter`,
        says: `${id} is to be cut with "${cutter}"; ${listed}. Another is chosen for it${near === null ? '' : `; is "${near}" meant?`}`,
        basis: 'cutters of the shop',
        fix:
          near === null
            ? removeValue(work.document, `${at}/cutter`)
            : setValue(work.document, `${at}/cutter`, near),
        fixSays: near === null ? `${id} with a cutter that is there` : `${id} with ${near}`
      }
    ]
  })
}
