import type { PourBatches } from '../cast/batches.ts'
import type { Materials, TintPigment } from '../cast/facts.ts'
import type { Fill } from '../cast/fill.ts'
import { tintOf } from '../cast/fill.ts'
import type { Piece } from '../piece/piece-schema.ts'
import type { Stack } from '../stack/stack.ts'
import type { MixedFor, Use } from './shelf.ts'

/** Days on which pours and filled markings are mixed; null: not known. */
export interface MixDays {
  readonly pour: (index: number) => string | null
  readonly fill: string | null
}

/** Resin by id, g by day: of pours and of filled markings. */
export function resinNeeds(
  piece: Piece,
  batches: readonly (PourBatches | null)[],
  fills: readonly Fill[],
  blanks: number,
  days: MixDays
): Map<string, Use[]> {
  const out = new Map<string, Use[]>()
  piece.pours.forEach((pour, i) => {
    const share = pour.tint.reduce((sum, t) => sum + t.percent / 100, 0)
    addUse(out, pour.resin, (batches[i]?.mixedG ?? 0) * (1 - share) * blanks, days.pour(i), { pour: i })
  })
  fills.forEach((f, k) => {
    addUse(out, f.resin.id, f.mixedG * (1 - shareOf(f.tint)) * blanks, days.fill, { fill: k })
  })
  return out
}

/** Pigments, g by day: of pours, of the colours poured into each other, and of filled markings. */
export function pigmentNeeds(
  stack: Stack,
  materials: Materials,
  batches: readonly (PourBatches | null)[],
  fills: readonly Fill[],
  blanks: number,
  days: MixDays
): Map<TintPigment['pigment'], Use[]> {
  const out = new Map<TintPigment['pigment'], Use[]>()
  const of = (tint: readonly TintPigment[], mixedG: number, day: string | null): void => {
    for (const t of tint) addUse(out, t.pigment, mixedG * t.share * blanks, day)
  }
  stack.piece.pours.forEach((pour, i) => {
    const mixedG = batches[i]?.mixedG ?? 0
    const day = days.pour(i)
    of(materials.tints[i]!, mixedG, day)
    for (const m of pour.marbling ?? []) of(tintOf(m.tint), (mixedG * m.share) / 100, day)
  })
  for (const f of fills) of(f.tint, f.mixedG, days.fill)
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

function addUse<Key>(
  map: Map<Key, Use[]>,
  key: Key,
  amount: number,
  day: string | null,
  into?: MixedFor
): void {
  const use: Use = { amount, day, ...(into === undefined ? {} : { into }) }
  if (amount > 0) map.set(key, [...(map.get(key) ?? []), use])
}
