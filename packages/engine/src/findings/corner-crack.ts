import { decimals } from '../quantity/format.ts'
import { BREAK_STRAIN, cornerFactor } from '../resin/crack.ts'
import { nearest } from '../shape/measure.ts'
import { signedTurnDeg } from './corner.ts'
import type { Check, Found } from './finding.ts'
import { setValue } from './fix.ts'
import { freeStrain } from './strain.ts'
import type { Work } from './work.ts'

/** Shallower pours are let pass, mm: the case is of 40 to 50 (judgement). */
const LEAST_DEPTH_MM = 10
/** Corners that turn more than this within {@link REACH_MM} to either side are sharp: a radius under about 5 mm. */
const SHARP_DEG = 75
const REACH_MM = 3
/** Radius a fix puts on the corners, mm. */
const ROUND_MM = 6
/** Corners nearer than this to the edge of the piece are cut off with the waste, mm. */
const EDGE_MM = 3

/**
 * A sharp corner of timber that stands into a deep pour: an inside corner of the resin, where cracks start.
 *
 * Limits: corners of timber only; formers, dams and the mould's own corners are not looked at.
 */
export const cornerCrack: Check = {
  id: 'corner-crack',
  about: 'a sharp corner of timber standing into a deep pour',
  cases: ['C08'],
  run
}

function run(work: Work): Found[] {
  const { outline, timbers } = work.stack.geometry
  return work.entries.timbers.flatMap(({ index, id, at, value }): Found[] => {
    const solid = timbers[index]!
    const depth = depthBeside(work, solid.base, solid.high)
    if (depth < LEAST_DEPTH_MM) return []
    const sharp: { x: number; y: number; turn: number }[] = []
    for (const ring of solid.upper.rings) {
      for (let k = 0; k < ring.length; k += 2) {
        const turn = signedTurnDeg(ring, k, REACH_MM)
        if (turn <= SHARP_DEG) continue
        const [x, y] = [ring[k]!, ring[k + 1]!]
        if (nearest(outline, x, y).distanceMm > -EDGE_MM || meetsTimber(work, index, x, y)) continue
        if (sharp.every(c => Math.hypot(c.x - x, c.y - y) > 2 * REACH_MM)) sharp.push({ x, y, turn })
      }
    }
    const first = sharp[0]
    if (first === undefined) return []
    const { rectangle, corner } = value.outline
    const plain = rectangle !== undefined && Math.min(...rectangle) > 2 * ROUND_MM
    const where = `${decimals(first.x, 0)}, ${decimals(first.y, 0)}`
    const strain = strainAtCorner(work, solid.base, solid.high, depth)
    return [
      {
        severity: 'caution',
        at: `${at}/outline`,
        says: `${id} stands into ${decimals(depth, 0)} mm of resin with ${sharp.length === 1 ? `a sharp corner, at ${where}` : `${sharp.length} sharp corners, the first at ${where}`}: shrinking two ways at once pulls hardest there, and cracks start at such corners.${strain === null ? '' : ` Reckoned strain there up to ${decimals(strain.sharp * 100, 0)} %, cast resin breaks at ${decimals(BREAK_STRAIN[0] * 100, 0)} to ${decimals(BREAK_STRAIN[1] * 100, 0)}; rounded to the depth ${decimals(strain.round * 100, 1)} %.`} Round it, best to the depth of the pour, or cast the legs one after the other.`,
        value: depth,
        unit: 'mm',
        basis:
          'cracks at inside corners: a supplier’s report and common practice; radius under 5 mm as sharp, 10 mm of depth: judgement, no source; strain: cure after gel and core over face, times Inglis for 1 mm of radius, elastic: warm resin creeps, so it is the most; break 3-6 % (memory)',
        settledBy: null,
        ...(plain
          ? {
              fix: setValue(work.document, `${at}/outline/corner`, Math.max(ROUND_MM, corner ?? 0)),
              fixSays: `Round the corners of ${id} to ${ROUND_MM} mm`
            }
          : {})
      }
    ]
  })
}

// Deepest resin of one pour that stands beside a timber.
function depthBeside(work: Work, base: number, high: number): number {
  let most = 0
  work.stack.pours.forEach((p, i) => {
    if (work.piece.pours[i]!.kind !== 'cast') return
    most = Math.max(most, Math.min(p.level, high) - Math.max(p.level - p.depth, base))
  })
  return most
}

/** Radius that is left at a corner drawn sharp, mm (judgement). */
const LEFT_RADIUS_MM = 1

/** Strain of the resin at a sharp corner and at one rounded to the depth; null when the pour is not predicted. */
function strainAtCorner(
  work: Work,
  base: number,
  high: number,
  depth: number
): { readonly sharp: number; readonly round: number } | null {
  let free: number | null = null
  work.stack.pours.forEach((p, i) => {
    const beside = Math.min(p.level, high) - Math.max(p.level - p.depth, base)
    const here = beside > 0 && work.piece.pours[i]!.kind === 'cast' ? freeStrain(work, i) : null
    if (here !== null) free = Math.max(free ?? 0, here)
  })
  if (free === null) return null
  return {
    sharp: free * cornerFactor(depth, LEFT_RADIUS_MM),
    round: free * cornerFactor(depth, depth)
  }
}

function meetsTimber(work: Work, index: number, x: number, y: number): boolean {
  return work.stack.geometry.timbers.some((t, j) => j !== index && nearest(t.upper, x, y).distanceMm < 1)
}
