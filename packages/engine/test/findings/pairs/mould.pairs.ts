import type { Pair } from '../harness.ts'
import { PLAIN } from '../harness.ts'

// Longer than its bearers are apart, so that the base spans them.
const long = (bearers: number | string) => ({
  ...PLAIN,
  outline: { rectangle: [1600, 200] as [number, number] },
  mould: { ...PLAIN.mould, bearers }
})
const mould = (more: object) => ({ ...PLAIN, mould: { ...PLAIN.mould, ...more } })

export const pairs: readonly Pair[] = [
  {
    id: 'wall-low',
    about: 'walls of 18 mm round a pour of 20',
    sound: { piece: mould({ wall: '30 mm' }) },
    edit: { op: 'replace', path: '/mould/wall', value: '18 mm' },
    severity: 'stop'
  },
  {
    id: 'wall-low',
    about: 'a mould with 5 mm of freeboard that will be moved',
    sound: { piece: mould({ wall: 26, moved: false }) },
    edit: { op: 'replace', path: '/mould/moved', value: true },
    severity: 'caution'
  },
  {
    id: 'base-sags',
    about: 'bearers 1.2 m apart under a board of 18 mm',
    sound: { piece: long(250) },
    edit: { op: 'replace', path: '/mould/bearers', value: '1.2 m' },
    severity: 'stop'
  },
  {
    id: 'base-sags',
    about: 'bearers 550 mm apart',
    sound: { piece: long(250) },
    edit: { op: 'replace', path: '/mould/bearers', value: 550 },
    severity: 'caution'
  },
  {
    id: 'base-sags',
    about: 'bearers under a silicone mould',
    sound: { piece: mould({ base: 'melamine-particleboard-18' }) },
    edit: { op: 'replace', path: '/mould/base', value: 'silicone-mould' },
    severity: 'caution'
  },
  {
    id: 'out-of-level',
    about: 'a mould that leans by 1.4 mm where flattening takes 1',
    sound: { piece: mould({ corners: [0, 0.1, 0.1, 0] }) },
    edit: { op: 'replace', path: '/mould/corners', value: [0, 1.4, 1.4, 0] },
    severity: 'stop'
  },
  {
    id: 'out-of-level',
    about: 'a mould that leans by 0.8 mm where flattening takes 1',
    sound: { piece: mould({ corners: [0, 0.1, 0.1, 0] }) },
    edit: { op: 'replace', path: '/mould/corners', value: [0, 0.8, 0.7, 0] },
    severity: 'caution'
  },
  {
    id: 'mould-gap',
    about: 'timber tight against the wall',
    sound: { piece: mould({ margin: 6 }) },
    edit: { op: 'replace', path: '/mould/margin', value: 0 },
    severity: 'caution'
  },
  {
    id: 'water-test',
    about: 'no water test',
    sound: { piece: mould({ waterTest: true }) },
    edit: { op: 'replace', path: '/mould/waterTest', value: false },
    severity: 'caution'
  },
  {
    id: 'joint-side',
    about: 'sealant inside only',
    sound: { piece: mould({ joints: 'inside and outside' }) },
    edit: { op: 'replace', path: '/mould/joints', value: 'inside' },
    severity: 'caution'
  },
  {
    id: 'joint-side',
    about: 'tape in place of sealant',
    sound: { piece: mould({ joints: 'inside and outside' }) },
    edit: { op: 'replace', path: '/mould/joints', value: 'tape only' },
    severity: 'caution'
  },
  {
    id: 'divider-unsealed',
    about: 'a dam that only stands on the base',
    sound: {
      piece: mould({
        dams: [
          {
            line: [
              [0, -106],
              [0, 106]
            ]
          }
        ]
      })
    },
    edit: { op: 'add', path: '/mould/dams/0/sealed', value: false },
    severity: 'stop'
  },
  {
    id: 'no-release',
    about: 'a board without a liner',
    sound: { piece: mould({ liner: 'release-tape' }) },
    edit: { op: 'replace', path: '/mould/liner', value: 'none' },
    severity: 'stop'
  },
  {
    id: 'no-release',
    about: 'masking tape taken for a release',
    sound: { piece: mould({ liner: 'release-tape' }) },
    edit: { op: 'replace', path: '/mould/liner', value: 'masking-tape' },
    severity: 'stop'
  },
  {
    id: 'no-release',
    about: 'a former without a wrapping',
    sound: { piece: mould({ formers: [{ id: 'plug', shape: { circle: 20 }, released: true }] }) },
    edit: { op: 'replace', path: '/mould/formers/0/released', value: false },
    severity: 'stop'
  },
  {
    id: 'mould-softens',
    about: 'wax as release under a pour whose band reaches 77 °C',
    sound: {
      piece: { ...mould({ liner: 'release-tape' }), pours: [{ id: 'clear', resin: 'deep', depth: 40 }] }
    },
    edit: { op: 'replace', path: '/mould/liner', value: 'mould-wax' },
    severity: 'caution'
  },
  {
    id: 'mould-softens',
    about: 'a base of polyethylene under a pour that runs away',
    sound: {
      piece: {
        ...mould({ base: 'hdpe-sheet', liner: 'none', bearers: 150 }),
        pours: [{ id: 'clear', resin: 'medium', depth: 6 }]
      }
    },
    edit: { op: 'replace', path: '/pours/0/depth', value: 25 },
    severity: 'stop'
  }
]
