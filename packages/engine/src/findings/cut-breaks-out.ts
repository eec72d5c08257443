import { decimals } from '../quantity/format.ts'
import { deepen } from './cut-fix.ts'
import type { Check, Found } from './finding.ts'
import { LEAST_FLOOR_MM } from './thin-floor.ts'
import type { Work } from './work.ts'

/** A blind cut that comes out of the other face, or into a cut from there. */
export const cutBreaksOut: Check = {
  id: 'cut-breaks-out',
  about: 'a blind cut that comes out of the other face or meets a cut from there',
  cases: ['C91'],
  run
}

function run(work: Work): Found[] {
  return work.covers.flatMap(({ cut, floor }): Found[] => {
    const { id, at, value } = work.entries.cuts[cut]!
    if (floor === null || floor.mm > 1e-6 || value.kind === 'outline') return []
    const met = floor.met === null ? null : work.entries.cuts[floor.met]!
    // Two cuts that meet leave nothing at either: the one entered later in the document says so.
    if (met !== null && (met.index > cut || sameHardware(work, cut, met.index))) return []
    const by = decimals(-floor.mm, 1)
    const place = `near ${decimals(floor.x, 0)}, ${decimals(floor.y, 0)}`
    return [
      {
        severity: 'stop',
        at,
        says:
          met !== null
            ? `${id} from the ${value.face} breaks through by ${by} mm into ${met.id} from the other face, ${place}: nothing is left between them. If they are to meet, cut one of them "through".`
            : `${id} from the ${value.face} breaks through by ${by} mm: it comes out of the other face, ${place}. If it is to go through, say "through".`,
        value: floor.mm,
        unit: 'mm',
        basis: 'floor from the cores at the cut, faces as finished',
        settledBy: 'the thickness of the flattened piece, measured before the cut',
        ...deepen(work, cut, floor.mm - LEAST_FLOOR_MM, 'down')
      }
    ]
  })
}

// A pocket and a bore for the same part are to meet.
function sameHardware(work: Work, a: number, b: number): boolean {
  const partsOf = (cut: number): string[] => {
    const { id, value } = work.entries.cuts[cut]!
    const held = work.entries.hardware.filter(h => h.value.in === id).map(h => h.id)
    return value.for === undefined ? held : [...held, value.for]
  }
  const ofB = partsOf(b)
  return partsOf(a).some(id => ofB.includes(id))
}
