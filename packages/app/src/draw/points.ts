import { w } from '../text/words.ts'
import type { Held } from './held.ts'
import { point } from './held.ts'
import { nameOf, workTool } from './tools.ts'

interface Place {
  readonly ring: number
  readonly index: number
}

/** Takes a point out of the outline in hand. */
export async function takeOut({ at }: Held, { ring, index }: Place): Promise<void> {
  point.value = null
  await workTool(w.draw.pointed(nameOf(at)), { tool: 'vertex', at, ring, index, to: null })
}

/** Adds a point in the middle of the stretch after one, on its curve, and takes it in hand. */
export async function addAfter({ at }: Held, { ring, index }: Place): Promise<void> {
  if (await workTool(w.draw.pointed(nameOf(at)), { tool: 'add vertex', at, ring, index }))
    point.value = { ring, index: index + 1 }
}

/** Lays a point of the outline in hand at a place, mm. */
export async function layPoint(
  { at }: Held,
  { ring, index }: Place,
  to: readonly [number, number]
): Promise<void> {
  await workTool(w.draw.pointed(nameOf(at)), { tool: 'vertex', at, ring, index, to })
}
