import type { PieceDocument } from '../../src/piece/piece-schema.ts'

/**
 * 80 × 50 mm in 20 mm of waste, nothing flattened: an opaque layer of 8 with stones from 2 to 6 at the right and a
 * strip of light 3 high on its floor at the far left, 12 of clear over it. From the back a channel 10 wide, 7 deep;
 * from the front a pocket of 30 × 20, 6 deep, then it is cut out. Invented.
 */
export const LAYERED: PieceDocument = {
  castwright: 1,
  name: 'Layers to be cut (invented)',
  outline: { rectangle: [80, 50] },
  flatten: { back: 0, front: 0 },
  mould: { margin: 20 },
  pours: [
    {
      id: 'low',
      resin: 'medium',
      depth: 8,
      tint: [{ pigment: 'white-paste', percent: 3 }],
      opaque: true,
      stones: [{ kind: 'river-gravel', zone: { rectangle: [20, 20], at: [25, 10] }, from: 2, to: 6 }]
    },
    { id: 'high', resin: 'medium', depth: 12 }
  ],
  hardware: [
    { id: 'strip', kind: 'led-strip', at: [25, -15], width: 8, length: 20, depth: 3, castIn: 'low' }
  ],
  holding: { by: 'screws in the waste', keepClear: [{ circle: 8, at: [0, 38] }] },
  pins: {
    at: [
      [-54, 0],
      [54, 0]
    ],
    diameter: 6,
    depth: 12
  },
  cuts: [
    {
      id: 'channel',
      face: 'back',
      kind: 'slot',
      shape: { rectangle: [10, 30], corner: 4, at: [-28, 0] },
      depth: 7
    },
    { id: 'pocket', face: 'front', kind: 'pocket', shape: { rectangle: [30, 20], corner: 3 }, depth: 6 },
    {
      id: 'free',
      kind: 'outline',
      face: 'front',
      shape: { difference: [{ rectangle: [93, 63] }, { rectangle: [80, 50] }] },
      through: true
    }
  ],
  finish: { both: { coat: 'hardwax-oil', coats: 2, grit: 180 } }
}
