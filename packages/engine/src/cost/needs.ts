import type { PourBatches } from '../cast/batches.ts'
import type { Materials, TintPigment } from '../cast/facts.ts'
import type { Fill } from '../cast/fill.ts'
import { tintOf } from '../cast/fill.ts'
import type { Piece } from '../piece/piece-schema.ts'
import type { Stack } from '../stack/stack.ts'

/** Resin by id, g: of pours and of filled markings. */
export function resinNeeds(
  piece: Piece,
  batches: readonly (PourBatches | null)[],
  fills: readonly Fill[],
  blanks: number
): Map<string, number> {
  const out = new Map<string, number>()
  piece.pours.forEach((pour, i) => {
    const share = pour.tint.reduce((sum, t) => sum + t.percent / 100, 0)
    add(out, pour.resin, (batches[i]?.mixedG ?? 0) * (1 - share) * blanks)
  })
  for (const f of fills) add(out, f.resin.id, f.mixedG * (1 - shareOf(f.tint)) * blanks)
  return out
}

/** Pigments, g: of pours, of the colours poured into each other, and of filled markings. */
export function pigmentNeeds(
  stack: Stack,
  materials: Materials,
  batches: readonly (PourBatches | null)[],
  fills: readonly Fill[],
  blanks: number
): Map<TintPigment['pigment'], number> {
  const out = new Map<TintPigment['pigment'], number>()
  const of = (tint: readonly TintPigment[], mixedG: number): void => {
    for (const t of tint) add(out, t.pigment, mixedG * t.share * blanks)
  }
  stack.piece.pours.forEach((pour, i) => {
    const mixedG = batches[i]?.mixedG ?? 0
    of(materials.tints[i]!, mixedG)
    for (const m of pour.marbling ?? []) of(tintOf(m.tint), (mixedG * m.share) / 100)
  })
  for (const f of fills) of(f.tint, f.mixedG)
  return out
}

/** Batches mixed for one blank, all pours together. */
export function batchesMixed(batches: readonly (PourBatches | null)[]): number {
  return batches.reduce((sum, b) => sum + (b?.mixed?.count ?? 0), 0)
}

function shareOf(tint: readonly TintPigment[]): number {
  return tint.reduce((sum, t) => sum + t.share, 0)
}

/** Adds to what a key has. */
export function add<Key>(map: Map<Key, number>, key: Key, value: number): void {
  map.set(key, (map.get(key) ?? 0) + value)
}
