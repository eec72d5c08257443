import type { Pair } from '../harness.ts'
import { PLAIN } from '../harness.ts'

const start = '2026-12-05T10:00+01:00'
const piece = { ...PLAIN, pours: [{ id: 'clear', resin: 'own', depth: 20, start }] }
const shop = (more: object) => ({
  castwright: 1 as const,
  resins: [{ id: 'own', like: 'deep' as const, ...more }]
})
const lot = (more: object) => ({ mass: 6000, lot: 'K2', ...more })
const packs = [{ mass: 1500, price: 45 }]

export const pairs: readonly Pair[] = [
  {
    id: 'stock-expired',
    about: 'a kit whose label ends on the day before the pour',
    sound: { piece, shop: shop({ packs, lots: [lot({ expires: '2026-12-05' })] }) },
    on: 'shop',
    edit: { op: 'replace', path: '/resins/0/lots/0/expires', value: '2026-12-04' },
    severity: 'note',
    noFix: 'what stands on the shelf is the shop’s'
  },
  {
    id: 'stock-expired',
    about: 'an oil that keeps half a year and was opened in spring',
    sound: {
      piece,
      shop: {
        ...shop({}),
        prices: [
          {
            item: 'hardwax-oil',
            unit: 'ml',
            keeps: 180,
            lots: [{ amount: 400, opened: '2026-10-01' }]
          }
        ]
      }
    },
    on: 'shop',
    edit: { op: 'replace', path: '/prices/0/lots/0/opened', value: '2026-03-01' },
    severity: 'note',
    noFix: 'what stands on the shelf is the shop’s'
  },
  {
    id: 'hardener-short',
    about: 'a hardener that does not reach for the resin beside it, and no pack of it',
    sound: {
      piece,
      shop: shop({ lots: [lot({ part: 'A' }), lot({ part: 'B', lot: 'H-17' })] })
    },
    on: 'shop',
    edit: { op: 'replace', path: '/resins/0/lots/1/mass', value: 100 },
    severity: 'stop',
    noFix: 'what stands on the shelf is the shop’s'
  },
  {
    id: 'price-missing',
    about: 'a shop that prices its oil but not its resin',
    sound: { piece: PLAIN },
    on: 'shop',
    edit: { op: 'add', path: '/prices', value: [{ item: 'hardwax-oil', unit: 'l', price: 40 }] },
    severity: 'note',
    noFix: 'prices are the shop’s'
  }
]
