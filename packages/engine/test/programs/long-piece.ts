import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import type { ShopDocument } from '../../src/piece/shop-schema.ts'
import { SHOP } from './machine-piece.ts'

/** The drawer of the seeded pieces with longer cutters for a thicker top (invented). */
export const LONG_SHOP: ShopDocument = {
  ...SHOP,
  machine: { x: 800, y: 600, z: 110, error: 0.05, spindle: 1100 },
  cutters: [...SHOP.cutters!, { id: 'straight 8', kind: 'flat-end-mill', diameter: 8, length: 42, reach: 50 }]
}

/**
 * A tabletop 2400 × 420 in 34 mm of waste: boards and a river of resin. Along the front a groove over its whole length
 * and a pocket longer than the bed; short cuts here and there, among them one on a boundary between positions; from the
 * back two pockets; then it is cut out. Invented.
 */
export function longPiece(over: Partial<PieceDocument> = {}): PieceDocument {
  return {
    castwright: 1,
    name: 'Long tabletop (invented)',
    outline: { rectangle: [2400, 420] },
    mould: { margin: 34 },
    flatten: { back: 1, front: 1 },
    timbers: [
      {
        id: 'plank',
        species: 'ash-white',
        outline: { rectangle: [2468, 200], at: [0, 144] },
        thickness: 30,
        moisture: 8,
        grain: 0
      }
    ],
    pours: [{ id: 'river', resin: 'deep', fill: 'timber' }],
    cuts: [
      {
        id: 'long groove',
        kind: 'groove',
        face: 'front',
        along: {
          points: [
            [-1150, -150],
            [0, -140],
            [1150, -150]
          ]
        },
        width: 8,
        depth: 5
      },
      {
        id: 'tray',
        face: 'front',
        shape: { rectangle: [1300, 60], corner: 6, at: [-200, 40] },
        depth: 6
      },
      { id: 'hole', kind: 'bore', face: 'front', shape: { circle: 40, at: [-590, 150] }, depth: 10 },
      { id: 'seat', face: 'front', shape: { rectangle: [50, 40], corner: 4, at: [980, 120] }, depth: 8 },
      { id: 'left foot', face: 'back', shape: { rectangle: [90, 70], corner: 5, at: [-1000, 0] }, depth: 8 },
      { id: 'right foot', face: 'back', shape: { rectangle: [90, 70], corner: 5, at: [1000, 0] }, depth: 8 },
      {
        id: 'free',
        kind: 'outline',
        face: 'front',
        shape: { difference: [{ rectangle: [2417, 437] }, { rectangle: [2400, 420], corner: 10 }] },
        through: true,
        tabs: { count: 8, width: 10, thick: 3 }
      }
    ],
    finish: { both: { coat: 'hardwax-oil', coats: 2, grit: 180 } },
    ...over
  }
}
