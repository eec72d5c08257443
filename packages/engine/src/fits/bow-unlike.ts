import type { Face } from '../piece/piece-schema.ts'
import { laminate, shapeOf } from '../plate/laminate.ts'
import type { Plane } from '../plate/ply.ts'
import { strainAt } from '../plate/ply.ts'
import { bounds } from '../shape/measure.ts'
import type { Material } from '../stack/event.ts'
import { sideOf } from '../stack/stack.ts'
import type { Cell } from './bow-cells.ts'
import { cellsOf } from './bow-cells.ts'
import type { Bent, FaceBow } from './bow-face.ts'
import { faceBow, waysOf } from './bow-face.ts'
import { momentsOf } from './bow-moment.ts'
import type { BowInput } from './bow-plies.ts'
import { LONGITUDINAL_PER_PCT, MOST_MOVEMENT, Plies } from './bow-plies.ts'

/**
 * How far a piece bows whose one face lets damp through and whose other does not, while the open one has followed the
 * air and the other has not.
 *
 * Every timber has half of the year's change of moisture at the open face and none at the closed one, in a straight
 * line through the finished thickness (judgement); resin does not follow. Plates as fits/bow.
 *
 * Check: a board alone bows by its gradient, κ = C·ΔM/t (timber/cup; test).
 *
 * Limits: those of fits/bow; how fast damp really goes through is not reckoned.
 */
export function unlikeBowOf(input: BowInput, open: Face): FaceBow | null {
  const { stack, seasons } = input
  const { piece } = stack
  const moment = momentsOf(stack, input.clock, () => [0, 0]).at(-1)
  const thickMm = stack.finishedHigh - stack.finishedLow
  if (moment === undefined || !(thickMm > 0)) return null
  const box = bounds(stack.geometry.outline)
  const cells = cellsOf(stack, box, [moment.events])
  const plies = new Plies(
    input,
    piece.pours.map(() => null)
  )
  const side = sideOf(piece, open)
  const leans = seasons.map((season, i) => (end: 0 | 1) => {
    const points = ((season.dampPct - season.dryPct) / 2) * (end === 1 ? MOST_MOVEMENT : 1)
    const sign = side === 'high' ? 1 : -1
    const across = (sign * (season.coefficientPerPct ?? 0) * points) / thickMm
    const curvature = strainAt(
      limited((sign * LONGITUDINAL_PER_PCT * points) / thickMm),
      limited(across),
      plies.grainDeg(i)
    )
    // None at the closed face: the straight line goes through nought there.
    const closed = side === 'high' ? stack.finishedLow : stack.finishedHigh
    return { curvature, strain: curvature.map(k => -closed * k) as unknown as Plane }
  })
  const still = { ...moment, when: 'flattened' } as const
  const bentBy = (groups: readonly (readonly Cell[])[], axis: 0 | 1): Bent => {
    const of = (end: 0 | 1) =>
      groups.map(group => {
        const joined = ({ kind, index }: Material) => (kind === 'timber' ? leans[index]!(end) : undefined)
        const layers = plies.layers(group, 0, still, end, joined)
        return layers.length === 0 ? 0 : shapeOf(laminate(layers)).curvature[axis]
      })
    return [of(0), of(1)]
  }
  return faceBow(waysOf(piece, box), [bentBy(cells.columns, 0), bentBy(cells.rows, 1)], side)
}

// A piece that is next to nothing thick bends beyond what plates are reckoned for.
function limited(perMm: number): number {
  return Math.min(0.2, Math.max(-0.2, perMm))
}
