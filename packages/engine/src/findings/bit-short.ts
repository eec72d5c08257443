import { decimals } from '../quantity/format.ts'
import { deepen } from './cut-fix.ts'
import type { Check, Found } from './finding.ts'
import { setValue } from './fix.ts'
import type { Work } from './work.ts'

/** A router bit that does not reach the floor once the template lies between. */
export const bitShort: Check = {
  id: 'bit-short',
  about: 'a router bit too short for template and depth together',
  cases: [],
  run
}

function run(work: Work): Found[] {
  return work.hand.flatMap((h): Found[] => {
    const reach = h.doing?.reach
    if (h.of !== 'cut' || !reach || reach.needMm <= reach.hasMm + 0.05) return []
    const lacks = reach.needMm - reach.hasMm
    const template = work.shop.hand.template
    const shallower = deepen(work, h.index, -lacks, 'down')
    return [
      {
        severity: 'caution',
        at: h.at,
        says: `${h.id} is ${decimals(h.depthMm, 1)} mm deep; through a template of ${decimals(template, 1)} mm the bit of ${decimals(h.doing!.bitMm ?? 0, 1)} ends ${decimals(lacks, 1)} mm above its floor. Take a longer bit or a thinner template, or go on without the template once the walls guide the bit.`,
        value: reach.needMm,
        unit: 'mm',
        limit: reach.hasMm,
        basis:
          'thickness of template and reach of bits: the shop; where it says nothing 10 mm beyond the edges (common practice, no source)',
        settledBy: 'how far the bit stands out below the foot of the router, measured',
        ...(shallower.fix
          ? shallower
          : { fix: setValue(work.document, `${h.at}/way`, 'sent out'), fixSays: `Send ${h.id} out` })
      }
    ]
  })
}
