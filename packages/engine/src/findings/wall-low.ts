import { FREEBOARD_MM } from '../mould/wall.ts'
import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { rounded, setQuantity } from './fix.ts'
import type { Work } from './work.ts'

/** Walls of the mould that do not stand over the liquid, or not far enough to be moved. */
export const wallLow: Check = {
  id: 'wall-low',
  about: 'walls lower than the liquid, or too low to move a full mould',
  cases: ['C30'],
  run
}

function run(work: Work): Found[] {
  const { mould } = work.piece
  const { needsMould, wall, freeboard, liquidLevel, leastWall } = work.mould
  if (!needsMould || mould.wall === undefined) return []
  const over = freeboard < -1e-6
  if (!over && !(mould.moved && freeboard < FREEBOARD_MM - 1e-6)) return []
  const needed = mould.moved ? leastWall : leastWall - FREEBOARD_MM
  return [
    {
      severity: over ? 'stop' : 'caution',
      at: '/mould/wall',
      says: over
        ? `the liquid stands ${decimals(liquidLevel, 1)} mm high at its highest, the walls ${decimals(wall, 1)} mm: ${decimals(-freeboard, 1)} mm run over.`
        : `the walls stand ${decimals(freeboard, 1)} mm over the liquid and the mould will be moved: it slops over. Fill it where it cures, or raise the walls to ${FREEBOARD_MM} mm over the liquid.`,
      value: freeboard,
      unit: 'mm',
      limit: over ? 0 : FREEBOARD_MM,
      basis:
        'level when poured, before it shrinks, and half the wedge of the corner readings; 10 mm to move a full mould: common practice, no source',
      fix: setQuantity(work.document, '/mould/wall', 'length', needed, 'up'),
      fixSays: `Walls ${decimals(rounded(needed, 'up', 0.1), 1)} mm high`
    }
  ]
}
