import { expect } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import type { Files } from '../../src/piece/region.ts'
import { freeSpace } from '../../src/stack/free.ts'
import { finishedVolumes } from '../../src/stack/volume.ts'
import { stackOf } from './build.ts'
import { seededPiece } from './seeded-piece.ts'
import { twinOf } from './twin.ts'

/** How many seeded pieces are held against solids: 200, or as many as CASTWRIGHT_PIECES asks for. */
export const PIECES = Number(process.env['CASTWRIGHT_PIECES'] ?? 200)

/** Share by which a volume may differ. */
const TOLERANCE = 1e-3
/**
 * Difference that counts as none, mm³. Some materials are a few shavings left between two cuts, or the resin of
 * one thin line; points on the clipping grid of 1e-4 mm along 300 mm of edge, 40 mm high, make 1 mm³, and so do
 * the facets of the solids. A hundredth of a drop.
 */
const NONE_MM3 = 2

/** Worst deviation met, as a share, and where. */
export interface Worst {
  share: number
  what: string
}

/** Compares a piece with its twin of solids: finished volumes of all materials, free volumes of all pours. */
function compareWithTwin(
  document: PieceDocument,
  name: string,
  worst: Worst,
  { shares = [0.25, 0.55, 0.8, 1], files = {} }: { shares?: readonly number[]; files?: Files } = {}
): void {
  const stack = stackOf(document, {}, files)
  const twin = twinOf(stack, shares)
  const finished = finishedVolumes(stack)
  const compare = (what: string, ours: number, theirs: number) => {
    const off = Math.abs(ours - theirs)
    const share = off / Math.max(ours, theirs, 1e-9)
    expect(
      off <= NONE_MM3 || share <= TOLERANCE,
      `${name}, ${what}: ${ours} mm³, solids ${theirs} mm³ (${(100 * share).toFixed(3)} %)`
    ).toBe(true)
    if (off > NONE_MM3 && share > worst.share) Object.assign(worst, { share, what: `${name}, ${what}` })
  }
  for (const key of new Set([...finished.keys(), ...twin.finished.keys()]))
    compare(key, (finished.get(key) ?? 0) * 1000, twin.finished.get(key) ?? 0)
  for (const { pour, z, mm3 } of twin.free) {
    const i = stack.events.findIndex(e => e.kind === 'pour' && e.index === pour)
    const event = stack.events[i]!
    if (event.kind !== 'pour') throw new Error('not a pour')
    const space = freeSpace(stack.geometry, stack.events.slice(0, i), event.region, 0)
    compare(`free for pour ${pour} up to ${z.toFixed(3)}`, space.volumeTo(z), mm3)
  }
}

/**
 * Compares every second seeded piece, from `first` (0 or 1) on: finished volumes of all of them, which hold the
 * free volumes up to the levels; free volumes in between of every fourth, for they take as long again.
 */
export function compareSeeds(first: 0 | 1): Worst {
  const worst: Worst = { share: 0, what: 'none' }
  for (let seed = first; seed < PIECES; seed += 2)
    compareWithTwin(seededPiece(seed), `seed ${seed}`, worst, seed % 8 < 2 ? {} : { shares: [] })
  return worst
}
