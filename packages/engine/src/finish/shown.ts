import type { Sanded } from '../coat/scratch.ts'
import type { Face } from '../piece/piece-schema.ts'
import type { Stack } from '../stack/stack.ts'
import { sideOf } from '../stack/stack.ts'

/** So far into the face its material is looked at, mm. */
const JUST_INSIDE_MM = 0.01

/**
 * What a finished face shows: timber, resin, or both. Resin counts where a casting, a filling or a flood reaches
 * the face; a flood over all of it leaves no timber.
 *
 * Limits: by heights alone: a timber that lies wholly outside the outline still counts.
 */
export function shownOn(stack: Stack, face: Face): readonly Sanded[] {
  const { geometry } = stack
  const side = sideOf(stack.piece, face)
  const z = side === 'high' ? stack.finishedHigh - JUST_INSIDE_MM : stack.finishedLow + JUST_INSIDE_MM
  let flooded = false
  let resin = false
  for (const e of stack.events) {
    if (e.kind === 'flood' && z >= e.from && z < e.to) {
      resin = true
      if (e.region === null) flooded = true
    }
    if (e.kind === 'fill' && e.side === side) resin = true
    // A pour that timber leaves no room for shows nowhere.
    if (e.kind === 'pour' && z >= 0 && z < e.to && stack.pours[e.index]!.filledMl > 0) resin = true
  }
  const timber = !flooded && geometry.timbers.some(t => z >= t.base && z < t.high)
  // A face that nothing reaches is taken for resin: a hollow that is filled later.
  if (!timber) return ['resin']
  return resin ? ['timber', 'resin'] : ['timber']
}
