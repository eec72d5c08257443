import type { Pair } from '../harness.ts'
import { PLAIN } from '../harness.ts'

const pour = (more: object) => ({ ...PLAIN, pours: [{ id: 'clear', resin: 'deep', depth: 20, ...more }] })
const shop = (resin: object) => ({
  castwright: 1 as const,
  resins: [{ id: 'own', like: 'deep' as const, ...resin }]
})
const cup = (mass: number) => ({
  id: 'cup-check-1',
  kind: 'cup check',
  at: '2026-03-02T09:00+01:00',
  volume: 100,
  mass
})
const poured = (mass: number) => ({
  id: 'poured-0001',
  kind: 'poured',
  pour: 'clear',
  at: '2026-03-02T09:10+01:00',
  mass
})

export const pairs: readonly Pair[] = [
  {
    id: 'least-batch',
    about: 'a seal coat of a few grams on a scale of 1 g steps',
    sound: { piece: pour({ resin: 'thin', depth: 0.3, mixed: '40 g' }) },
    edit: { op: 'replace', path: '/pours/0/mixed', value: '10 g' },
    severity: 'stop'
  },
  {
    id: 'least-batch',
    about: 'a pour in so many batches that each is too small for the scale',
    sound: { piece: pour({ batches: 3 }) },
    edit: { op: 'replace', path: '/pours/0/batches', value: 30 },
    severity: 'caution'
  },
  {
    id: 'least-batch',
    about: 'an inlay of a few grams: for twelve blanks together it is weighed well, for one it is not',
    sound: {
      piece: {
        ...PLAIN,
        quantity: 12,
        cuts: [{ id: 'dot', face: 'front', shape: { circle: 30, at: [100, 0] }, depth: 6 }],
        pours: [...PLAIN.pours!, { id: 'inlay', kind: 'inlay', into: ['dot'], resin: 'medium', fill: 'cut' }]
      }
    },
    edit: { op: 'replace', path: '/quantity', value: 1 },
    severity: 'stop'
  },
  {
    id: 'batches-drag',
    about: 'a pour mixed in two hundred cups one after the other',
    sound: { piece: pour({ batches: 3 }) },
    edit: { op: 'replace', path: '/pours/0/batches', value: 200 },
    severity: 'caution',
    noFix: 'vessels and hands are facts of the shop'
  },
  {
    id: 'ratio-by-mass',
    about: 'a label of 1 : 1 by volume weighed one to one',
    sound: {
      piece: pour({ resin: 'own', measured: { a: 1, b: 1, by: 'volume' } }),
      shop: shop({ ratio: { a: 1, b: 1, by: 'volume' }, densityA: 1.15, densityB: 0.9545 })
    },
    edit: { op: 'replace', path: '/pours/0/measured/by', value: 'mass' },
    severity: 'stop'
  },
  {
    id: 'ratio-by-mass',
    about: 'a label of 2 : 1 by volume of parts nearly alike in density, weighed two to one',
    sound: {
      piece: pour({ resin: 'own', measured: { a: 2, b: 1, by: 'volume' } }),
      shop: shop({ ratio: { a: 2, b: 1, by: 'volume' }, densityA: 1.1, densityB: 1.02 })
    },
    edit: { op: 'replace', path: '/pours/0/measured/by', value: 'mass' },
    severity: 'caution'
  },
  {
    id: 'ratio-off',
    about: 'a fifth more hardener, to make it set in the cold',
    sound: { piece: pour({ measured: { a: 100, b: 44, by: 'mass' } }) },
    edit: { op: 'replace', path: '/pours/0/measured/b', value: 53 },
    severity: 'stop'
  },
  {
    id: 'ratio-off',
    about: 'hardener 7 % short',
    sound: { piece: pour({ measured: { a: 100, b: 44, by: 'mass' } }) },
    edit: { op: 'replace', path: '/pours/0/measured/b', value: 41 },
    severity: 'caution'
  },
  {
    id: 'cup-marks',
    about: 'a cup whose 100 ml hold 108 g of water, and a pour measured by volume',
    sound: { piece: pour({ measured: { a: 1.95, b: 1, by: 'volume' } }), readings: [cup(100)] },
    on: 'readings',
    edit: { op: 'replace', path: '/0/mass', value: 108 },
    severity: 'stop',
    noFix: 'the cup is wrong, not the piece'
  },
  {
    id: 'cup-marks',
    about: 'a cup 3 % off',
    sound: { piece: pour({ measured: { a: 1.95, b: 1, by: 'volume' } }), readings: [cup(100)] },
    on: 'readings',
    edit: { op: 'replace', path: '/0/mass', value: 103 },
    severity: 'caution',
    noFix: 'the cup is wrong, not the piece'
  },
  {
    id: 'resin-short',
    about: '400 g on hand for a pour that takes 600',
    sound: { piece: pour({ pack: '800 g' }) },
    edit: { op: 'replace', path: '/pours/0/pack', value: '400 g' },
    severity: 'stop'
  },
  {
    id: 'resin-short',
    about: 'a shelf that does not hold the second pour',
    sound: {
      piece: {
        ...PLAIN,
        pours: [
          { id: 'first', resin: 'own', depth: 10 },
          { id: 'second', resin: 'own', height: 20 }
        ]
      },
      shop: shop({ stock: 900 })
    },
    on: 'shop',
    edit: { op: 'replace', path: '/resins/0/stock', value: 500 },
    severity: 'stop'
  },
  {
    id: 'resin-over',
    about: '3 kg set aside for a pour that takes 600 g',
    sound: { piece: pour({ pack: '800 g' }) },
    edit: { op: 'replace', path: '/pours/0/pack', value: '3 kg' },
    severity: 'note'
  },
  {
    id: 'resin-over',
    about: 'only packs of 6 kg to be had',
    sound: { piece: pour({ resin: 'own' }), shop: shop({ packs: [{ mass: 750 }] }) },
    on: 'shop',
    edit: { op: 'replace', path: '/resins/0/packs/0/mass', value: 6000 },
    severity: 'note',
    noFix: 'the packs are the dealer’s'
  },
  {
    id: 'poured-more',
    about: 'a kilogram gone into a pour of 570 g',
    sound: { piece: pour({}), readings: [poured(580)] },
    on: 'readings',
    edit: { op: 'replace', path: '/0/mass', value: 1000 },
    severity: 'stop',
    noFix: 'what was poured cannot be taken back'
  },
  {
    id: 'poured-more',
    about: 'a quarter more gone in than fits',
    sound: { piece: pour({}), readings: [poured(580)] },
    on: 'readings',
    edit: { op: 'replace', path: '/0/mass', value: 720 },
    severity: 'caution',
    noFix: 'what was poured cannot be taken back'
  },
  {
    id: 'blanks-few',
    about: 'twelve blanks for twelve boards',
    sound: { piece: { ...PLAIN, quantity: { pieces: 12, blanks: 14 } } },
    edit: { op: 'replace', path: '/quantity/blanks', value: 12 },
    severity: 'caution'
  }
]
