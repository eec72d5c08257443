import type { Materials } from '../cast/facts.ts'
import type { Floating } from '../cast/floating.ts'
import type { MouldPlan } from '../cast/mould.ts'
import { area } from '../shape/measure.ts'
import type { Stack } from '../stack/stack.ts'

/**
 * What has to be lifted or turned at a step, g: the casting as it is then, and the mould with it where it is turned
 * out of that.
 *
 *   casting  timbers and resin that went in, less what has come off: in proportion to height, and to the area of the
 *            outline once the waste is off
 *   mould    its boards by size and density
 *
 * Limits: stones and bought-in parts are not counted, nor what cuts take out; bearers and clamps of the mould neither.
 */
export interface Move {
  /** The step, by index. */
  readonly step: number
  readonly massG: number
  /** Part of it that is the mould, g. */
  readonly mouldG: number
}

export function movesOf(
  stack: Stack,
  materials: Materials,
  floating: readonly Floating[],
  mould: MouldPlan
): Move[] {
  const { steps, states, piece, geometry } = stack
  const timberG = floating.reduce((sum, f) => sum + f.massG, 0)
  const boardsG = mould.needsMould ? mouldMassG(mould, materials) : 0
  const shrinks = area(geometry.outline) / Math.max(area(geometry.outline), area(geometry.mould))
  let trimmed = !mould.needsMould
  return steps.flatMap((step, i): Move[] => {
    if (step.kind === 'trim' || step.cut?.value.kind === 'outline') trimmed = true
    if (step.kind !== 'demould' && step.kind !== 'turn over' && step.kind !== 'deliver') return []
    const state = states[i]!
    const resinG = stack.pours.reduce(
      (sum, p, k) => sum + (state.poured.includes(k) && piece.pours[k]!.kind !== 'seal' ? p.massG : 0),
      0
    )
    const height = Math.max(1e-6, stack.castHeight)
    const left = Math.min(1, Math.max(0, (state.highZ - state.lowZ) / height))
    const castingG = (timberG + resinG) * left * (trimmed && mould.needsMould ? shrinks : 1)
    const mouldG = step.kind === 'demould' || step.inMould ? boardsG : 0
    return [{ step: i, massG: castingG + mouldG, mouldG }]
  })
}

function mouldMassG({ cutList }: MouldPlan, { base, walls }: Materials): number {
  return cutList.boards.reduce((sum, b) => {
    const board = b.name === 'base' ? base : walls
    const ml = (b.count * b.lengthMm * b.widthMm * (b.thicknessMm ?? board.thicknessMm)) / 1000
    return sum + (ml * board.densityKgM3) / 1000
  }, 0)
}
