import type { StoneRecord } from '../catalogue/stone.ts'
import { decimals, formatC } from '../quantity/format.ts'
import { STUCK_PAS } from '../resin/fluidity.ts'
import { RUNAWAY_ABOVE_C } from '../resin/limits.ts'
import { airGivenOff, bubblesOf } from '../resin/outgassing.ts'
import { countWords } from './count-words.ts'
import type { Check, Found } from './finding.ts'
import { setQuantity, setValue } from './fix.ts'
import type { Work } from './work.ts'

/** Inclusions that hold air and are not sealed; plant matter that was never as hot as the resin will get. */
export const porousInclusion: Check = {
  id: 'porous-inclusion',
  about: 'porous inclusions that give off air, or move, as the resin warms',
  cases: ['C06', 'C45'],
  run: work =>
    work.entries.pours.flatMap(p =>
      p.value.stones.flatMap((_, j) => [...gives(work, p.index, j), ...moves(work, p.index, j)])
    )
}

/** Bubbles of 1 mm in all from which they are said (judgement). */
const BUBBLES = 10
/** Cell wall of plants, kg/m³ (1.5 in Siau's void fraction, memory). */
const CELL_WALL = 1500

// Air as a fraction of the piece: of plants from their density, of stone from its band (judgement).
function airOf(record: StoneRecord): number {
  const solid = record.kind === 'organic' ? CELL_WALL : record.densityBandKgM3[1]
  return Math.max(LEAST_AIR, 1 - record.densityKgM3 / solid)
}
const LEAST_AIR = 0.05

function gives(work: Work, i: number, j: number): Found[] {
  const { id, at, value } = work.entries.pours[i]!
  const cast = work.casts[i]
  const record = work.materials.stones[i]![j]!
  const stones = value.stones[j]!
  if (!cast || !record.porous || stones.sealed) return []
  const { curve } = cast
  const toC = curve.hottestC.reduce(
    (hot, c, k) => (curve.viscosityPaS[k]! < STUCK_PAS ? Math.max(hot, c) : hot),
    cast.startC
  )
  const { night, day } = work.shop.climate
  const ml = airGivenOff({
    // Of all stones of the pour an even part: several kinds are not told apart.
    volumeMl: work.stack.pours[i]!.stonesMl / value.stones.length,
    airFraction: airOf(record),
    fromC: (night + day) / 2,
    toC
  })
  const bubbles = bubblesOf(ml, 1)
  if (bubbles <= BUBBLES) return []
  return [
    {
      severity: 'caution',
      at: `${at}/stones/${j}`,
      says: `${record.name} in ${id} hold air: warming to ${formatC(toC)} while the resin is liquid they give off about ${decimals(ml, ml < 1 ? 2 : 1)} ml, ${countWords(bubbles)} bubbles of 1 mm. Seal them all over first, or fill them with resin.`,
      value: bubbles,
      unit: 'bubbles of 1 mm',
      limit: BUBBLES,
      basis:
        'air from the density of the kind, ideal gas from the room to the hottest while liquid: cure model of a generic class; sealing: common practice, no source',
      settledBy: 'one of them under a spoonful of warm resin',
      fix: setValue(work.document, `${at}/stones/${j}/sealed`, true),
      fixSays: `Seal the ${record.name}`
    }
  ]
}

function moves(work: Work, i: number, j: number): Found[] {
  const { id, at, value } = work.entries.pours[i]!
  const cast = work.casts[i]
  const record = work.materials.stones[i]![j]!
  if (!cast || record.kind !== 'organic') return []
  const { heated } = value.stones[j]!
  const needed = Math.min(cast.peakBandC[1], RUNAWAY_ABOVE_C)
  const { day, doubt } = work.shop.climate
  // What has stood in the room has been as warm as that.
  if (needed <= Math.max(heated ?? 0, day + doubt + ROOMY_K)) return []
  return [
    {
      severity: 'caution',
      at: `${at}/stones/${j}`,
      says: `${record.name} in ${id} were ${heated === undefined ? 'not said to have been heated' : `heated to ${formatC(heated)}`}; the resin may warm them to ${formatC(needed)}: they may open, move or give moisture off then, and leave voids that stiff resin does not fill. Heat them once to ${formatC(Math.ceil(needed))} or more before casting.`,
      value: heated ?? day,
      unit: '°C',
      limit: Math.ceil(needed),
      basis:
        'makers’ reports of plant matter, cones above all, that opened in warm resin; peak at the hot end of its band: cure model of a generic class',
      settledBy: 'one of them in an oven at that heat, measured before and after',
      fix: setQuantity(work.document, `${at}/stones/${j}/heated`, 'temperature', needed, 'up', 1),
      fixSays: `Heat the ${record.name} to ${formatC(Math.ceil(needed))} first`
    }
  ]
}

/** Plant matter that opens in so small a warming has opened in the room already, K (judgement). */
const ROOMY_K = 10
