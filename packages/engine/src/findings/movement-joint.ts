import { grainDegOf } from '../piece/grain.ts'
import { decimals } from '../quantity/format.ts'
import { inside } from '../shape/measure.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** Longest cross-grain joint that is held rigidly and let pass, mm (practice). */
const HELD_MM = 300
/** Movement at which such joints were reported to break, mm: 1/16 in. */
const BROKE_MM = 1.6
/** An edge counts as cross-grain from this angle to the grain on: mitres do. */
const LEAST_SINE = Math.sin((40 * Math.PI) / 180)
/** Timber on the other side whose grain runs within this moves with it, degrees. */
const ALIKE_DEG = 30
/** An outline is followed by about this many chords. */
const MOST_CHORDS = 200
/** Edges with less than this of the piece beyond them are free, mm. */
const FREE_MM = 3

/**
 * Timber whose end grain is held over a width by resin or by timber of another direction.
 *
 * Limits: the width is the extent across the grain of edges at 40° or more to the grain that lie inside the
 * piece. Resin counts as rigid whatever its width; holes, screws and frames outside the piece are not seen.
 */
export const movementJoint: Check = {
  id: 'movement-joint',
  about: 'wide timber held across its grain',
  cases: ['C58', 'C61'],
  run: work => work.seasons.flatMap(s => one(work, s))
}

function one(work: Work, season: Work['seasons'][number]): Found[] {
  const { timber, toDryMm, toDampMm, acrossMm } = season
  if (acrossMm <= HELD_MM) return []
  const held = heldMm(work, timber)
  if (held <= HELD_MM) return []
  const { id, at } = work.entries.timbers[timber]!
  const swing = toDryMm && toDampMm ? ((toDampMm[1] - toDryMm[1]) * held) / acrossMm : null
  return [
    {
      severity: swing !== null && swing >= BROKE_MM ? 'stop' : 'caution',
      at,
      says: `${id} is held across its grain over ${decimals(held, 0)} mm: along the grain, and in resin, nothing moves${swing === null ? '' : `, across it ${decimals(swing, 1)} mm from the driest to the dampest air`}. Rigid joints of long grain to cross grain wider than ${HELD_MM} mm break: turn the grain along the joint, or part it and leave room.`,
      value: held,
      unit: 'mm',
      limit: HELD_MM,
      basis:
        '300 mm: common practice, no source; reports of rigid joints broken by 1.6 mm; movement: Wood Handbook ch. 13, eq. 13-2, in the air it will live in',
      settledBy: null
    }
  ]
}

// The wider of the two ends of a timber, as far as it is held, mm across the grain.
function heldMm(work: Work, index: number): number {
  const { outline, timbers } = work.stack.geometry
  const grainOf = (j: number) => grainDegOf(work.piece.timbers[j]!, timbers[j]!.upper)
  const grain = grainOf(index)
  const [cos, sin] = [Math.cos((grain * Math.PI) / 180), Math.sin((grain * Math.PI) / 180)]
  const mates = timbers.filter((_, j) => {
    const turn = Math.abs((((grainOf(j) - grain) % 180) + 180) % 180)
    return j !== index && Math.min(turn, 180 - turn) < ALIKE_DEG
  })
  const low = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]
  const high = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const ring of timbers[index]!.upper.rings) {
    const n = ring.length
    // Chords of a fine outline: its run counts, not its ripples.
    const step = 2 * Math.max(1, Math.floor(n / 2 / MOST_CHORDS))
    for (let k = 0; k < n; k += step) {
      const next = k + step < n ? k + step : 0
      const [ax, ay, bx, by] = [ring[k]!, ring[k + 1]!, ring[next]!, ring[next + 1]!]
      const [dx, dy] = [bx - ax, by - ay]
      const length = Math.hypot(dx, dy)
      // Across the grain the edge runs dy·cos − dx·sin; outward is to the right of it.
      if (length === 0 || Math.abs(dy * cos - dx * sin) < LEAST_SINE * length) continue
      const [x, y] = [(ax + bx) / 2, (ay + by) / 2]
      const [nx, ny] = [dy / length, -dx / length]
      if (!inside(outline, x + FREE_MM * nx, y + FREE_MM * ny)) continue
      if (mates.some(m => inside(m.upper, x + nx, y + ny))) continue
      const end = dy * cos - dx * sin > 0 ? 0 : 1
      for (const across of [ay * cos - ax * sin, by * cos - bx * sin]) {
        low[end] = Math.min(low[end]!, across)
        high[end] = Math.max(high[end]!, across)
      }
    }
  }
  return Math.max(0, high[0]! - low[0]!, high[1]! - low[1]!)
}
