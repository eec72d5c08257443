import type { Pair } from '../harness.ts'
import { PLAIN } from '../harness.ts'

const pour = (more: object, shop: object = {}) => ({
  piece: { ...PLAIN, pours: [{ id: 'clear', resin: 'deep', depth: 20, ...more }] },
  shop: { castwright: 1 as const, ...shop }
})
const slab = (pours: readonly object[], more: object = {}) =>
  ({
    castwright: 1,
    name: 'a slab of resin',
    outline: { rectangle: [300, 200] },
    mould: { margin: 6, bearers: 250 },
    pours,
    ...more
  }) as typeof PLAIN

export const pairs: readonly Pair[] = [
  {
    id: 'bubbles-stay',
    about: 'a thick layer of a fast coating resin',
    sound: pour({ resin: 'thin', depth: 3 }),
    edit: { op: 'replace', path: '/pours/0/depth', value: 10 },
    severity: 'caution'
  },
  {
    id: 'bubbles-stay',
    about: 'a fast coat beaten up with a paddle',
    sound: pour({ resin: 'thin', depth: 3 }),
    edit: { op: 'add', path: '/pours/0/mixing', value: 'paddle' },
    severity: 'caution'
  },
  {
    id: 'warm-parts',
    about: 'parts of a medium resin warmed to 55 °C',
    sound: pour({ resin: 'medium', depth: 6, startTemperature: 25 }),
    edit: { op: 'replace', path: '/pours/0/startTemperature', value: 55 },
    severity: 'stop'
  },
  {
    id: 'timber-air',
    about: 'timber that is not sealed beside a pour that warms',
    sound: pour({ resin: 'medium', depth: 9 }),
    edit: { op: 'add', path: '/timbers/0/sealed', value: 'no' },
    severity: 'caution'
  },
  {
    id: 'porous-inclusion',
    about: 'seed pods that are not sealed',
    sound: {
      piece: slab([
        {
          id: 'block',
          resin: 'medium',
          depth: 9,
          stones: [{ kind: 'seed-pods', all: true, sealed: true, heated: 120 }]
        }
      ])
    },
    edit: { op: 'replace', path: '/pours/0/stones/0/sealed', value: false },
    severity: 'caution'
  },
  {
    id: 'porous-inclusion',
    about: 'cones heated to less than the resin may warm them to',
    sound: {
      piece: slab([
        {
          id: 'block',
          resin: 'medium',
          depth: 9,
          stones: [{ kind: 'pine-cones', all: true, sealed: true, heated: 120 }]
        }
      ])
    },
    edit: { op: 'replace', path: '/pours/0/stones/0/heated', value: 25 },
    severity: 'caution'
  },
  {
    id: 'sharp-inclusion',
    about: 'seed pods in a block eight times as deep',
    sound: {
      piece: slab([{ id: 'block', resin: 'deep', depth: 10, stones: [{ kind: 'seed-pods', all: true }] }])
    },
    edit: { op: 'replace', path: '/pours/0/depth', value: 80 },
    severity: 'caution',
    noFix: 'a depth that keeps the core cool is what pour-heat offers'
  },
  {
    id: 'warm-parts',
    about: 'parts at 35 °C for thirty millimetres of a fast resin: its batches change with the bath',
    sound: {
      piece: {
        castwright: 1,
        name: 'a thick slab',
        outline: { rectangle: [400, 300] },
        pours: [{ id: 'slab', resin: 'thin', depth: 30 }]
      }
    },
    edit: { op: 'add', path: '/pours/0/startTemperature', value: 35 },
    severity: 'stop'
  },
  {
    id: 'stones-large',
    about: 'pebbles from 16 mm on in a pour of 10 mm',
    sound: {
      piece: slab([
        { id: 'layer', resin: 'deep', depth: 24, stones: [{ kind: 'river-pebbles', zone: { circle: 100 } }] }
      ])
    },
    edit: { op: 'replace', path: '/pours/0/depth', value: 10 },
    severity: 'caution',
    noFix: 'another kind or another depth is the maker’s to choose'
  },
  {
    id: 'stones-sink',
    about: 'coffee beans put into the pour instead of on the tacky layer',
    sound: {
      piece: slab([
        { id: 'first', resin: 'deep', depth: 6 },
        {
          id: 'second',
          resin: 'deep',
          height: 24,
          stones: [{ kind: 'coffee-beans', zone: { circle: 60 }, set: 'on the tacky layer', sealed: true }]
        }
      ])
    },
    edit: { op: 'replace', path: '/pours/1/stones/0/set', value: 'into the pour' },
    severity: 'caution'
  },
  {
    id: 'stones-sink',
    about: 'gravel kept off the floor by timing in a layer of 9 mm',
    sound: {
      piece: slab([
        {
          id: 'layer',
          resin: 'deep',
          depth: 9,
          stones: [{ kind: 'river-gravel', zone: { circle: 60 }, from: 3, to: 8 }]
        }
      ])
    },
    edit: { op: 'add', path: '/pours/0/stones/0/set', value: 'into the pour' },
    severity: 'caution',
    noFix: 'there is no layer below to set them on: the pour is to be parted, and where is the maker’s to say'
  },
  {
    id: 'stones-sink',
    about: 'small gravel heaped before the resin comes',
    sound: {
      piece: slab([
        { id: 'bed', resin: 'deep', depth: 24, stones: [{ kind: 'crushed-glass', zone: { circle: 100 } }] }
      ])
    },
    edit: { op: 'add', path: '/pours/0/stones/0/set', value: 'before the pour' },
    severity: 'caution',
    noFix: 'there is no layer below to set them on: the pour is to be parted, and where is the maker’s to say'
  },
  {
    id: 'stones-sink',
    about: 'gravel drawn more solid than it packs',
    sound: {
      piece: slab([
        {
          id: 'bed',
          resin: 'deep',
          depth: 24,
          stones: [{ kind: 'river-gravel', zone: { circle: 100 }, fill: 0.6 }]
        }
      ])
    },
    edit: { op: 'replace', path: '/pours/0/stones/0/fill', value: 0.75 },
    severity: 'caution'
  },
  {
    id: 'unmixed',
    about: 'one cup instead of two',
    sound: pour({ mixing: 'two cups' }),
    edit: { op: 'replace', path: '/pours/0/mixing', value: 'one cup' },
    severity: 'caution'
  },
  {
    id: 'unmixed',
    about: 'two minutes from the first stir until it is out',
    sound: pour({ minutes: 12 }),
    edit: { op: 'replace', path: '/pours/0/minutes', value: 2 },
    severity: 'caution'
  },
  {
    id: 'cold-mix',
    about: 'a coating resin mixed at 8 °C',
    sound: pour({ resin: 'thin', depth: 3, startTemperature: 21 }),
    edit: { op: 'replace', path: '/pours/0/startTemperature', value: 8 },
    severity: 'caution'
  },
  {
    id: 'cure-short',
    about: 'a slow resin in a shed of 8 to 12 °C',
    sound: pour({}, { climate: { night: 18, day: 22, humidity: 40 } }),
    on: 'shop',
    edit: { op: 'replace', path: '/climate', value: { night: 8, day: 12, humidity: 40 } },
    severity: 'caution',
    noFix: 'the room is the shop’s, not the piece’s'
  },
  {
    id: 'level-drop',
    about: 'a pour level with the timber and nothing taken off the front',
    sound: {
      piece: { ...PLAIN, pours: [{ id: 'clear', resin: 'deep', depth: 20 }], flatten: { back: 1, front: 0 } }
    },
    edit: { op: 'replace', path: '/pours/0', value: { id: 'clear', resin: 'deep', fill: 'timber' } },
    severity: 'caution'
  },
  {
    id: 'narrow-recess',
    about: 'dots of 2.5 mm, 4 mm deep, filled in one go',
    sound: {
      piece: {
        ...PLAIN,
        cuts: [{ id: 'dot', face: 'front', shape: { circle: 8, at: [100, 0] }, depth: 4 }],
        pours: [...PLAIN.pours!, { id: 'fill', kind: 'inlay', resin: 'medium', into: ['dot'], fill: 'cut' }]
      }
    },
    edit: { op: 'replace', path: '/cuts/0/shape/circle', value: 2.5 },
    severity: 'caution'
  },
  {
    id: 'narrow-recess',
    about: 'a groove of 2 mm, 3 mm deep, filled in one go',
    sound: {
      piece: {
        ...PLAIN,
        cuts: [
          {
            id: 'stroke',
            kind: 'groove',
            face: 'front',
            along: {
              points: [
                [80, -40],
                [80, 40]
              ]
            },
            width: 4,
            depth: 3
          }
        ],
        pours: [
          ...PLAIN.pours!,
          { id: 'fill', kind: 'inlay', resin: 'medium', into: ['stroke'], fill: 'cut' }
        ]
      }
    },
    edit: { op: 'replace', path: '/cuts/0/width', value: 2 },
    severity: 'caution'
  },
  {
    id: 'flood-thin',
    about: 'a clear coat of 0.5 mm of which 0.4 come off again',
    sound: {
      piece: {
        ...PLAIN,
        flatten: { back: 1, front: 0.4 },
        pours: [...PLAIN.pours!, { id: 'coat', kind: 'flood', resin: 'thin', depth: 1.5 }],
        steps: [
          { do: 'make mould' },
          { do: 'set timber' },
          { do: 'pour', what: 'clear' },
          { do: 'wait', for: '7 d' },
          { do: 'demould' },
          { do: 'turn over' },
          { do: 'flatten', face: 'back' },
          { do: 'turn over' },
          { do: 'pour', what: 'coat' },
          { do: 'wait', for: '7 d' },
          { do: 'flatten', face: 'front' },
          { do: 'coat', face: 'both' },
          { do: 'wait', for: '14 d' },
          { do: 'deliver' }
        ]
      }
    },
    edit: { op: 'replace', path: '/pours/1/depth', value: 0.5 },
    severity: 'caution'
  }
]
