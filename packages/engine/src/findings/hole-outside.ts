import type { Entry } from '../piece/entry.ts'
import type { Cut } from '../piece/piece-schema.ts'
import { decimals } from '../quantity/format.ts'
import { intersection } from '../shape/combine.ts'
import { area, inside } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import { moveIn, wallOf, wellInside } from './edge-wall.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** Least wall between a pocket or bore and the edge of the piece, mm (common practice). */
const LEAST_WALL_MM = 3
/** Places of an edge are looked at this close to each other, mm. */
const STEP_MM = 1

/** A cut or a part that lies outside the piece, or nearer to its edge than holds. */
export const holeOutside: Check = {
  id: 'hole-outside',
  about: 'a cut or hardware outside the outline, past its edge, or with too thin a wall to it',
  cases: ['C85'],
  run: work => [...work.entries.cuts.flatMap(c => ofCut(work, c)), ...ofHardware(work)]
}

const BASIS = 'distance on the plan to the finished outline; 3 mm of wall: common practice, no source'

function ofCut(work: Work, cut: Entry<Cut>): Found[] {
  const { outline, cutRegions, cutLines } = work.stack.geometry
  const { at, id, value } = cut
  // What frees the part, and rebates, lie along the edge.
  if (value.kind === 'outline' || value.kind === 'rebate') return []
  const region = cutRegions[cut.index] ?? null
  if (region === null) {
    const lines = cutLines[cut.index] ?? []
    if (lines.some(line => anyInside(outline, line))) return []
    return [
      {
        severity: 'stop',
        at,
        says: `${id} runs beside the piece: no place of it is inside the outline.`,
        basis: BASIS
      }
    ]
  }
  if (wellInside(region, outline, LEAST_WALL_MM)) return []
  if (area(intersection(region, outline)) < 0.5)
    return [
      {
        severity: 'stop',
        at,
        says: `${id} lies outside the piece: nothing of it is inside the outline.`,
        basis: BASIS
      }
    ]
  // Grooves and slots are led out of an edge on purpose.
  if (value.kind !== 'pocket' && value.kind !== 'bore') return []
  const wall = wallOf(region, outline, LEAST_WALL_MM)
  if (wall.mm >= LEAST_WALL_MM - 1e-6) return []
  const past = wall.mm <= 1e-6
  return [
    {
      severity: 'caution',
      at,
      says: `${id} ${past ? `runs ${decimals(Math.max(0, -wall.mm), 1)} mm past the edge` : `leaves a wall of ${decimals(wall.mm, 1)} mm to the edge`}, near ${decimals(wall.x, 0)}, ${decimals(wall.y, 0)}: ${past ? 'the edge opens there; is it meant?' : `less than ${LEAST_WALL_MM} mm breaks out.`}`,
      value: wall.mm,
      unit: 'mm',
      limit: LEAST_WALL_MM,
      basis: BASIS,
      ...moveIn(work, cut, region, wall, LEAST_WALL_MM)
    }
  ]
}

function ofHardware(work: Work): Found[] {
  return work.fits.flatMap((fit): Found[] => {
    const { at, id } = work.entries.hardware[fit.hardware]!
    if (inside(work.stack.geometry.outline, fit.x, fit.y)) return []
    return [
      {
        severity: 'stop',
        at,
        says: `${id} sits at ${decimals(fit.x, 1)}, ${decimals(fit.y, 1)}: outside the piece.`,
        basis: 'its middle against the finished outline'
      }
    ]
  })
}

function anyInside(outline: Region, line: Float64Array): boolean {
  for (let k = 0; k + 3 < line.length; k += 2) {
    const n = Math.max(
      1,
      Math.ceil(Math.hypot(line[k + 2]! - line[k]!, line[k + 3]! - line[k + 1]!) / STEP_MM)
    )
    for (let s = 0; s <= n; s++) {
      const t = s / n
      if (
        inside(
          outline,
          line[k]! + t * (line[k + 2]! - line[k]!),
          line[k + 1]! + t * (line[k + 3]! - line[k + 1]!)
        )
      )
        return true
    }
  }
  return false
}
