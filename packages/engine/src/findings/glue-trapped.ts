import { decimals } from '../quantity/format.ts'
import { area } from '../shape/measure.ts'
import type { Check, Found } from './finding.ts'
import { setQuantity } from './fix.ts'
import type { Work } from './work.ts'

/** A gap no wider than this holds glue like a piston, mm (practice). */
const CLOSE_MM = 0.08
/** Glue that lies on the floor of a pocket, mm: some 150 g/m² (practice). */
const FILM_MM = 0.15

/** A plug that closes a blind pocket, with the glue under it. */
export const glueTrapped: Check = {
  id: 'glue-trapped',
  about: 'a close plug in a blind pocket, with no room for the glue under it',
  cases: ['C82'],
  run
}

function run(work: Work): Found[] {
  return work.entries.cuts.flatMap(({ at, id, index, value }): Found[] => {
    const { plug, through } = value
    if (plug === undefined || through === true) return []
    if (plug.gap > CLOSE_MM || plug.relief >= FILM_MM) return []
    const ml = (area(work.stack.geometry.cutRegions[index]!) * FILM_MM) / 1000
    return [
      {
        severity: 'caution',
        at,
        says: `The plug of ${id} closes its pocket all round, ${decimals(plug.gap, 2)} mm of gap, and nothing is free under it: the glue there, some ${decimals(ml, 1)} ml, has no way out and pushes it up again by morning. Leave room under the plug, or a vent.`,
        value: plug.relief,
        unit: 'mm',
        limit: FILM_MM,
        basis: `150 g of glue a square metre, a gap of ${decimals(CLOSE_MM, 2)} mm or less holds it: common practice, no source`,
        settledBy: 'the plug pushed in dry, then with glue in a scrap',
        fix: setQuantity(work.document, `${at}/plug/relief`, 'length', FILM_MM, 'up'),
        fixSays: `Room of ${decimals(Math.ceil(FILM_MM * 10 - 1e-7) / 10, 1)} mm under the plug`
      }
    ]
  })
}
