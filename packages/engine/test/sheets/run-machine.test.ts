import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { checkPiece, checkShop } from '../../src/piece/read.ts'
import type { ShopDocument } from '../../src/piece/shop-schema.ts'
import { plan as planned } from '../../src/plan.ts'
import { stepDetail } from '../../src/sheets/run-step.ts'
import { stepFacts } from '../../src/sheets/step-facts.ts'
import { PLAIN } from '../findings/harness.ts'

const piece: PieceDocument = {
  ...PLAIN,
  cuts: [{ id: 'pocket', face: 'back', shape: { rectangle: [40, 30], at: [0, 0] }, depth: 6 }],
  markings: [{ id: 'scale', linear: { from: [60, 40], to: [140, 40], length: 8, at: [0, 1] }, filled: [] }]
}
const made = (shop: ShopDocument) =>
  planned({ piece: checkPiece(piece, 'piece'), shop: checkShop(shop, 'shop').value }, {
    effort: 'preview'
  } as never)
const sheet = (shop: ShopDocument, kind: string) => {
  const { plan, work } = made(shop)
  const i = work.steps.findIndex(s => s.kind === kind)
  return {
    facts: stepDetail(plan, work, i).facts.map(f => [f.label, f.value, f.unit].join(' ').trim()),
    phrases: stepFacts(plan, work, i)
  }
}
const machine = { x: 800, y: 600 }
const own: ShopDocument = {
  castwright: 1,
  machine,
  cutters: [
    { id: 'six', kind: 'flat-end-mill', diameter: 6, length: 22 },
    { id: 'v', kind: 'v-60', diameter: 6, length: 5.2 },
    { id: 'wide', kind: 'surfacing', diameter: 25.4, length: 8 }
  ]
}

describe('cutters on the run sheet', () => {
  // 6 mm in resin: 12 000 turns, 2500 mm/min, 30 % of it down, 0.375 D a pass, as worked in the test of feeds.
  it('a pocket, a marking and a flattening name cutter, turns, feed and pass', () => {
    const pocket = sheet(own, 'cut')
    expect(pocket.facts).toEqual(
      expect.arrayContaining([
        'Cutter six: flat end mill 6 mm',
        'Turns 12000 1/min',
        'Feed 2500 mm/min, straight down 750',
        'A pass 2.25 mm deep at most'
      ])
    )
    expect(pocket.phrases).toEqual(
      expect.arrayContaining(['flat end mill 6 mm', '12000 1/min, 2500 mm/min', '2.25 a pass'])
    )
    const marking = sheet(own, 'mark').facts
    expect(marking.filter(f => f.startsWith('Cutter'))).toEqual(['Cutter v: V bit 60° 6 mm'])
    expect(sheet(own, 'flatten').phrases).toContain('surfacing bit 25.4 mm')
  })

  it('usual sizes are said to be so, and without a machine nothing is said', () => {
    expect(sheet({ castwright: 1, machine }, 'cut').facts).toContain('Cutter flat end mill 8 mm (usual size)')
    for (const kind of ['cut', 'mark', 'flatten'])
      expect(sheet({ castwright: 1 }, kind).facts.join(' ')).not.toMatch(/Turns|Feed/)
    expect(made({ castwright: 1 }).plan.machine).toEqual([])
  })

  it('the plan has them as plain figures with their reasons', () => {
    const { machine: cuts } = made(own).plan
    expect(cuts.map(c => [c.id, c.cutter])).toEqual([
      ['pocket', 'six'],
      ['scale', 'v'],
      [expect.stringMatching(/^Flatten/), 'wide']
    ])
    expect(cuts[0]!.why.length).toBeGreaterThan(2)
    expect(JSON.parse(JSON.stringify(cuts))).toEqual(cuts)
    const missing = made({ ...own, cutters: [own.cutters![2]!] }).plan.machine[0]!
    expect(missing).toMatchObject({ cutter: null, rpm: null })
    expect(missing.why[0]).toMatch(/would do/)
  })
})
