import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import type { ShopDocument } from '../../src/piece/shop-schema.ts'

/** A drawing the pieces below name. */
export const FILES: Readonly<Record<string, string>> = {
  'leaf.svg':
    '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40"><path id="leaf" d="M0 20C10 0 50 0 60 20C50 40 10 40 0 20Z"/></svg>'
}

/** A framed panel: timber measured and crowned, two pours, stones, a pocket with hardware, coats, edges. */
const panel: PieceDocument = {
  castwright: 1,
  name: 'a framed panel',
  kind: 'panel',
  outline: { rectangle: [300, 200], corner: 12 },
  tolerance: 0.2,
  mould: { margin: 8, bearers: 250, wall: '2 in', corners: [0, 0.4, 0.3, 0] },
  flatten: { back: 1, front: 1.5 },
  timbers: [
    {
      id: 'left',
      species: 'ash-white',
      outline: { rectangle: [60, 120], at: [-90, 0] },
      underside: { rectangle: [70, 130], at: [-90, 0] },
      thickness: '3/4 in',
      crown: { rise: 1, along: 90 },
      moisture: 9,
      sealed: 'hard'
    },
    {
      id: 'right',
      species: 'oak-european',
      outline: { path: 'M 60 -40 L 110 -40 C 120 0 120 20 110 40 L 60 40 Z' },
      thickness: 18,
      measured: {
        from: [60, -40],
        step: [30, 40],
        rises: [
          [0, 0.5, 1],
          [0, 0.2, 0.5],
          [0, 0, 0.4]
        ]
      },
      charred: 1,
      held: 'screws',
      holding: 2000
    }
  ],
  pours: [
    {
      id: 'ground',
      resin: 'medium',
      depth: 8,
      tint: [{ pigment: 'white-paste', percent: 2 }],
      mixing: 'paddle'
    },
    {
      id: 'top',
      resin: 'deep',
      height: 14,
      stones: [{ kind: 'river-gravel', zone: { circle: 50 }, set: 'into the pour' }],
      start: '2026-11-28T09:00+01:00'
    }
  ],
  cuts: [{ id: 'pocket', face: 'back', shape: { rectangle: [56, 56], corner: 4 }, finishedDepth: 5 }],
  hardware: [{ kind: 'quartz-movement', at: [0, 0], in: 'pocket' }],
  edges: [{ profile: 'chamfer', size: 2 }],
  finish: { front: { coat: 'hardwax-oil', coats: 2, grit: 240 }, back: { coat: 'none' } },
  climate: { dry: { temperature: 21, humidity: 35 }, damp: { temperature: '64 °F', humidity: 65 } },
  wanted: '2026-12-19'
}

/** A dial: ring of stones, scale of lines filled, inlay in a groove, former, flood, batch. */
const dial: PieceDocument = {
  castwright: 1,
  name: 'dials',
  outline: { circle: 160 },
  down: 'front',
  tolerance: 0.5,
  quantity: { pieces: 6, loss: 8, certainty: 90, gang: 2 },
  mould: {
    shape: { rectangle: [180, 180] },
    ears: [{ rectangle: [40, 40], at: [100, 0] }],
    formers: [{ id: 'hole', shape: { circle: 12 } }],
    base: 'melamine-particleboard-18'
  },
  pours: [
    {
      resin: 'medium',
      mass: '8 oz',
      marbling: [
        { share: 60, tint: [] },
        { share: 40, tint: [{ pigment: 'white-paste', percent: 3 }] }
      ],
      opaque: true,
      stones: [{ kind: 'river-gravel', placed: [{ at: [40, 10], size: [22, 20, 6] }] }],
      startTemperature: 24,
      batches: 2
    },
    { kind: 'inlay', resin: 'thin', into: ['ring'], fill: 'cut' }
  ],
  cuts: [
    {
      id: 'ring',
      face: 'front',
      kind: 'groove',
      along: { path: 'M -50 0 A 50 50 0 0 1 50 0' },
      width: 4,
      profile: 'round',
      depth: 2
    },
    {
      face: 'back',
      kind: 'bore',
      shape: { circle: 26, at: [0, 25] },
      depth: 4,
      mask: true,
      toleranceClass: 'H7',
      for: 'magnet'
    }
  ],
  markings: [
    {
      radial: { radius: 74, length: 8, at: [0, 30, 60, 90] },
      width: 1.4,
      filled: [{ pigment: 'white-paste', percent: 4 }],
      numerals: [{ text: '12', at: [0, 60] }]
    },
    { face: 'back', linear: { from: [-40, -50], to: [40, -50], length: 6, at: [0, 0.5, 1] } }
  ],
  hardware: [
    {
      id: 'magnet',
      kind: 'magnet-disc',
      diameter: 25,
      toleranceClass: 'h9',
      film: '0.02 mm',
      hand: 30,
      glass: 5
    },
    { kind: 'felt-foot', width: 12, length: 12, corner: 2, tolerance: 0.1 }
  ],
  finish: { both: { coat: 'hardwax-oil' } },
  food: 'front',
  sun: true
}

/** A board with dams, a drawing from a file, shapes of shapes and the steps written out. */
const board: PieceDocument = {
  castwright: 1,
  name: 'a river board',
  outline: { union: [{ rectangle: [220, 120] }, { circle: 90, at: [110, 0] }] },
  tolerance: 0.3,
  mould: {
    margin: 10,
    dams: [
      {
        line: [
          [0, -80],
          [0, 80]
        ]
      }
    ]
  },
  timbers: [
    {
      id: 'leaf',
      species: 'walnut-black',
      outline: { file: 'leaf.svg', part: 'leaf', at: [20, 20] },
      thickness: 15,
      base: 3
    }
  ],
  pours: [
    { id: 'base', resin: 'medium', depth: 3 },
    { id: 'fill', resin: 'deep', fill: 'timber', after: '6 h', mixed: 900 },
    { id: 'coat', kind: 'flood', face: 'front', resin: 'thin', depth: 1.5, opaque: true }
  ],
  cuts: [
    { id: 'slot', face: 'back', shape: { difference: [{ circle: 40 }, { circle: 20 }] }, through: true }
  ],
  steps: [
    { do: 'make mould' },
    { do: 'pour', what: 'base' },
    { do: 'wait', for: '5 h' },
    { do: 'set timber', what: 'leaf' },
    { do: 'pour', what: 'fill' },
    { do: 'demould' },
    { do: 'flatten', face: 'front' },
    { do: 'turn over' },
    { do: 'flatten', face: 'back', by: 1 },
    { do: 'cut', what: 'slot' },
    { do: 'sand', face: 'front', by: 0.3 },
    { do: 'pour', what: 'coat' },
    { do: 'coat', face: 'both' },
    { do: 'deliver' }
  ],
  finish: { both: { coat: 'hardwax-oil' } }
}

/** Pieces of every kind of entry, small enough to be planned some thousand times. */
export const PIECES: readonly PieceDocument[] = [panel, dial, board]

/** A shop with a label, prices and a cold room. */
export const SHOP: ShopDocument = {
  castwright: 1,
  name: 'the shed',
  climate: { night: '50 °F', day: 18, humidity: 60, doubt: 3 },
  storage: { temperature: 12, humidity: 65 },
  hours: { sat: ['09:00-17:00'] },
  byHand: { router: '1/64 in', drill: 0.15 },
  vessels: [{ capacity: '1 qt', diameter: 110, count: 2 }],
  scale: { resolution: 0.1, most: 3000 },
  resins: [
    {
      id: 'medium',
      family: 'epoxy',
      like: 'medium',
      ratio: { a: 2, b: 1, by: 'volume' },
      densityA: 1.1,
      densityB: 0.98,
      greatestDepth: 10,
      leastTemperature: 15,
      potLife: { minutes: 40, mass: 150 },
      packs: [{ mass: 1500, price: 42 }],
      stock: 300
    }
  ],
  cutters: [{ id: 'six', kind: 'end mill', diameter: 6, length: 25 }],
  prices: [{ item: 'white-paste', unit: 'g', pack: 50, price: 9 }]
}

/** Readings of the panel. */
export const READINGS: readonly object[] = [
  { kind: 'moisture', id: 'r-000001', at: '2026-11-20T09:00+01:00', timber: 'left', moisture: 11 },
  { kind: 'poured', id: 'r-000002', at: '2026-11-28T09:30+01:00', pour: 'ground', mass: 500 },
  { kind: 'cup check', id: 'r-000003', at: '2026-11-28T08:00+01:00', volume: 100, mass: 99 }
]
