import type { WholeCast } from '../../../engine/src/cast/whole/whole-cast.ts'

/** Whole casts that are kept: another face, other units or an edit taken back do not cast anew. */
const MOST_KEPT = 6
const kept = new Map<string, WholeCast>()

/** The finished cast of what a key says; null when there is none any more. */
export function keptCast(key: string): WholeCast | null {
  return kept.get(key) ?? null
}

export function keepCast(key: string, whole: WholeCast): void {
  kept.delete(key)
  if (kept.size >= MOST_KEPT) kept.delete(kept.keys().next().value!)
  kept.set(key, whole)
}
