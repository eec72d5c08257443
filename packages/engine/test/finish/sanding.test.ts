import { describe, expect, it } from 'vitest'
import { marksUm } from '../../src/finish/marks.ts'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { checkShop } from '../../src/piece/read.ts'
import type { ShopDocument } from '../../src/piece/shop-schema.ts'
import { worked } from '../cases/asked.ts'
import { PLAIN } from '../findings/harness.ts'

const shopOf = (more: Partial<ShopDocument> = {}): ShopDocument => ({ castwright: 1, ...more })
const front = (piece: Partial<PieceDocument>, shop: Partial<ShopDocument> = {}) =>
  worked({ piece: { ...PLAIN, ...piece }, shop: shopOf(shop) }).faces[0]
const grits = (face: ReturnType<typeof front>) => face.sanding!.ladder.steps.map(s => s.grade.grit)
const MACHINE = { x: 800, y: 600 }

describe('marks of the last tool', () => {
  const marks = (left: Parameters<typeof marksUm>[0], more: Partial<ShopDocument> = {}) =>
    marksUm(left, checkShop(shopOf(more), 'shop').value)
  it('by hand: passes of 0.6 of an inch at 2 and 4 mm/m, with 30 µm of torn fibre', () => {
    expect(marks('machined')).toBeCloseTo(0.6 * 25.4 * 2 + 30, 9)
    expect(marks('sled')).toBeCloseTo(0.6 * 25.4 * 4 + 30, 9)
    expect(marks('planed')).toBeCloseTo(16.67 + 30, 1)
    expect(marks('sanded to 80')).toBeCloseTo(0.3 * 201, 9)
  })
  it('a wider bit of the shop leaves higher ridges', () => {
    const cutters = [{ id: 'flat', kind: 'surfacing', diameter: 50, length: 10 }]
    expect(marks('machined', { cutters })).toBeCloseTo(0.6 * 50 * 2 + 30, 9)
  })
})

describe('how a face is sanded', () => {
  it('from sled or machine to the last grade of its coat', () => {
    const sled = front({ finish: { both: { coat: 'oil-varnish' } } })
    expect(sled.sanding).toMatchObject({ left: 'sled', shown: ['timber', 'resin'] })
    expect(grits(sled)[0]).toBe(80)
    expect(grits(sled).at(-1)).toBe(320)
    const machined = front({ finish: { both: { coat: 'oil-varnish' } } }, { machine: MACHINE })
    expect(machined.sanding!.left).toBe('machined')
    expect(machined.sanding!.marksUm).toBeLessThan(sled.sanding!.marksUm)
  })

  it('a flood coat stops it at 220, an oil at 240', () => {
    expect(grits(front({ finish: { both: { coat: 'flood-coat' } } })).at(-1)).toBe(220)
    expect(grits(front({ finish: { both: { coat: 'hardwax-oil' } } })).at(-1)).toBe(240)
  })

  it('no coat and nothing asked: none', () => {
    expect(front({ finish: {} }).sanding).toBeNull()
    expect(front({ finish: {} }).grit).toBeNull()
  })

  it('resin polished without a film: to 2500, then pastes; a board of timber is not', () => {
    const cast: Partial<PieceDocument> = {
      timbers: [],
      pours: [{ id: 'clear', resin: 'deep', depth: 20 }],
      finish: { both: { coat: 'none', gloss: 'polished' } }
    }
    const resin = front(cast)
    expect(resin.sanding!.shown).toEqual(['resin'])
    expect(grits(resin).at(-1)).toBe(2500)
    expect(resin.sanding!.pastesUm).toEqual([3, 1])
    expect(resin.gloss.words).toEqual(['polished'])
    expect(front({ ...cast, finish: { both: { coat: 'none', gloss: 'satin' } } }).sanding!.pastesUm).toEqual(
      []
    )
    expect(grits(front({ finish: { both: { coat: 'wax' } } })).at(-1)).toBe(240)
  })

  it('a flood over the whole face is sanded under, and lies as poured after', () => {
    const work = worked({
      piece: {
        ...PLAIN,
        pours: [...PLAIN.pours, { id: 'gloss', kind: 'flood', face: 'front', resin: 'thin', depth: 2 }],
        finish: { front: { coat: 'wax', gloss: 'polished' }, back: { coat: 'hardwax-oil' } }
      }
    })
    const [face, back] = work.faces
    expect(face.sanding).toMatchObject({ left: 'poured', shown: ['resin'] })
    expect(face.sanding!.ladder.steps[0]!.grade.grit).toBeGreaterThan(220)
    const [flood] = face.floods
    expect(flood!.under!.left).toBe('sled')
    expect(flood!.under!.ladder.steps.at(-1)!.grade.grit).toBe(220)
    expect(work.steps[flood!.under!.step!]!.kind).toBe('flatten')
    expect(back.floods).toEqual([])
  })

  it('a filling that stands proud is taken off by all grades together, most of it by the first', () => {
    const lined = front({
      markings: [
        {
          linear: { from: [-120, 0], to: [-60, 0], length: 8, at: [0, 1] },
          filled: [{ pigment: 'black-paste', percent: 3 }]
        }
      ]
    })
    const { ladder, marksUm } = lined.sanding!
    expect(ladder.offMm).toBeCloseTo(0.3, 9)
    expect(marksUm).toBe(ladder.steps[0]!.removeUm)
    expect(marksUm).toBeGreaterThan(150)
  })

  it('the document’s grits and last tool stand before ours; a number that is no grade is its neighbour', () => {
    const own = front({
      finish: { both: { coat: 'hardwax-oil', grits: [100, 150, 250], from: 'sanded to 80' } }
    })
    expect(grits(own)).toEqual([100, 150, 240])
    expect(own.grit).toBe(250)
    expect(own.sanding).toMatchObject({ left: 'sanded to 80', given: true })
  })

  it('the sander of the shop: minutes go with the disc, discs with its life', () => {
    const usual = front({}).sanding!.ladder
    const small = front({}, { sander: { disc: 75, minutes: 3 } }).sanding!.ladder
    const work = (l: typeof usual) => l.minutes - 2 * l.steps.length
    expect(work(small)).toBeCloseTo(2 * work(usual), 9)
    expect(small.steps[0]!.discs).toBeCloseTo((small.steps[0]!.minutes - 2) / 3, 9)
  })
})

describe('what a finish may not say', () => {
  const message = (both: object): string => {
    try {
      worked({ piece: { ...PLAIN, finish: { both: both as never } } })
      return ''
    } catch (e) {
      return JSON.stringify((e as { problems?: unknown }).problems ?? String(e))
    }
  }

  it('grits that fall, a grit beside a list of grits, a gloss and a tool that are none', () => {
    expect(message({ coat: 'hardwax-oil', grits: [80, 120, 100] })).toMatch(
      /\/finish\/both\/grits\/2.*after 120 a larger number/
    )
    expect(message({ coat: 'hardwax-oil', grit: 240, grits: [80, 240] })).toMatch(/grit/)
    expect(message({ coat: 'hardwax-oil', gloss: 'shiny' })).toMatch(/matt/)
    expect(message({ coat: 'hardwax-oil', from: 'axe' })).toMatch(/planed/)
    expect(message({ coat: 'hardwax-oil', dam: -1 })).toMatch(/dam/)
    expect(message({ coat: 'hardwx-oil' })).toMatch(/nearest: hardwax-oil/)
    expect(message({ coat: 'hardwax-oil', grits: [80, 120, 180, 240] })).toBe('')
  })
})
