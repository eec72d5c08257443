import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { rounded, setQuantity } from './fix.ts'
import type { Work } from './work.ts'

/** Least distance from timber to wall, mm: it swells, and is never quite where it was drawn (practice). */
const LEAST_GAP_MM = 3

/** Timber tight against a wall of the mould: it pushes the wall out. */
export const mouldGap: Check = {
  id: 'mould-gap',
  about: 'timber too near to a wall of the mould',
  cases: ['C23'],
  run
}

function run(work: Work): Found[] {
  const nearest = work.mould.timberToWall
  if (!work.mould.needsMould || nearest === null || nearest.gap >= LEAST_GAP_MM - 1e-6) return []
  const { id, at } = work.entries.timbers[nearest.timber]!
  const { mould } = work.piece
  const margin = mould.margin + LEAST_GAP_MM - nearest.gap
  return [
    {
      severity: 'caution',
      at,
      says: `${id} stands ${decimals(nearest.gap, 1)} mm from the wall of the mould: tight timber pushes a wall out and opens its joint. Leave ${LEAST_GAP_MM} mm all round.`,
      value: nearest.gap,
      unit: 'mm',
      limit: LEAST_GAP_MM,
      basis: '3 mm between timber and wall: common practice, no source; timber pushes far harder than liquid',
      ...(mould.shape === undefined
        ? {
            fix: setQuantity(work.document, '/mould/margin', 'length', margin, 'up'),
            fixSays: `Mould ${decimals(rounded(margin, 'up', 0.1), 1)} mm larger all round than the outline`
          }
        : {})
    }
  ]
}
