import type { Face } from '../piece/piece-schema.ts'
import type { Shape } from '../plate/laminate.ts'
import { FLAT, laminate, shapeOf } from '../plate/laminate.ts'
import { bounds } from '../shape/measure.ts'
import type { Stack } from '../stack/stack.ts'
import { sideOf } from '../stack/stack.ts'
import type { Cell } from './bow-cells.ts'
import { CELLS, cellsOf } from './bow-cells.ts'
import type { Bent, FaceBow } from './bow-face.ts'
import { faceBow, less, wantedMm, waysOf } from './bow-face.ts'
import type { BowMoment } from './bow-moment.ts'
import { momentsOf } from './bow-moment.ts'
import type { FlattenWay } from './bow-order.ts'
import { flattenWays } from './bow-order.ts'
import type { BowInput, Within } from './bow-plies.ts'
import { floodFilms, Plies } from './bow-plies.ts'
import { contractionOf } from './bow-resin.ts'

/**
 * How far the piece bows after each step that changes its stack, and in use.
 *
 * Every column of cores along x is one cross-section: what lies in it side by side is stretched and bent alike (rule
 * of mixtures by width); the columns follow each other, each bent as its own plate (plate/laminate), and their
 * curvatures along the piece give its bow (plate/bow). The same with rows along y. In the mould the casting is held
 * flat; each pour joins without stress when it is stiff. Out of it, it bows. Flattening a face makes it flat as it
 * lies, free; what later steps and the seasons change is its bow. A face that is not flattened counts as flat as cast.
 *
 * Loads: contraction of each pour (bow-resin.ts); timber that goes from its moisture to the driest and dampest air,
 * evenly through its thickness (season.ts).
 *
 * Creep and relaxation leave 0.3 to 1 of the elastic bow within weeks and months (common practice, no source): the
 * central value is the middle of that, 0.65; the lower end of the band 0.3; the upper end all of it, with resin stiff
 * somewhat earlier, shrinkage at the top of its class, movement of timber a quarter larger.
 *
 * Check: a river between two equal planks stays flat (test); a skin of resin over a board as Timoshenko's strip
 * (test); turned by 90° or cast face down, the same (test).
 *
 * Limits: elastic but for that factor, small deflections. Lines, and inlays narrower than three times the
 * thickness, pull on their own surroundings only and count as what they are let into. Moisture that differs through the thickness, cupping by year rings, twist, the
 * piece's own weight and films of the finish but flood coats are not in it. Cross-sections stay plane: across a
 * change of section the piece is freer. The margin of waste is left out. No bow is told where a pour's family is not
 * predicted.
 */
export interface Bow {
  readonly rows: readonly BowRow[]
  /** What other orders and depths of flattening would leave, as planned first; empty unless both faces are flattened. */
  readonly order: readonly FlattenWay[]
  /** How far from flat is let pass, mm over 300 mm. */
  readonly flatnessMm: number
}

export interface BowRow {
  readonly when: BowMoment['when']
  /** The step, by index. */
  readonly step: number
  readonly front: FaceBow
  readonly back: FaceBow
  /** For a flattening: its face, how far from flat it was just before, and what comes off, mm. */
  readonly flattens: { readonly face: Face; readonly before: FaceBow; readonly takesMm: number } | null
}

const AS_PLANNED = { front: 0, back: 0 } as const

/**
 * null where no bow can be told: no step leads to one, or a pour of a family that is not predicted.
 * @param more what flattening would take off a face besides, mm: for a search after a better depth, which asks for no
 * other orders
 */
export function bowOf(input: BowInput, more: Readonly<Record<Face, number>> = AS_PLANNED): Bow | null {
  const { stack, materials, casts } = input
  const { piece, steps } = stack
  const cures = piece.pours.map((pour, i) => {
    const choice = materials.resins[i]!
    const cast = casts[i] ?? null
    if (choice.record.model === null || cast === null) return null
    const { night, day } = input.shop.climate
    const upper = pour.shrinkage ?? Math.max(choice.shrinkagePct, choice.record.shrinkageBandPct[1])
    return contractionOf(
      cast,
      choice.record.model.kinetics,
      [(pour.shrinkage ?? choice.shrinkagePct) / 100, upper / 100],
      (night + day) / 2
    )
  })
  const moments = momentsOf(stack, input.clock, pour => cures[pour]?.stiffMin ?? [0, 0], floodFilms(input))
  const unknown = steps.some(
    s =>
      s.kind === 'pour' &&
      s.pour!.value.kind !== 'seal' &&
      materials.resins[s.pour!.index]!.record.model === null
  )
  if (moments.length === 0 || unknown) return null
  const box = bounds(stack.geometry.outline)
  const cells = cellsOf(
    stack,
    box,
    moments.map(m => m.events)
  )
  const plies = new Plies(input, cures)
  const within = clips(stack, moments, more)
  const ways = waysOf(piece, box).map(way => {
    const groups = way.along === 'x' ? cells.columns : cells.rows
    const axis = way.along === 'x' ? 0 : 1
    return { ...way, groups, axis, ...bentOver(groups, moments, within, plies, axis) } as const
  })
  const none: Bent = [new Array<number>(CELLS).fill(0), new Array<number>(CELLS).fill(0)]
  const flatAs = { front: ways.map(() => none), back: ways.map(() => none) }
  const faceAt = (face: Face, m: number): FaceBow =>
    faceBow(
      ways,
      ways.map((way, w) => [
        less(way.bent[m]![0], flatAs[face][w]![0]),
        less(way.bent[m]![1], flatAs[face][w]![1])
      ]),
      sideOf(piece, face)
    )
  const rows = moments.flatMap((moment, m): BowRow[] => {
    let flattens: BowRow['flattens'] = null
    if (moment.when === 'flattened') {
      const face = steps[moment.step]!.face as Face
      flattens = { face, before: faceAt(face, Math.max(0, m - 1)), takesMm: steps[moment.step]!.byMm ?? 0 }
      flatAs[face] = ways.map(way => way.bent[m]!)
    }
    if (moment.when === 'joined') return []
    return [
      { when: moment.when, step: moment.step, front: faceAt('front', m), back: faceAt('back', m), flattens }
    ]
  })
  // As it stands just before the first face is made flat, on that day.
  const before = moments.findIndex(m => m.when === 'flattened') - 1
  const untouched = { ...moments[before + 1]!, held: false }
  const order =
    before < 0 || more !== AS_PLANNED
      ? []
      : flattenWays(stack, moments, ways, between =>
          ways.map(({ groups, axis, joined }) =>
            groups.map(
              (cells, g) => shapeAt(cells, before, untouched, between, plies, 0, joined[g]!).curvature[axis]
            )
          )
        )
  return { rows, order, flatnessMm: wantedMm(piece) }
}

/** Heights between which the piece is left standing at each moment, when more comes off than planned. */
function clips(
  stack: Stack,
  moments: readonly BowMoment[],
  more: Readonly<Record<Face, number>>
): readonly Within[] {
  let [low, high] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
  return moments.map(({ when, step }) => {
    const { face } = stack.steps[step]!
    if (when === 'flattened' && (face === 'front' || face === 'back') && more[face] > 0) {
      if (sideOf(stack.piece, face) === 'low') low = Math.max(low, stack.states[step]!.lowZ + more[face])
      else high = Math.min(high, stack.states[step]!.highZ - more[face])
    }
    return [low, high] as const
  })
}

/** Curvatures of every group of cells at every moment, and the shape each pour joined it at, as reckoned. */
function bentOver(
  groups: readonly (readonly Cell[])[],
  moments: readonly BowMoment[],
  within: readonly Within[],
  plies: Plies,
  axis: 0 | 1
): { readonly bent: Bent[]; readonly joined: readonly ReadonlyMap<number, Shape>[] } {
  const out = moments.map((): [number[], number[]] => [[], []])
  const met: Map<number, Shape>[] = []
  for (const cells of groups) {
    for (const end of [0, 1] as const) {
      const joined = new Map<number, Shape>()
      moments.forEach((moment, m) => {
        const shape = shapeAt(cells, m, moment, within[m]!, plies, end, joined)
        if (moment.when === 'joined') joined.set(moment.pour!, shape)
        out[m]![end].push(shape.curvature[axis])
      })
      if (end === 0) met.push(joined)
    }
  }
  return { bent: out, joined: met }
}

function shapeAt(
  cells: readonly Cell[],
  m: number,
  moment: BowMoment,
  within: Within,
  plies: Plies,
  end: 0 | 1,
  joined: ReadonlyMap<number, Shape>
): Shape {
  const layers = plies.layers(
    cells,
    m,
    moment,
    end,
    ({ kind, index }) => (kind === 'pour' ? joined.get(index) : undefined),
    within
  )
  if (layers.length === 0) return FLAT
  return shapeOf(laminate(layers), moment.held && moment.when === 'joined' ? 'flat' : 'free')
}
