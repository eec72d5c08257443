import { bendingNmm, laminate, shapeOf } from '../plate/laminate.ts'
import type { Place } from '../plate/tip.ts'
import { bounds } from '../shape/measure.ts'
import type { Bounds } from '../shape/region.ts'
import { CELLS, cellsOf } from './bow-cells.ts'
import type { BowMoment } from './bow-moment.ts'
import { momentsOf } from './bow-moment.ts'
import type { BowInput } from './bow-plies.ts'
import { Plies } from './bow-plies.ts'
import { cellMasses } from './cell-mass.ts'

/** A finished piece as it bends, weighs and moves, wherever it is put. */
export interface Loaded {
  readonly ways: readonly [x: LoadedWay, y: LoadedWay]
  readonly massG: number
  readonly middle: Place
  readonly box: Bounds
  readonly edge: readonly Place[]
}

/** One direction of it, cross-section by cross-section. */
export interface LoadedWay {
  readonly along: 'x' | 'y'
  readonly lengthMm: number
  readonly stiffnessNmm2: readonly number[]
  readonly massG: readonly number[]
  /** Share of the piece's area. */
  readonly share: readonly number[]
  /** Strain to the driest and the dampest air, as reckoned and at the upper end. */
  readonly strains: readonly (readonly [dry: number, damp: number, dryUpper: number, dampUpper: number])[]
}

/** null where nothing is made. */
export function loadedPiece(input: BowInput): Loaded | null {
  const { stack } = input
  const [driest, dampest] = momentsOf(stack, input.clock, () => [0, 0]).slice(-2)
  if (driest === undefined || dampest === undefined) return null
  const box = bounds(stack.geometry.outline)
  const cells = cellsOf(stack, box, [driest.events])
  const plies = new Plies(
    input,
    stack.piece.pours.map(() => null)
  )
  const spans = [box.maxX - box.minX, box.maxY - box.minY] as const
  const masses = cellMasses(input, cells, (spans[0] * spans[1]) / CELLS ** 2)
  const way = (along: 'x' | 'y'): LoadedWay => {
    const axis = along === 'x' ? 0 : 1
    const groups = axis === 0 ? cells.columns : cells.rows
    const inside = groups.map(g => g.reduce((n, c) => n + c.count, 0))
    const all = inside.reduce((a, b) => a + b, 0)
    const plates = groups.map(group => (moment: BowMoment, end: 0 | 1) => {
      const layers = plies.layers(group, 0, moment, end, () => undefined)
      return layers.length === 0 ? null : laminate(layers)
    })
    const stiffness = plates.map((of, i) => {
      const plate = of(driest, 0)
      return plate === null ? 0 : (bendingNmm(plate)[axis] * spans[1 - axis]! * inside[i]!) / CELLS
    })
    // A cross-section that is all hole hangs between its neighbours: it is taken as the stiffest.
    const stiffest = Math.max(1, ...stiffness)
    return {
      along,
      lengthMm: spans[axis],
      stiffnessNmm2: stiffness.map(s => (s > 0 ? s : stiffest)),
      massG: masses.byGroup[along],
      share: inside.map(n => n / all),
      strains: plates.map(of => {
        const strain = (moment: BowMoment, end: 0 | 1) => {
          const plate = of(moment, end)
          return plate === null ? 0 : shapeOf(plate).strain[axis]
        }
        return [strain(driest, 0), strain(dampest, 0), strain(driest, 1), strain(dampest, 1)]
      })
    }
  }
  return {
    ways: [way('x'), way('y')],
    massG: masses.totalG,
    middle: masses.middle,
    box,
    edge: stack.geometry.outline.rings.flatMap(ring =>
      Array.from({ length: ring.length / 2 }, (_, k): Place => [ring[2 * k]!, ring[2 * k + 1]!])
    )
  }
}
