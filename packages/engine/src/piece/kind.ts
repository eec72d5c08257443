import type { PieceDocument } from './piece-schema.ts'

/** A kind of piece to start from. */
export interface Kind {
  readonly kind: 'panel' | 'tray' | 'tabletop' | 'dial' | 'boards' | 'lamp'
  readonly about: string
}

export const KINDS: readonly Kind[] = [
  { kind: 'panel', about: 'a wall panel: two boards and a clear river between them' },
  { kind: 'tray', about: 'a tray: two boards and an opaque band, hollowed from the front' },
  { kind: 'tabletop', about: 'a table top: two live edges, two deep pours' },
  {
    kind: 'dial',
    about: 'a dial: two halves of a disc, an opaque band between them, twelve filled lines, a movement behind'
  },
  { kind: 'boards', about: 'a batch of boards with a coloured inlay' },
  {
    kind: 'lamp',
    about: 'a lamp foot: two blocks of timber, a white and a clear layer, a channel for a low-voltage strip'
  }
]

const common = (name: string, kind: Kind['kind']) =>
  ({
    castwright: 1,
    name,
    kind,
    about: 'Started from a kind: every figure is invented, change it to yours.'
  }) as const

const board = (id: string, width: number, height: number, x: number, thickness: number) =>
  ({
    id,
    species: 'ash-white',
    outline: { rectangle: [width, height] as [number, number], at: [x, 0] as [number, number] },
    thickness,
    moisture: 8.5
  }) as const

/** The left (-1) or right (1) part of a disc of 292 across, with a band of 90 left open in the middle. */
const half = (id: string, side: -1 | 1) =>
  ({
    id,
    species: 'walnut-black',
    outline: {
      common: [
        { circle: 292 },
        { rectangle: [101, 292] as [number, number], at: [side * 95.5, 0] as [number, number] }
      ]
    },
    thickness: 24,
    moisture: 8.5
  }) satisfies NonNullable<PieceDocument['timbers']>[number]

/** A piece of a kind: the document as a maker would write it. It plans without a stop in the built-in shop. */
export function newPiece(kind: Kind['kind']): PieceDocument {
  return PIECES[kind]()
}

const PIECES: Readonly<Record<Kind['kind'], () => PieceDocument>> = {
  panel: () => ({
    ...common('Wall panel', 'panel'),
    outline: { rectangle: [300, 200], corner: 4 },
    mould: { bearers: 250 },
    timbers: [board('left board', 103, 206, -101.5, 20), board('right board', 103, 206, 101.5, 20)],
    pours: [{ id: 'river', resin: 'deep', fill: 'timber', tint: [{ pigment: 'blue-tint', percent: 0.01 }] }],
    finish: { both: { coat: 'hardwax-oil' } }
  }),
  tray: () => ({
    ...common('Tray', 'tray'),
    outline: { rectangle: [380, 240], corner: 20 },
    mould: { bearers: 250 },
    timbers: [board('left board', 147, 246, -119.5, 28), board('right board', 147, 246, 119.5, 28)],
    pours: [
      {
        id: 'band',
        resin: 'deep',
        fill: 'timber',
        tint: [{ pigment: 'white-paste', percent: 3 }]
      }
    ],
    cuts: [
      {
        id: 'hollow',
        face: 'front',
        shape: { rectangle: [340, 200], corner: 14 },
        finishedDepth: 14
      }
    ],
    finish: { both: { coat: 'hardwax-oil' } }
  }),
  tabletop: () => ({
    ...common('Table top', 'tabletop'),
    outline: { rectangle: [700, 420], corner: 25 },
    mould: { margin: 8, bearers: 250 },
    flatten: { back: 2, front: 2 },
    timbers: [
      {
        id: 'front slab',
        species: 'walnut-black',
        outline: { path: 'M -355 215 H 355 V 62 C 240 30 160 95 40 66 S -220 40 -355 84 Z' },
        thickness: 36,
        moisture: 8.5
      },
      {
        id: 'back slab',
        species: 'walnut-black',
        outline: { path: 'M -355 -215 H 355 V -58 C 230 -90 120 -36 -30 -62 S -250 -30 -355 -70 Z' },
        thickness: 36,
        moisture: 8.5
      }
    ],
    pours: [
      { id: 'lower river', resin: 'deep', depth: 18, tint: [{ pigment: 'blue-tint', percent: 0.01 }] },
      { id: 'upper river', resin: 'deep', fill: 'timber', tint: [{ pigment: 'blue-tint', percent: 0.01 }] }
    ],
    finish: { both: { coat: 'hardwax-oil' } }
  }),
  dial: () => ({
    ...common('Dial', 'dial'),
    outline: { circle: 280 },
    mould: { shape: { circle: 300 }, bearers: 250 },
    timbers: [half('left half', -1), half('right half', 1)],
    pours: [
      {
        id: 'band',
        resin: 'deep',
        fill: 'timber',
        tint: [{ pigment: 'white-paste', percent: 3 }],
        opaque: true
      }
    ],
    cuts: [
      {
        id: 'movement pocket',
        face: 'back',
        shape: { rectangle: [61, 61], corner: 4 },
        finishedDepth: 17,
        for: 'movement'
      },
      { id: 'shaft bore', kind: 'bore', face: 'front', shape: { circle: 8.5 }, through: true, way: 'drill' }
    ],
    hardware: [{ id: 'movement', kind: 'quartz-movement', in: 'movement pocket', face: 'back' }],
    markings: [
      {
        id: 'hours',
        radial: {
          radius: 126,
          length: 14,
          at: [0, 30, 60, 90, 120, 150, 180, 210, 240, 270, 300, 330]
        },
        width: 1.4,
        sandedAfter: 0.3,
        filled: [{ pigment: 'black-paste', percent: 3 }]
      }
    ],
    finish: { both: { coat: 'hardwax-oil' } }
  }),
  boards: () => ({
    ...common('Boards with an inlay', 'boards'),
    quantity: { pieces: 6, loss: 5, certainty: 90 },
    outline: { rectangle: [360, 170], corner: 14 },
    mould: { margin: 4 },
    flatten: { back: 0.5, front: 0.5 },
    timbers: [
      {
        id: 'board',
        species: 'maple-sugar',
        outline: { rectangle: [360, 170] },
        thickness: 22,
        moisture: 8.5
      }
    ],
    pours: [
      {
        id: 'inlay',
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
        along: { path: 'M -170 20 C -90 -50 -40 60 40 0 S 130 -40 170 -10' },
        width: 14,
        finishedDepth: 7
      }
    ],
    finish: { both: { coat: 'hardwax-oil' } }
  }),
  lamp: () => ({
    ...common('Lamp foot', 'lamp'),
    outline: { rectangle: [160, 90], corner: 6 },
    mould: { bearers: 250 },
    timbers: [board('left block', 47, 96, -59.5, 36), board('right block', 47, 96, 59.5, 36)],
    pours: [
      {
        id: 'lower window',
        resin: 'deep',
        depth: 18,
        tint: [{ pigment: 'white-paste', percent: 3 }]
      },
      { id: 'upper window', resin: 'deep', fill: 'timber' }
    ],
    cuts: [
      {
        id: 'strip channel',
        kind: 'pocket',
        face: 'back',
        shape: { rectangle: [60, 12], corner: 3 },
        finishedDepth: 10,
        for: 'strip'
      }
    ],
    hardware: [{ id: 'strip', kind: 'led-strip', in: 'strip channel', face: 'back', length: 50 }],
    finish: { both: { coat: 'hardwax-oil' } }
  })
}
