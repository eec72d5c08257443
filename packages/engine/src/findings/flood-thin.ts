import { decimals } from '../quantity/format.ts'
import { sideOf } from '../stack/stack.ts'
import type { Check, Found } from './finding.ts'
import { rounded, setQuantity } from './fix.ts'
import type { Work } from './work.ts'

/** A flood coat that is faced off later: what is left of it must be more than the face is out of flat. */
export const floodThin: Check = {
  id: 'flood-thin',
  about: 'a clear layer faced off so far that the cutter may meet what lies under it',
  cases: ['C43'],
  run
}

/** Out of flat of a face worked by hand or sled, mm, where no machine says what it repeats within (practice). */
const HAND_FLAT_MM = 0.3

function run(work: Work): Found[] {
  const flat = work.shop.machine?.error ?? HAND_FLAT_MM
  return work.entries.pours.flatMap(({ index, id, at, value }): Found[] => {
    if (value.kind !== 'flood') return []
    const k = work.steps.findIndex(s => s.kind === 'pour' && s.pour!.index === index)
    const pour = work.stack.pours[index]!
    if (k < 0 || pour.side === null) return []
    const high = pour.side === 'high'
    const face = (step: number) => (high ? work.stack.states[step]!.highZ : work.stack.states[step]!.lowZ)
    const cuts = work.steps.flatMap((s, n) =>
      n > k && s.kind === 'flatten' && sideOf(work.piece, s.face === 'back' ? 'back' : 'front') === pour.side
        ? [n]
        : []
    )
    const last = cuts[cuts.length - 1]
    if (last === undefined) return []
    const off = Math.abs(face(k) - face(last))
    const left = pour.depth - off
    if (left >= flat - 1e-9) return []
    return [
      {
        severity: left <= 0 ? 'stop' : 'caution',
        at,
        says: `${id} is ${decimals(pour.depth, 2)} mm thick and ${decimals(off, 2)} mm come off it again: ${decimals(Math.max(0, left), 2)} mm are left, and the face may be ${decimals(flat, 2)} mm out of flat. The cutter ${left <= 0 ? 'goes' : 'may go'} through into what lies under it.`,
        value: left,
        unit: 'mm',
        limit: flat,
        basis: `heights of the faces; out of flat: ${work.shop.machine === undefined ? '0.3 mm by hand or sled, common practice, no source' : 'what the machine repeats within, from the shop'}`,
        settledBy: 'a dial gauge over the face before it is cut',
        ...(value.depth === undefined
          ? {}
          : {
              fix: setQuantity(work.document, `${at}/depth`, 'length', off + flat, 'up'),
              fixSays: `${id} ${decimals(rounded(off + flat, 'up', 0.1), 1)} mm thick`
            })
      }
    ]
  })
}
