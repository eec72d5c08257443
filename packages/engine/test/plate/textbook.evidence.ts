import { laminate, shapeOf } from '../../src/plate/laminate.ts'
import { isotropic, stiffnessAt } from '../../src/plate/ply.ts'
import { twoLayerCurvaturePerMm } from '../../src/timber/cup.ts'
import type { Evidence } from '../evidence.ts'
import { table } from '../evidence.ts'

const KAW = 'Kaw, Mechanics of Composite Materials'
/** Graphite and epoxy, GPa; the unit goes through. */
const GRAPHITE = { e1MPa: 181, e2MPa: 10.3, g12MPa: 7.17, nu12: 0.28 }

/** Q̄11, Q̄12, Q̄16, Q̄22, Q̄26, Q̄66 in GPa. */
const TURNED = [
  [0, [181.8, 2.897, 0, 10.35, 0, 7.17]],
  [30, [109.4, 32.46, 54.19, 23.65, 20.05, 36.74]],
  [-45, [56.66, 42.32, -42.87, 56.66, -42.87, 46.59]]
] as const

/** [0/30/−45], plies of 5 mm, z downward in the book, so the first ply is the top one; GPa and mm. */
const A = [1739, 388.4, 56.63, 453.3, -114.1, 452.5]
const B = [-3129, 985.5, -1072, 1158, -1072, 985.5]
const D = [33430, 6461, -5240, 9320, -5596, 7663]

const lay = () =>
  laminate(
    [0, 30, -45].map((angle, k) => ({
      lowMm: -7.5 + 5 * k,
      highMm: -2.5 + 5 * k,
      stiffness: stiffnessAt(GRAPHITE, angle),
      free: [0, 0, 0]
    }))
  )
const worst = (ours: readonly number[], published: readonly number[]) =>
  Math.max(...published.map((p, k) => Math.abs(ours[k]! - p) / Math.max(...published.map(Math.abs))))

/** Thickness and modulus of the lower and the upper strip. */
const STRIPS = [
  [20, 900, 3, 2900],
  [3, 2900, 20, 900],
  [10, 1000, 10, 1000],
  [1, 12_000, 30, 700]
] as const

export const rows: readonly Evidence[] = [
  table({
    model: 'plate/ply',
    what: 'turned stiffness of graphite and epoxy at 0°, 30° and −45°',
    source: `${KAW}, example 2.6 and 4.2`,
    confidence: 'memory',
    unit: 'GPa',
    tolerance: 0.06,
    why: 'four figures',
    cells: 18,
    worst: () =>
      Math.max(
        ...TURNED.flatMap(([angle, q]) =>
          stiffnessAt(GRAPHITE, angle).map((ours, k) => Math.abs(ours - q[k]!))
        )
      )
  }),
  ...(['a', 'b', 'd'] as const).map(key =>
    table({
      model: 'plate/laminate',
      what: `${key.toUpperCase()} of [0/30/−45] in graphite and epoxy, over its largest entry`,
      source: `${KAW}, example 4.2`,
      confidence: 'memory',
      unit: '',
      tolerance: 0.0005,
      why: 'four figures',
      cells: 6,
      worst: () => worst(lay()[key], { a: A, b: B, d: D }[key])
    })
  ),
  table({
    model: 'plate/laminate',
    what: 'two bonded strips, one of which grows: curvature over the closed form, four pairs',
    source: 'Timoshenko, J. Opt. Soc. Am. 11 (1925) 233; his strip is narrow: ν = 0',
    confidence: 'memory',
    unit: '',
    tolerance: 1e-12,
    why: 'the same mechanics in closed form',
    cells: STRIPS.length,
    worst: () =>
      Math.max(
        ...STRIPS.map(([t1, e1, t2, e2]) => {
          const ours = shapeOf(
            laminate([
              { lowMm: 0, highMm: t1, stiffness: stiffnessAt(isotropic(e1, 0), 0), free: [0, 0, 0] },
              {
                lowMm: t1,
                highMm: t1 + t2,
                stiffness: stiffnessAt(isotropic(e2, 0), 0),
                free: [0.002, 0.002, 0]
              }
            ])
          ).curvature[0]
          const theirs = twoLayerCurvaturePerMm({
            thickness1Mm: t1,
            modulus1MPa: e1,
            thickness2Mm: t2,
            modulus2MPa: e2,
            strainMismatch: 0.002
          })
          return Math.abs(ours / theirs - 1)
        })
      )
  })
]
