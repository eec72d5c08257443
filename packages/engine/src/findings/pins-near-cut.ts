import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { placesFix } from './pin-fix.ts'
import type { Work } from './work.ts'

/** A pin in the way of a cutter or a saw. */
export const pinsNearCut: Check = {
  id: 'pins-near-cut',
  about: 'a pin in or too near to the way of a cutter, or of the saw that frees the part',
  cases: [],
  run
}

function run(work: Work): Found[] {
  const { pins, given } = work.pins
  if (!given) return []
  return pins.flatMap(({ x, y, fault }, i): Found[] => {
    if (fault?.kind !== 'path') return []
    const way = fault.what === '' ? 'the outline, where the part is sawn free' : `the way of ${fault.what}`
    const meets = fault.mm < 0
    return [
      {
        severity: meets ? 'stop' : 'caution',
        at: `/pins/at/${i}`,
        says: `pin ${i + 1} at ${decimals(x, 0)}, ${decimals(y, 0)} ${
          meets
            ? `stands in ${way}: the cutter runs onto steel.`
            : `leaves ${decimals(fault.mm, 1)} mm to ${way}; less than ${decimals(fault.wantedMm, 0)} is cut away or breaks out beside the hole, and the part is loose before it is free.`
        }`,
        value: fault.mm,
        unit: 'mm',
        limit: fault.wantedMm,
        basis:
          'distance on the plan from the edge of the hole; 3 mm, and 3 mm of saw: common practice, no source',
        ...placesFix(work)
      }
    ]
  })
}
