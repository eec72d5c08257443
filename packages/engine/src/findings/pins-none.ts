import type { Check, Found } from './finding.ts'
import { placesFix } from './pin-fix.ts'
import type { Work } from './work.ts'

/** Both faces cut by machine, and nothing that ties them. */
export const pinsNone: Check = {
  id: 'pins-none',
  about: 'cuts on both faces by machine, and no place for the pins that tie them',
  cases: ['C74', 'C79'],
  run
}

function run(work: Work): Found[] {
  const { needed, pins, index } = work.pins
  if (index !== null) return []
  // Without a machine in the shop it is not known that one is used.
  if (pins.length > 0 || !(needed || work.document.pins !== undefined)) return []
  if (work.shop.machine === undefined && work.document.pins === undefined) return []
  return [
    {
      severity: 'caution',
      at: work.document.pins === undefined ? '/mould' : '/pins',
      says: 'both faces are cut by machine, and the waste has no place for two pins: a hole wants 1.5 diameters to the edge of the casting and 3 mm to every cut. Without pins the second face is set up by measuring an edge, and misses by what that misses. Leave two ears of waste.',
      basis:
        'places the casting offers on the day the holes are drilled; 1.5 diameters, 3 mm: common practice, no source',
      ...placesFix(work)
    }
  ]
}
