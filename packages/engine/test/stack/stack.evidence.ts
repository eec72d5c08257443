import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { coreAt } from '../../src/stack/core.ts'
import { halfWidthAt, vDepthMm } from '../../src/stack/groove.ts'
import { volumeBetween } from '../../src/stack/solid.ts'
import { finishedVolumes } from '../../src/stack/volume.ts'
import type { Evidence } from '../evidence.ts'
import { plainPiece, stackOf } from './build.ts'
import { seededPiece } from './seeded-piece.ts'
import { twinOf } from './twin.ts'

type TimberDocument = NonNullable<PieceDocument['timbers']>[number]

const bodyMl = (more: Partial<TimberDocument>): number => {
  const timber = {
    species: 'ash-white',
    outline: { rectangle: [100, 100] as [number, number] },
    thickness: 12,
    ...more
  }
  const body = stackOf(plainPiece({ timbers: [timber] })).geometry.timbers[0]!
  return volumeBetween(body, body.base, body.high) / 1000
}

const squareFeet = (depth: string): number => {
  const { pours } = stackOf(
    plainPiece({ outline: { rectangle: ['12 in', '12 in'] }, pours: [{ resin: 'medium', depth }] })
  )
  return (231 * 25.4 ** 3) / 1000 / pours[0]!.filledMl
}

const riverLitres = (undercut: boolean): number => {
  const edge = (side: number, inner: number): TimberDocument['outline'] => ({
    polygon: [
      [side * inner, -800],
      [side * 400, -800],
      [side * 400, 800],
      [side * inner, 800]
    ]
  })
  const slab = (side: number): TimberDocument => ({
    species: 'walnut-black',
    thickness: 45,
    outline: edge(side, 100),
    ...(undercut ? { underside: edge(side, 120) } : {})
  })
  const piece = plainPiece({
    outline: { rectangle: [800, 1600] },
    timbers: [slab(1), slab(-1)],
    pours: [{ resin: 'deep', height: 45 }]
  })
  return stackOf(piece).pours[0]!.filledMl / 1000
}

const coverMm = (): number => {
  const stack = stackOf(
    plainPiece({
      flatten: { back: 1, front: 0 },
      pours: [
        { resin: 'medium', depth: 13 },
        { resin: 'medium', depth: 12 }
      ],
      cuts: [{ face: 'back', shape: { rectangle: [120, 8] }, depth: 10.6 }]
    })
  )
  const [first] = coreAt(stack.geometry, stack.events, 0, 0)
  return first!.to - first!.from
}

const pocketMm = (floodLast: boolean): number =>
  stackOf(
    plainPiece({
      pours: [
        { id: 'body', resin: 'medium', depth: 29 },
        { id: 'flood', resin: 'thin', kind: 'flood', depth: 2 }
      ],
      cuts: [{ id: 'pocket', face: 'front', shape: { circle: 40 }, depth: 19.6 }],
      steps: [
        { do: 'make mould' },
        { do: 'pour', what: 'body' },
        { do: 'demould' },
        ...(floodLast
          ? ([
              { do: 'cut', what: 'pocket' },
              { do: 'pour', what: 'flood' }
            ] as const)
          : ([
              { do: 'pour', what: 'flood' },
              { do: 'cut', what: 'pocket' }
            ] as const))
      ]
    })
  ).cuts[0]!.finished!

/** Worst share by which finished volumes of the first six seeded pieces differ from the solids. */
const worstShare = (): number => {
  let worst = 0
  for (let seed = 0; seed < 6; seed++) {
    const stack = stackOf(seededPiece(seed))
    const ours = finishedVolumes(stack)
    for (const [key, mm3] of twinOf(stack, []).finished) {
      const off = Math.abs((ours.get(key) ?? 0) * 1000 - mm3)
      if (off > 2) worst = Math.max(worst, off / mm3)
    }
  }
  return worst * 100
}

const GEOMETRY = 'closed form of solid geometry'

const row = (
  model: string,
  what: string,
  source: string,
  unit: string,
  published: number,
  ours: () => number,
  tolerance = 1e-9,
  why = 'exact arithmetic on the same shape',
  confidence: Evidence['confidence'] = 'derived'
): Evidence => ({ model, what, source, confidence, unit, published, tolerance, why, ours })

export const rows: readonly Evidence[] = [
  row(
    'stack/free',
    '1 US gal covers, 1/4 in deep',
    'common makers’ table, 6.42 sq ft; exactly 231/(144·t)',
    'sq ft',
    231 / 36,
    () => squareFeet('1/4 in'),
    1e-9,
    'inches and gallons are exact',
    'exact'
  ),
  row(
    'stack/free',
    '1 US gal covers, 1/2 in deep',
    'common makers’ table, 3.21 sq ft; exactly 231/(144·t)',
    'sq ft',
    231 / 72,
    () => squareFeet('1/2 in'),
    1e-9,
    'inches and gallons are exact',
    'exact'
  ),
  row(
    'stack/free',
    '1 US gal covers, 1 in deep',
    'common makers’ table, 1.60 sq ft; exactly 231/(144·t)',
    'sq ft',
    231 / 144,
    () => squareFeet('1 in'),
    1e-9,
    'inches and gallons are exact',
    'exact'
  ),
  row(
    'stack/free',
    'two live edges 1.6 m long, undercut 20 mm on 45 mm stock, take more than drawn straight',
    'two triangular prisms 20 × 45/2 × 1600',
    'l',
    1.44,
    () => riverLitres(true) - riverLitres(false)
  ),
  row(
    'stack/solid',
    'frustum of squares 60 and 100 mm, 12 mm high',
    `${GEOMETRY}, h/3·(A + a + √(Aa))`,
    'ml',
    78.4,
    () => bodyMl({ underside: { rectangle: [60, 60] } })
  ),
  row(
    'stack/solid',
    'frustum of cones 60 and 80 mm across, 12 mm high',
    `${GEOMETRY}, π·h/3·(R² + Rr + r²)`,
    'ml',
    (Math.PI * 4 * (1600 + 1200 + 900)) / 1000,
    () => bodyMl({ outline: { circle: 80 }, underside: { circle: 60 } }),
    0.003,
    'circles are polygons within 0.01 mm, of unlike numbers of corners: their strip lies within the cone'
  ),
  row(
    'stack/top',
    'crown 6 mm high over 100 × 100 mm',
    'area under a parabola, two thirds of its box',
    'ml',
    160,
    () => bodyMl({ crown: { rise: 6 } })
  ),
  row(
    'stack/top',
    'four measured corners 0, 3, 1, 2 mm over 100 × 100 mm',
    'two triangles, each its mean corner height',
    'ml',
    120 + (5 / 3 + 1) * 5,
    () =>
      bodyMl({
        measured: {
          from: [-50, -50],
          step: [100, 100],
          rises: [
            [0, 3],
            [1, 2]
          ]
        }
      })
  ),
  row(
    'stack/groove',
    'width of a 60° V per mm of depth',
    `${GEOMETRY}, 2·tan 30°`,
    'mm',
    2 / Math.sqrt(3),
    () => 2 * halfWidthAt({ kind: 'v', widthMm: 0, angleDeg: 60 }, 1)
  ),
  row(
    'stack/groove',
    'a 60° V 1.2 deep, after 0.3 is sanded off, is wide',
    `${GEOMETRY}, 2·0.9·tan 30°`,
    'mm',
    1.8 / Math.sqrt(3),
    () => 2 * halfWidthAt({ kind: 'v', widthMm: 0, angleDeg: 60 }, 1.2 - 0.3)
  ),
  row(
    'stack/groove',
    'depth of a 60° V that is 1.386 mm wide',
    `${GEOMETRY}, w/(2·tan 30°)`,
    'mm',
    1.2,
    () => vDepthMm(1.386, 60),
    5e-4,
    'the width is given to three decimals'
  ),
  row(
    'stack/core',
    'cover of a 10.6 mm channel under 13.0 mm of resin, the back flattened by 1.0 mm',
    '13.0 − 1.0 − 10.6',
    'mm',
    1.4,
    coverMm
  ),
  row(
    'stack/walk',
    'a 19.6 mm pocket cut at 29 mm, then flooded by 2 mm, lies under the finished face',
    '19.6 + 2',
    'mm',
    21.6,
    () => pocketMm(true)
  ),
  row('stack/walk', 'the same pocket cut after the flood', '19.6', 'mm', 19.6, () => pocketMm(false)),
  {
    model: 'stack/volume',
    what: 'finished volumes of 6 seeded pieces, worst material (the tests take 200)',
    source: 'solids of a general 3-D boolean library, manifold-3d 3.2.1',
    confidence: 'computed',
    unit: '%',
    published: 0,
    tolerance: 0.1,
    why: 'crowned and measured tops cut by an outline are integrated level by level; grooves of the solids have facets. Differences under 2 mm³ are not counted',
    ours: worstShare
  }
]
