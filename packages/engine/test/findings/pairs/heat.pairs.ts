import type { Pair } from '../harness.ts'
import { PLAIN } from '../harness.ts'

const pour = (more: object) => ({ ...PLAIN, pours: [{ id: 'clear', resin: 'deep', depth: 20, ...more }] })
const shop = (resin: object, more: object = {}) => ({
  castwright: 1 as const,
  resins: [{ id: 'own', like: 'deep' as const, ...resin }],
  ...more
})
// A given order with a machine step; the waits are what the pairs change.
const steps = (...more: readonly object[]) => [
  { do: 'make mould' },
  { do: 'set timber' },
  ...more,
  { do: 'turn over' },
  { do: 'flatten', face: 'front' },
  { do: 'coat', face: 'both' },
  { do: 'wait', for: '14 d' },
  { do: 'deliver' }
]

// A river so narrow that the timber beside it delays the gel of its face.
const layers = (...more: readonly object[]) => ({
  ...PLAIN,
  timbers: PLAIN.timbers!.map((t, i) => ({
    ...t,
    outline: { rectangle: [135, 200] as [number, number], at: [i === 0 ? -82 : 82, 0] as [number, number] }
  })),
  pours: [
    { id: 'low', resin: 'deep', depth: 10 },
    { id: 'high', resin: 'deep', depth: 10, ...more[0] }
  ]
})

const measured = (temperature: number) => ({
  kind: 'temperature',
  pour: 'clear',
  temperature,
  id: 'r-2026-11-28-0001',
  at: '2026-11-28T15:00+01:00'
})

export const pairs: readonly Pair[] = [
  {
    id: 'reading-hot',
    about: 'a thermometer in the pour that reads 100 °C',
    sound: { piece: pour({}), readings: [measured(41)] },
    on: 'readings',
    edit: { op: 'replace', path: '/0/temperature', value: 100 },
    severity: 'stop',
    noFix: 'it is hot already'
  },
  {
    id: 'reading-hot',
    about: 'a pour that read 120 °C and has cooled since',
    sound: { piece: pour({}), readings: [measured(41), { ...measured(25), at: '2026-11-29T09:00+01:00' }] },
    on: 'readings',
    edit: { op: 'replace', path: '/0/temperature', value: 120 },
    severity: 'caution',
    noFix: 'it has been hot already'
  },
  {
    id: 'reading-hot',
    about: 'a thermometer in the pour that reads 70 °C',
    sound: { piece: pour({}), readings: [measured(41)] },
    on: 'readings',
    edit: { op: 'replace', path: '/0/temperature', value: 70 },
    severity: 'caution',
    noFix: 'it is hot already'
  },
  {
    id: 'near-edge',
    about: 'a pour so deep that two degrees of room would take it past its limit',
    sound: { piece: pour({ depth: 28 }), whole: { rounds: 4 } },
    edit: { op: 'replace', path: '/pours/0/depth', value: 34 },
    severity: 'note',
    noFix: 'it is within its limit'
  },
  {
    id: 'pours-unsettled',
    about: 'a pour that waits for a window that the first round of the cast moved',
    sound: { piece: layers({ after: '20 h' }), whole: { rounds: 1 } },
    edit: { op: 'remove', path: '/pours/1/after' },
    severity: 'caution',
    noFix: 'which wait the maker wants is for the maker to say'
  },
  {
    id: 'label-depth',
    about: 'a pour of 26 mm in a resin whose label allows 25',
    sound: { piece: pour({ resin: 'own', depth: 25 }), shop: shop({ greatestDepth: 25 }) },
    edit: { op: 'replace', path: '/pours/0/depth', value: 26 },
    severity: 'stop'
  },
  {
    id: 'label-depth',
    about: 'a pour level with the timber in a resin whose label allows half of that',
    sound: {
      piece: { ...PLAIN, pours: [{ id: 'clear', resin: 'own', fill: 'timber' }] },
      shop: shop({ greatestDepth: 25 })
    },
    on: 'shop',
    edit: { op: 'replace', path: '/resins/0/greatestDepth', value: 10 },
    severity: 'stop'
  },
  {
    id: 'label-depth',
    about: 'a second pour to a height beyond what the label allows over the first',
    sound: {
      piece: {
        ...PLAIN,
        pours: [
          { id: 'first', resin: 'own', depth: '8 mm' },
          { id: 'second', resin: 'own', height: '18 mm' }
        ]
      },
      shop: shop({ greatestDepth: 10 })
    },
    edit: { op: 'replace', path: '/pours/1/height', value: '20 mm' },
    severity: 'stop'
  },
  {
    id: 'batch-heat',
    about: 'the mix of a fast resin left an hour in one cup',
    sound: { piece: pour({ resin: 'thin', depth: 3, batches: 1, minutes: 4 }) },
    edit: { op: 'replace', path: '/pours/0/minutes', value: 60 },
    severity: 'stop'
  },
  {
    id: 'batch-heat',
    about: 'stirring and pouring that take most of the time a batch lasts',
    sound: { piece: pour({ resin: 'thin', depth: 2, batches: 1, minutes: 4 }) },
    edit: { op: 'replace', path: '/pours/0/minutes', value: 14 },
    severity: 'caution'
  },
  {
    id: 'batch-heat',
    about: 'all of a pour mixed in one batch where the vessel takes half',
    sound: { piece: pour({ batches: 3, vessel: '500 ml' }) },
    edit: { op: 'replace', path: '/pours/0/batches', value: 1 },
    severity: 'stop'
  },
  {
    id: 'leftover-cup',
    about: 'twice as much of a fast resin mixed as goes in',
    sound: { piece: pour({ resin: 'thin', depth: 3, mixed: 110 }) },
    edit: { op: 'replace', path: '/pours/0/mixed', value: 260 },
    severity: 'caution'
  },
  {
    id: 'leftover-cup',
    about: 'all of a large pour mixed in one bucket that keeps a twentieth of it',
    sound: {
      piece: {
        ...pour({ resin: 'own', depth: 6, vessel: '1 l', batches: 20 }),
        outline: { rectangle: [1000, 600] }
      },
      shop: { ...shop({ like: 'medium' }), leftover: 15 }
    },
    edit: { op: 'replace', path: '/pours/0/batches', value: 5 },
    severity: 'caution'
  },
  {
    id: 'resin-family',
    about: 'a polyester instead of an epoxy',
    sound: { piece: pour({}) },
    edit: { op: 'replace', path: '/pours/0/resin', value: 'polyester' },
    severity: 'caution',
    noFix: 'which resin it is cannot be mended: the finding says what the family asks for'
  },
  {
    id: 'resin-family',
    about: 'pine cones that are not dry in polyurethane',
    sound: {
      piece: pour({ stones: [{ kind: 'pine-cones', all: true, dry: 'fresh' }] })
    },
    edit: { op: 'replace', path: '/pours/0/resin', value: 'polyurethane' },
    severity: 'stop',
    noFix: 'the family is what it is; the damp cones have their own fix'
  },
  {
    id: 'sharp-inclusion',
    about: 'a casting with pine cones out of the mould after an hour',
    sound: {
      piece: {
        ...pour({ resin: 'medium', depth: 6, stones: [{ kind: 'pine-cones', all: true }] }),
        steps: steps(
          { do: 'set stones', what: 'clear' },
          { do: 'pour', what: 'clear' },
          { do: 'wait', for: '4 d' },
          { do: 'demould' },
          { do: 'wait', for: '7 d' }
        )
      } as typeof PLAIN
    },
    edit: { op: 'replace', path: '/steps/4/for', value: 60 },
    severity: 'caution'
  },
  {
    id: 'cold-room',
    about: 'nights of 12 °C under an epoxy that wants 15',
    sound: { piece: PLAIN, shop: { castwright: 1, climate: { night: 18, day: 21 } } },
    on: 'shop',
    edit: { op: 'replace', path: '/climate/night', value: 12 },
    severity: 'caution',
    noFix: 'the room is the shop’s, not the piece’s'
  },
  {
    id: 'cold-room',
    about: 'a shop that stays under the label’s least temperature all day',
    sound: {
      piece: pour({ resin: 'own' }),
      shop: shop({ leastTemperature: '60 °F' }, { climate: { night: 18, day: 20 } })
    },
    on: 'shop',
    edit: { op: 'replace', path: '/climate', value: { night: 9, day: 14 } },
    severity: 'stop',
    noFix: 'the room is the shop’s, not the piece’s'
  },
  {
    id: 'damp-night',
    about: 'air so damp that the night crosses its dew point',
    sound: { piece: PLAIN, shop: { castwright: 1, climate: { night: 18, day: 24, humidity: 50 } } },
    on: 'shop',
    edit: { op: 'replace', path: '/climate/humidity', value: 80 },
    severity: 'caution',
    noFix: 'the weather is not the piece’s'
  },
  {
    id: 'damp-night',
    about: 'a cold and damp shed, day and night nearly alike',
    sound: { piece: PLAIN, shop: { castwright: 1, climate: { night: 11, day: 13, humidity: 60 } } },
    on: 'shop',
    edit: { op: 'replace', path: '/climate/humidity', value: 75 },
    severity: 'caution',
    noFix: 'the weather is not the piece’s'
  },
  {
    id: 'recoat-window',
    about: 'a second pour an hour after the first',
    sound: {
      piece: {
        ...PLAIN,
        pours: [
          { id: 'first', resin: 'medium', depth: 5 },
          { id: 'second', resin: 'medium', height: 10, after: '13 h' }
        ]
      }
    },
    edit: { op: 'replace', path: '/pours/1/after', value: '1 h' },
    severity: 'caution'
  },
  {
    id: 'recoat-window',
    about: 'a second pour three days after the first',
    sound: {
      piece: {
        ...PLAIN,
        pours: [
          { id: 'first', resin: 'medium', depth: 5 },
          { id: 'second', resin: 'medium', height: 10, after: 780 }
        ]
      }
    },
    edit: { op: 'replace', path: '/pours/1/after', value: 4320 },
    severity: 'caution'
  },
  {
    id: 'machine-too-soon',
    about: 'flattened on the fifth day',
    sound: {
      piece: {
        ...pour({}),
        steps: steps(
          { do: 'pour', what: 'clear' },
          { do: 'wait', for: '2 d' },
          { do: 'demould' },
          { do: 'wait', for: '5 d' }
        )
      } as typeof PLAIN
    },
    edit: { op: 'replace', path: '/steps/5/for', value: '3 d' },
    severity: 'caution'
  },
  {
    id: 'machine-too-soon',
    about: 'an order of steps without any wait',
    sound: {
      piece: {
        ...pour({}),
        steps: steps({ do: 'pour', what: 'clear' }, { do: 'demould' }, { do: 'wait', for: '7 d' })
      } as typeof PLAIN
    },
    edit: { op: 'remove', path: '/steps/4' },
    severity: 'stop'
  },
  {
    id: 'machine-too-soon',
    about: 'the flattening moved to the second day by its moment',
    sound: {
      piece: {
        ...pour({}),
        steps: [
          { do: 'make mould' },
          { do: 'set timber' },
          { do: 'pour', what: 'clear', at: '2026-03-02T09:00+01:00' },
          { do: 'demould' },
          { do: 'turn over' },
          { do: 'flatten', face: 'front', at: '2026-03-10T09:00+01:00' },
          { do: 'coat', face: 'both' },
          { do: 'wait', for: '14 d' },
          { do: 'deliver' }
        ]
      }
    },
    edit: { op: 'replace', path: '/steps/5/at', value: '2026-03-04T09:00+01:00' },
    severity: 'stop'
  },
  {
    id: 'load-too-soon',
    about: 'delivered the day after the last coat',
    sound: {
      piece: {
        ...pour({}),
        steps: steps({ do: 'pour', what: 'clear' }, { do: 'demould' }, { do: 'wait', for: '7 d' })
      } as typeof PLAIN
    },
    edit: { op: 'replace', path: '/steps/8/for', value: '1 d' },
    severity: 'stop'
  },
  {
    id: 'load-too-soon',
    about: 'a magnet pressed into resin on its fifth day',
    sound: {
      piece: {
        ...pour({}),
        finish: {},
        cuts: [{ id: 'hole', face: 'front', kind: 'bore', shape: { circle: 10 }, depth: 4 }],
        hardware: [{ id: 'magnet', kind: 'magnet-disc', in: 'hole', face: 'front', fitting: 'press' }],
        steps: [
          { do: 'make mould' },
          { do: 'set timber' },
          { do: 'pour', what: 'clear' },
          { do: 'wait', for: '7 d' },
          { do: 'demould' },
          { do: 'turn over' },
          { do: 'flatten', face: 'front' },
          { do: 'cut', what: 'hole' },
          { do: 'fit', what: 'magnet' },
          { do: 'deliver' }
        ]
      }
    },
    edit: { op: 'replace', path: '/steps/3/for', value: '5 d' },
    severity: 'caution'
  }
]
