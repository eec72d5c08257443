import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import type { ShopDocument } from '../../src/piece/shop-schema.ts'
import type { Chance } from '../stack/random.ts'
import { chance } from '../stack/random.ts'

type Cut = NonNullable<PieceDocument['cuts']>[number]

/** A shop with a machine and a drawer of cutters (invented). */
export const SHOP: ShopDocument = {
  castwright: 1,
  machine: { x: 800, y: 600, z: 110, error: 0.05, spindle: 1100 },
  cutters: [
    { id: 'flattening 25', kind: 'surfacing', diameter: 25.4, length: 8, flutes: 3 },
    { id: 'straight 6', kind: 'flat-end-mill', diameter: 6, length: 32, reach: 42 },
    { id: 'straight 4', kind: 'flat-end-mill', diameter: 4, length: 26, reach: 34 },
    { id: 'straight 3', kind: 'flat-end-mill', diameter: 3, length: 12 },
    { id: 'long 5', kind: 'flat-end-mill', diameter: 5, length: 36, reach: 42 },
    { id: 'ball 8', kind: 'ball-nose', diameter: 8, length: 25 },
    { id: 'ball 6', kind: 'ball-nose', diameter: 6, length: 22 },
    { id: 'drill 5', kind: 'drill', diameter: 5, length: 52 },
    { id: 'point 60', kind: 'v-60', diameter: 6, length: 5.2, tip: 0.1 },
    { id: 'point 90', kind: 'v-90', diameter: 12, length: 6, tip: 0.1 },
    { id: 'keyhole 10', kind: 'keyhole-cutter', diameter: 10, length: 14, head: 4, neck: 5 }
  ]
}

/**
 * Seeded small pieces with cuts of every kind on both faces, none of which meets another: each has a cell of a grid
 * to itself. What varies: size, timber, layers, which face lay down, what is cut where, how deep.
 */
export function machinePiece(seed: number): PieceDocument {
  const { span, pick, is } = chance(seed)
  // What came later draws from a chance of its own, so that the earlier pieces stay.
  const more = chance(1000 + seed)
  const mm = (a: number, b: number, step = 0.1) => Number((Math.round(span(a, b) / step) * step).toFixed(2))
  const width = mm(150, 190, 1)
  const height = mm(100, 130, 1)
  const thickness = mm(18, 26, 0.5)
  const cellX = (width - 16) / 3
  const cellY = (height - 16) / 2
  const cuts: Cut[] = []
  const markings: NonNullable<PieceDocument['markings']> = []
  for (const face of ['back', 'front'] as const) {
    for (let i = 0; i < 3; i++) {
      for (let j = 0; j < 2; j++) {
        const usual = is(0.55)
        if (!usual && !more.is(0.5)) continue
        // A cell of the back stays clear of what the front cuts through.
        const x = Number(((i - 1) * cellX + (face === 'back' ? 0 : 0.3)).toFixed(2))
        const y = Number(((j - 0.5) * cellY).toFixed(2))
        const id = `${face} ${i}${j}`
        if (!usual) {
          special(more, { id, face, x, y, cuts, markings })
          continue
        }
        const depth = mm(2, thickness * 0.35)
        const kind = pick(['pocket', 'island', 'bore', 'groove', 'v', 'round', 'mark', 'turned'] as const)
        if (kind === 'pocket')
          cuts.push({
            id,
            face,
            depth,
            shape: { rectangle: [mm(16, cellX - 10), mm(14, cellY - 10)], corner: mm(2.2, 5), at: [x, y] }
          })
        else if (kind === 'turned')
          cuts.push({
            id,
            face,
            depth,
            shape: { rectangle: [mm(16, 26), mm(10, 18)], corner: 3.5, at: [x, y], turn: mm(5, 85, 1) }
          })
        else if (kind === 'island')
          cuts.push({
            id,
            face,
            depth,
            shape: { circle: mm(26, Math.min(cellX, cellY) - 8), at: [x, y] },
            islands: [{ circle: mm(5, 9), at: [x, y] }]
          })
        else if (kind === 'bore')
          cuts.push({ id, kind: 'bore', face, depth, shape: { circle: mm(7, 22), at: [x, y] } })
        else if (kind === 'mark')
          markings.push({
            id,
            face,
            width: mm(0.8, 1.6),
            radial: { centre: [x, y], radius: 16, length: mm(3, 8), at: [0, 30, 75, 140, 200, 290] }
          })
        else {
          const [dx, dy] = [mm(8, cellX / 2 - 9), mm(-cellY / 2 + 12, cellY / 2 - 12)]
          const points: [number, number][] = [
            [x - dx, y - dy],
            [x, y + mm(-6, 6)],
            [x + dx, y + dy]
          ]
          if (kind === 'groove')
            cuts.push({ id, kind: 'groove', face, along: { points }, width: mm(6, 11), depth })
          else if (kind === 'round')
            cuts.push({
              id,
              kind: 'groove',
              face,
              along: { points },
              width: pick([6, 8]),
              profile: 'round',
              depth: mm(2, 5)
            })
          else
            cuts.push({
              id,
              kind: 'groove',
              face,
              along: { points },
              profile: 'v',
              angle: pick([60, 90]),
              depth: mm(0.8, 2.4)
            })
        }
      }
    }
  }
  const rebate = more.is(0.3)
  if (rebate)
    cuts.push({
      id: 'rebate',
      kind: 'rebate',
      face: more.pick(['front', 'back']),
      shape: { rectangle: [7, height], at: [-width / 2 + 3.5, 0] },
      depth: 4
    })
  cuts.push({
    id: 'free',
    kind: 'outline',
    face: 'front',
    shape: {
      difference: [
        { rectangle: [width + 13, height + 13] },
        { rectangle: [width, height], corner: mm(4, 12) }
      ]
    },
    through: true
  })
  return {
    castwright: 1,
    name: `Seeded piece ${seed} (invented)`,
    outline: { rectangle: [width, height], corner: 4 },
    down: pick(['back', 'front']),
    mould: {
      margin: 12,
      ears: [
        { rectangle: [40, 40], at: [-width / 2 - 25, 0] },
        { rectangle: [40, 40], at: [width / 2 + 25, 0] }
      ]
    },
    flatten: { back: mm(0.5, 1.5), front: mm(0.5, 1.5) },
    timbers: [
      {
        id: 'plank',
        species: pick(['ash-white', 'walnut-black', 'maple-sugar', 'pine-eastern-white']),
        outline: { rectangle: [width + 24, height * 0.5], at: [0, height * 0.25 + 12] },
        thickness,
        moisture: 8,
        grain: 0
      }
    ],
    pours: [{ id: 'resin', resin: 'deep', fill: 'timber' }],
    cuts,
    markings,
    edges:
      !rebate && more.is(0.3)
        ? [{ face: more.pick(['front', 'back', 'both']), profile: 'chamfer', size: 1.5, way: 'machine' }]
        : [],
    finish: { both: { coat: 'hardwax-oil', coats: 2, grit: 180 } }
  }
}

interface Cell {
  readonly id: string
  readonly face: 'front' | 'back'
  readonly x: number
  readonly y: number
  readonly cuts: Cut[]
  readonly markings: NonNullable<PieceDocument['markings']>
}

// A keyhole slot, a bore with its counterbore, an inlay, or a figure cut as outlines.
function special(more: Chance, { id, face, x, y, cuts, markings }: Cell): void {
  switch (more.pick(['keyhole', 'counterbore', 'inlay', 'figure'] as const)) {
    case 'keyhole':
      cuts.push({
        id,
        kind: 'keyhole',
        face,
        along: {
          points: [
            [x, y - 6],
            [x, y + 8]
          ]
        },
        width: 5,
        head: 10,
        depth: 8,
        lip: 4
      })
      break
    case 'counterbore':
      cuts.push(
        { id, kind: 'bore', face, depth: 7, shape: { circle: 8, at: [x, y] } },
        { id: `${id} head`, kind: 'counterbore', face, depth: 3, shape: { circle: 18 }, around: id }
      )
      break
    case 'inlay':
      cuts.push({
        id,
        kind: 'inlay',
        face,
        depth: 3,
        shape: { rectangle: [22, 16], at: [x, y] },
        plug: { thickness: 4, gap: 0.1 }
      })
      break
    case 'figure':
      markings.push({
        id,
        face,
        width: 1,
        angle: 60,
        figures: 'outline',
        lines: [
          [
            [x - 8, y - 9],
            [x + 8, y - 9]
          ]
        ],
        numerals: [{ text: more.pick(['4', '7', '12', '30']), at: [x, y + 2], height: 11 }]
      })
  }
}
