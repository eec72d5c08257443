import { partingStrain } from '../fits/joint.ts'
import { extent } from '../fits/season.ts'
import { grainDegOf } from '../piece/grain.ts'
import { decimals } from '../quantity/format.ts'
import { BREAK_STRAIN } from '../resin/crack.ts'
import { ringArea } from '../shape/measure.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** Movement over the year from which a joint all round is said to be in doubt, mm (common practice, no source). */
const LEAST_MM = 0.5
/** The outline must reach this far past a timber to count as resin beside it, mm. */
const BESIDE_MM = 5

/**
 * Timber shut in by resin all round, or resin by timber: the joint cannot follow the seasons.
 *
 * Limits: told by extents along and across the grain. The movement is that of free timber in balance with the
 * driest and dampest air; finishes slow it, and part of it turns into stress. Timber that ends at an edge of
 * the piece moves there and is not judged.
 */
export const timberGap: Check = {
  id: 'timber-gap',
  about: 'timber and resin that shut each other in and part with the seasons',
  cases: ['C63'],
  run: work => work.seasons.flatMap(s => [...inResin(work, s), ...roundResin(work, s)])
}

type Season = Work['seasons'][number]

const BASIS =
  'movement across the grain (Wood Handbook ch. 13, eq. 13-2, ± 25 % between boards) from now to the driest and dampest air; 0.5 mm: common practice, no source; strain beside tension across the grain over its modulus (Wood Handbook Tables 5-1, 5-3a, memory) and 3 to 6 % of resin (memory): a comparison, no claim of strength'
const SETTLED_BY = 'a moisture reading at the core; a strip across the grain, measured dry and damp'

function inResin(work: Work, season: Season): Found[] {
  const { toDryMm, toDampMm, timber, acrossMm } = season
  if (toDryMm === null || toDampMm === null || !shutIn(work, timber)) return []
  const [opens, closes] = [Math.max(0, -toDryMm[1]), Math.max(0, toDampMm[1])]
  const worst = Math.max(opens, closes)
  if (worst <= LEAST_MM) return []
  const { id, at } = work.entries.timbers[timber]!
  const band = opens >= closes ? toDryMm.map(x => -x) : [...toDampMm]
  return [
    {
      severity: 'caution',
      at,
      says: `${id} has resin all round and is ${decimals(acrossMm, 0)} mm across the grain: in the driest air it would be ${decimals(opens, 1)} mm narrower, in the dampest ${decimals(closes, 1)} wider. The resin does not follow: the joint may open by as much, or the timber check.${strainWords(work, timber, worst / acrossMm)} Narrower pieces or quartersawn timber move less; a finish slows it.`,
      value: worst,
      unit: 'mm',
      band: [Math.min(band[0]!, band[2]!), Math.max(band[0]!, band[2]!)],
      limit: LEAST_MM,
      basis: BASIS,
      settledBy: SETTLED_BY
    }
  ]
}

// The strain that the joint must take, held stiffly, beside those at which timber and resin part.
function strainWords(work: Work, timber: number, strain: number): string {
  const parts = partingStrain(work.piece.timbers[timber]!, work.materials.timbers[timber]!)
  if (parts === null) return ''
  const pct = (x: number) => decimals(100 * x, 1)
  const [low, high] = parts.strain
  return ` That is ${pct(strain)} %: held stiffly, timber parts across its grain at ${pct(low)} to ${pct(high)}, resin at ${decimals(100 * BREAK_STRAIN[0], 0)} to ${decimals(100 * BREAK_STRAIN[1], 0)}.`
}

// Whether the finished piece reaches past the timber on all four sides, along and across the grain.
function shutIn(work: Work, timber: number): boolean {
  const { geometry } = work.stack
  const grain = grainDegOf(work.piece.timbers[timber]!, geometry.timbers[timber]!.upper)
  const all = ends(geometry.outline.rings, grain)
  const own = ends(geometry.timbers[timber]!.upper.rings, grain)
  return all.every((end, k) => (k % 2 === 0 ? own[k]! - end : end - own[k]!) >= BESIDE_MM)
}

// Least and greatest along the direction, then across it.
function ends(rings: readonly Float64Array[], degrees: number): readonly [number, number, number, number] {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)]
  const out: [number, number, number, number] = [1e9, -1e9, 1e9, -1e9]
  for (const ring of rings) {
    for (let k = 0; k < ring.length; k += 2) {
      const along = ring[k]! * cos + ring[k + 1]! * sin
      const across = ring[k + 1]! * cos - ring[k]! * sin
      out[0] = Math.min(out[0], along)
      out[1] = Math.max(out[1], along)
      out[2] = Math.min(out[2], across)
      out[3] = Math.max(out[3], across)
    }
  }
  return out
}

function roundResin(work: Work, season: Season): Found[] {
  const { toDryMm, timber, acrossMm } = season
  const { upper } = work.stack.geometry.timbers[timber]!
  const grain = grainDegOf(work.piece.timbers[timber]!, upper)
  const holes = upper.rings.filter(r => ringArea(r) < 0).map(r => extent({ rings: [r] }, grain + 90))
  const widest = Math.max(0, ...holes)
  if (toDryMm === null || widest === 0) return []
  const share = widest / acrossMm
  const opens = Math.max(0, -toDryMm[1]) * share
  if (opens <= LEAST_MM) return []
  const { id, at } = work.entries.timbers[timber]!
  return [
    {
      severity: 'caution',
      at,
      says: `${id} lies round ${decimals(widest, 0)} mm of resin across its grain: on its way to the driest air it would close on it by ${decimals(opens, 1)} mm, and cured resin does not give.${strainWords(work, timber, opens / widest)} It may split from its edge or part from the resin. Dry it further first, or leave the ring open at one place.`,
      value: opens,
      unit: 'mm',
      band: [-toDryMm[2] * share, -toDryMm[0] * share].sort((a, b) => a - b) as [number, number],
      limit: LEAST_MM,
      basis: BASIS,
      settledBy: SETTLED_BY
    }
  ]
}
