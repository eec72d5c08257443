import type { Pair } from '../harness.ts'
import { PLAIN } from '../harness.ts'

// The left timber with more said of it.
const timber = (more: object) => ({
  ...PLAIN,
  timbers: PLAIN.timbers!.map((t, i) => (i === 0 ? { ...t, ...more } : t))
})

// One timber in the middle of resin.
const inlaid = (width: number, more: object = {}) => ({
  ...PLAIN,
  timbers: [
    {
      id: 'bar',
      species: 'ash-white',
      outline: { rectangle: [200, width] as [number, number], corner: 8 },
      thickness: 20,
      moisture: 8.5,
      ...more
    }
  ]
})

// Two planks with their grain along the strip of resin between them, 400 mm wide.
const wide = (more: object = {}) => ({
  ...PLAIN,
  outline: { rectangle: [900, 400] as [number, number] },
  timbers: [-1, 1].map(side => ({
    id: side < 0 ? 'left' : 'right',
    species: 'ash-white',
    outline: { rectangle: [400, 400] as [number, number], at: [side * 250, 0] as [number, number] },
    thickness: 20,
    moisture: 8.5,
    grain: 90,
    ...more
  }))
})
const still = { dry: { temperature: 20, humidity: 45 }, damp: { temperature: 20, humidity: 47 } }

const ordered = (wait: string) => ({
  ...PLAIN,
  pours: [{ id: 'seal', kind: 'seal' as const, resin: 'medium', depth: 0.2 }, ...PLAIN.pours],
  steps: [
    { do: 'pour', what: 'seal' },
    { do: 'wait', for: wait },
    { do: 'make mould' },
    { do: 'set timber' },
    { do: 'pour', what: 'clear' },
    { do: 'wait', for: '9 d' },
    { do: 'demould' },
    { do: 'flatten', face: 'front' },
    { do: 'turn over' },
    { do: 'flatten', face: 'back' },
    { do: 'coat', face: 'both' },
    { do: 'wait', for: '21 d' },
    { do: 'deliver' }
  ] as NonNullable<(typeof PLAIN)['steps']>
})

export const pairs: readonly Pair[] = [
  {
    id: 'timber-floats',
    about: 'timber that nothing holds down',
    sound: { piece: timber({ held: 'screws' }) },
    edit: { op: 'replace', path: '/timbers/0/held', value: 'nothing' },
    severity: 'stop'
  },
  {
    id: 'timber-floats',
    about: 'weights that hold the lift but no knock',
    sound: { piece: timber({ holding: 1000 }) },
    edit: { op: 'replace', path: '/timbers/0/holding', value: 230 },
    severity: 'caution'
  },
  {
    id: 'timber-wet',
    about: 'timber at 16 % for a heated room',
    sound: { piece: timber({ moisture: '9 %' }) },
    edit: { op: 'replace', path: '/timbers/0/moisture', value: '16 %' },
    severity: 'stop'
  },
  {
    id: 'timber-wet',
    about: 'timber at 12 % for a heated room',
    sound: { piece: timber({ moisture: 9 }) },
    edit: { op: 'replace', path: '/timbers/0/moisture', value: 12 },
    severity: 'caution'
  },
  {
    id: 'timber-wet',
    about: 'a reading of 15 %',
    sound: { piece: PLAIN, readings: [] },
    on: 'readings',
    edit: {
      op: 'add',
      path: '/-',
      value: {
        id: 'moisture-01',
        kind: 'moisture',
        timber: 'left',
        moisture: 15,
        at: '2026-03-02T09:00+01:00'
      }
    },
    severity: 'stop',
    noFix: 'the timber was measured: it dries in its stack, and then a new reading says so'
  },
  {
    id: 'bark-left',
    about: 'bark on the edge that meets the resin',
    sound: { piece: timber({ bark: false }) },
    edit: { op: 'replace', path: '/timbers/0/bark', value: true },
    severity: 'stop'
  },
  {
    id: 'seal-hard',
    about: 'a seal coat that has gone hard',
    sound: { piece: timber({ sealed: 'tacky' }) },
    edit: { op: 'replace', path: '/timbers/0/sealed', value: 'hard' },
    severity: 'caution'
  },
  {
    id: 'seal-hard',
    about: 'a day and a half between the seal coat and the pour',
    sound: { piece: ordered('6 h') },
    edit: { op: 'replace', path: '/steps/1/for', value: '36 h' },
    severity: 'caution'
  },
  {
    id: 'char-loose',
    about: 'char that is not brushed out',
    sound: { piece: timber({ charred: 1, brushed: true }) },
    edit: { op: 'replace', path: '/timbers/0/brushed', value: false },
    severity: 'caution'
  },
  {
    id: 'char-loose',
    about: 'brushed char without a seal coat',
    sound: { piece: timber({ charred: 1, brushed: true, sealed: 'tacky' }) },
    edit: { op: 'replace', path: '/timbers/0/sealed', value: 'no' },
    severity: 'caution'
  },
  {
    id: 'timber-gap',
    about: 'a bar of 120 mm across the grain with resin all round',
    sound: { piece: inlaid(30) },
    edit: { op: 'replace', path: '/timbers/0/outline/rectangle', value: [200, 120] },
    severity: 'caution',
    noFix: 'how wide the timber is drawn, and how it is sawn, is the design itself'
  },
  {
    id: 'timber-gap',
    about: 'a plank with a hole of 100 mm full of resin',
    sound: {
      piece: inlaid(200, {
        outline: {
          difference: [{ rectangle: [300, 200] }, { circle: 20 }]
        }
      })
    },
    edit: { op: 'replace', path: '/timbers/0/outline/difference/1/circle', value: 100 },
    severity: 'caution',
    noFix: 'how large the resin in the timber is drawn is the design itself'
  },
  {
    id: 'movement-joint',
    about: 'a plank of 400 mm turned with its end grain to the strip of resin',
    sound: { piece: wide() },
    edit: { op: 'replace', path: '/timbers/0/grain', value: 0 },
    severity: 'stop',
    noFix: 'which way the grain runs is the design itself'
  },
  {
    id: 'movement-joint',
    about: 'the same where the air hardly changes',
    sound: { piece: { ...wide({ rings: 'quarter' }), climate: still } },
    edit: { op: 'replace', path: '/timbers/0/grain', value: 0 },
    severity: 'caution',
    noFix: 'which way the grain runs is the design itself'
  },
  {
    id: 'corner-crack',
    about: 'a bar with sharp corners in 20 mm of resin',
    sound: { piece: inlaid(30) },
    edit: { op: 'replace', path: '/timbers/0/outline/corner', value: 0 },
    severity: 'caution'
  },
  {
    id: 'one-face-flattened',
    about: 'a back that is never planed',
    sound: { piece: { ...PLAIN, flatten: { back: 1, front: '1 mm' } } },
    edit: { op: 'replace', path: '/flatten/back', value: 0 },
    severity: 'caution'
  },
  {
    id: 'one-face-flattened',
    about: 'eight times as much off the front',
    sound: { piece: { ...PLAIN, flatten: { back: 1, front: 2 } } },
    edit: { op: 'replace', path: '/flatten/front', value: 8 },
    severity: 'caution'
  }
]
