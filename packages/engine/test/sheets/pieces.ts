import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { checkPiece, checkShop } from '../../src/piece/read.ts'
import type { ShopDocument } from '../../src/piece/shop-schema.ts'
import type { Planned, PlanOptions } from '../../src/plan.ts'
import { plan } from '../../src/plan.ts'

/** Pieces invented for the tests of the sheets: each has what the others lack. */

type Point = [number, number]

/** A wandering line: sums of sines, so that it is the same on every run. */
function wander(from: number, to: number, step: number, middle: number, swing: readonly Point[]): Point[] {
  const out: Point[] = []
  for (let x = from; x <= to + 1e-9; x += step) {
    const y = swing.reduce((sum, [a, w], k) => sum + a * Math.sin(w * x + 1.7 * k), middle)
    out.push([Math.round(x * 100) / 100, Math.round(y * 100) / 100])
  }
  return out
}

/** A bank of the creek: between the outline's edge at y = `edge` and the water. */
function bank(edge: number, water: Point[]): Point[] {
  const first = water[0]!
  const last = water[water.length - 1]!
  return [[first[0], edge], ...water, [last[0], edge]]
}

const swell = (x: number) => 52 * Math.exp(-(((x - 92) / 44) ** 2))
const creek = wander(-263, 263, 7.0133, 0, [
  [20, 0.011],
  [7, 0.034]
]).map(([x, y]): Point => [x, y + 0.16 * x])
const width = (x: number) => 14 + 3 * Math.sin(x / 29) + swell(x)
const north = creek.map(([x, y]): Point => [x, Math.round((y + width(x)) * 100) / 100])
const south = creek.map(([x, y]): Point => [x, Math.round((y - width(x)) * 100) / 100])
const heart: Point = [
  92,
  Math.round(creek.reduce((best, p) => (Math.abs(p[0] - 92) < Math.abs(best[0] - 92) ? p : best))[1] * 10) /
    10
]

/** A panel with a creek of green under clear, shells, a compass, a cable channel that comes too near the front. */
export const PANEL: PieceDocument = {
  castwright: 1,
  name: 'Wrackline chart panel',
  about: 'Invented for the tests: a panel for a boat’s cabin.',
  outline: { rectangle: [520, 220], corner: 4 },
  mould: {
    margin: 6,
    bearers: 250,
    formers: [{ id: 'compass hole', shape: { circle: 68, at: heart }, from: 0 }]
  },
  flatten: { back: 1.4, front: 0.6 },
  timbers: [
    {
      id: 'north bank',
      species: 'ash-white',
      outline: { polygon: bank(113, north) },
      thickness: 30,
      moisture: 8.5,
      grain: 2
    },
    {
      id: 'south bank',
      species: 'ash-white',
      outline: { polygon: bank(-113, south) },
      thickness: 30,
      moisture: 8.5,
      grain: -3
    }
  ],
  pours: [
    {
      id: 'reed green',
      resin: 'deep',
      depth: 14,
      tint: [
        { pigment: 'green-paste', percent: 0.35 },
        { pigment: 'ochre-paste', percent: 0.35 }
      ],
      opaque: true
    },
    {
      id: 'clear',
      resin: 'deep',
      height: 30,
      stones: [
        {
          kind: 'shells-whole',
          placed: creek
            .filter((_, i) => i % 7 === 3)
            .filter(([x]) => Math.abs(x - heart[0]) > 48)
            .map(([x, y], i) => ({
              at: [x, y + (i % 3) * 4 - 4] as Point,
              size: [15 - (i % 3) * 2, 13, 5] as [number, number, number]
            }))
        }
      ]
    }
  ],
  cuts: [
    {
      id: 'cable channel',
      kind: 'groove',
      face: 'back',
      along: {
        points: [
          [-205, 58],
          [-150, 58],
          [-96, 0],
          [heart[0] - 32, heart[1]]
        ]
      },
      width: 12,
      finishedDepth: 11.2
    },
    { id: 'hanger left', face: 'back', shape: { rectangle: [44, 20], corner: 3, at: [-180, 92] }, depth: 8 },
    { id: 'hanger right', face: 'back', shape: { rectangle: [44, 20], corner: 3, at: [180, 92] }, depth: 8 },
    {
      id: 'plate pocket',
      face: 'front',
      shape: { rectangle: [62, 38], corner: 2, at: [-205, 72] },
      finishedDepth: 3.2
    },
    {
      id: 'cable hole',
      kind: 'bore',
      face: 'front',
      shape: { circle: 9, at: [-205, 58] },
      through: true,
      way: 'drill'
    },
    {
      id: 'outline',
      kind: 'outline',
      face: 'front',
      shape: { difference: [{ rectangle: [532, 232] }, { rectangle: [520, 220], corner: 4 }] },
      through: true
    }
  ],
  hardware: [
    { id: 'compass', kind: 'compass-insert', face: 'front', in: 'compass hole', diameter: 66, depth: 22 },
    {
      id: 'switch',
      kind: 'switch-low-voltage',
      face: 'front',
      in: 'plate pocket',
      length: 60,
      width: 36,
      depth: 3
    },
    { id: 'left hanger', kind: 'keyhole-plate', face: 'back', in: 'hanger left', length: 40, width: 16 },
    { id: 'right hanger', kind: 'keyhole-plate', face: 'back', in: 'hanger right', length: 40, width: 16 }
  ],
  markings: [
    {
      id: 'depth scale',
      face: 'front',
      linear: {
        from: [-216, -98],
        to: [216, -98],
        length: 9,
        at: Array.from({ length: 25 }, (_, i) => i / 24)
      },
      width: 1.4,
      filled: [{ pigment: 'black-paste', percent: 3 }],
      numerals: Array.from({ length: 7 }, (_, i) => ({
        text: String(2 * i),
        at: [-216 + i * 72, -82] as Point,
        height: 7
      }))
    }
  ],
  edges: [{ face: 'front', profile: 'chamfer', size: 3 }],
  finish: { both: { coat: 'hardwax-oil', coats: 2 } }
}

const left = wander(-307, 307, 9.903, -60, [
  [30, 0.009],
  [9, 0.031]
])
const right = wander(-307, 307, 9.903, 70, [
  [24, 0.011],
  [8, 0.043]
])
const across = (line: Point[], by: number): Point[] => line.map(([x, y]): Point => [x, y + by])

/** A side table: two live edges, slanted under the bark, and a river of clear blue between them. */
export const TABLE: PieceDocument = {
  castwright: 1,
  name: 'Side table for a hall',
  outline: { rectangle: [600, 420], corner: 30 },
  mould: { margin: 10, bearers: 200 },
  flatten: { back: 2, front: 2 },
  timbers: [
    {
      id: 'front slab',
      species: 'walnut-black',
      outline: { polygon: [[-307, -217], [307, -217], ...[...left].reverse()] },
      underside: { polygon: [[-307, -217], [307, -217], ...across([...left].reverse(), 16)] },
      thickness: 38,
      moisture: 9
    },
    {
      id: 'back slab',
      species: 'walnut-black',
      outline: { polygon: [...right, [307, 217], [-307, 217]] },
      underside: { polygon: [...across(right, -14), [307, 217], [-307, 217]] },
      thickness: 38,
      moisture: 9,
      rings: 'rift'
    }
  ],
  pours: [
    { id: 'seal', kind: 'seal', resin: 'thin', depth: 0.3 },
    { id: 'river one', resin: 'deep', depth: 20, tint: [{ pigment: 'blue-tint', percent: 0.006 }] },
    { id: 'river two', resin: 'deep', height: 39, tint: [{ pigment: 'blue-tint', percent: 0.004 }] }
  ],
  cuts: [
    { id: 'leg left', face: 'back', shape: { rectangle: [100, 80], corner: 5, at: [-200, -165] }, depth: 6 },
    { id: 'leg right', face: 'back', shape: { rectangle: [100, 80], corner: 5, at: [200, 165] }, depth: 6 }
  ],
  edges: [{ face: 'both', profile: 'round', size: 3 }],
  finish: { both: { coat: 'hardwax-oil' } }
}

/** A batch of boards, each with a wave of copper let in, and a groove round it. */
export const BOARDS: PieceDocument = {
  castwright: 1,
  name: 'Twelve boards with a copper wave',
  quantity: { pieces: 12, loss: 6, certainty: 90, gang: 1 },
  outline: { rectangle: [380, 180], corner: 14 },
  mould: { margin: 4 },
  flatten: { back: 0.5, front: 1 },
  food: 'back',
  timbers: [
    { id: 'board', species: 'maple-sugar', outline: { rectangle: [380, 180] }, thickness: 24, moisture: 8 }
  ],
  pours: [
    {
      id: 'copper',
      kind: 'inlay',
      into: ['wave'],
      resin: 'medium',
      fill: 'cut',
      tint: [{ pigment: 'copper-pearl', percent: 4 }]
    }
  ],
  cuts: [
    {
      id: 'wave',
      kind: 'groove',
      face: 'front',
      along: { points: wander(-176, 176, 8, 8, [[34, 0.022]]) },
      width: 16,
      finishedDepth: 8
    },
    {
      id: 'juice groove',
      kind: 'groove',
      face: 'back',
      along: {
        points: [
          [-170, -70],
          [170, -70],
          [170, 70],
          [-170, 70],
          [-170, -70]
        ]
      },
      width: 8,
      profile: 'round',
      depth: 4
    }
  ],
  finish: { both: { coat: 'hardwax-oil' } }
}

export const SHOP: ShopDocument = {
  castwright: 1,
  scale: { resolution: 0.1 },
  prices: [
    { item: 'green-paste', unit: 'g', pack: 50, price: 9 },
    { item: 'ochre-paste', unit: 'g', pack: 50, price: 9 },
    { item: 'hardwax-oil', unit: 'ml', pack: 375, price: 26 },
    { item: 'release-tape', unit: 'm²', pack: 5, price: 14 }
  ]
}

/** A plan of one of these pieces, quickly. */
export function planOf(piece: PieceDocument, options: Partial<PlanOptions> = {}, shop = SHOP): Planned {
  return plan(
    { piece: checkPiece(piece, 'piece'), shop: checkShop(shop, 'shop').value },
    { asOf: '2026-11-20T09:00+01:00', effort: 'preview', ...options }
  )
}
