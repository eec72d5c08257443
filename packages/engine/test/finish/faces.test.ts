import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { BOARDS, planOf } from '../sheets/pieces.ts'

// By hand. A board of 380 × 180 with corners of 14: 68 400 − (4 − π)·14² = 68 231.8 mm²; round it go
// 2·(380 + 180) − 8·14 + 2π·14 = 1095.96 mm; 22.5 mm thick finished, so half of the edge is 12 329.6 mm².

const FACE_M2 = 0.068_231_8
const HALF_EDGE_M2 = (1.095_96 * 22.5) / 2000
const back = (coat: NonNullable<PieceDocument['finish']>['back'], more: Partial<PieceDocument> = {}) =>
  planOf({ ...BOARDS, ...more, finish: { back: coat } })

describe('what the finish of a face takes', () => {
  it('a flood coat: one, as deep as it stands, on the face alone', () => {
    const { plan, work } = back({ coat: 'flood-coat' })
    expect(work.faces[1].areaM2).toBeCloseTo(FACE_M2, 6)
    expect(plan.faces[1]!.coats).toBe(1)
    // 2.0 to 3.2 mm wet, nine tenths of what is poured stay: 2.6 mm × 0.0682318 m² / 0.9 = 197.1 ml.
    expect(plan.faces[1]!.needMl).toBeCloseTo(197.1, 1)
    const { blanks } = plan.quantity
    expect(plan.buy.find(l => l.item === 'flood-coat')!.need).toBe(Math.ceil(197.114 * blanks))
    // Spread over the face it stands under 3 mm deep: what holds at a sharp edge.
    expect(plan.faces[1]!.needMl / FACE_M2 / 1000).toBeLessThan(3)
  })

  it('twice the coats, twice as much', () => {
    expect(back({ coat: 'flood-coat', coats: 2 }).plan.faces[1]!.needMl).toBeCloseTo(2 * 197.1, 0)
  })

  it('an oil: the thicker film of two coats, half of the edge with it', () => {
    const { plan, work } = back({ coat: 'hardwax-oil' })
    expect(work.faces[1].areaM2).toBeCloseTo(FACE_M2 + HALF_EDGE_M2, 5)
    // 2 × 30 µm × 0.0805613 m² / 0.9 = 5.37 ml.
    expect(plan.faces[1]!.needMl).toBeCloseTo(5.37, 2)
  })

  it('a film that the piece gives: laid wet at film over solids', () => {
    // 0.1 mm dry of 40 % solids are 250 µm wet, × 0.0805613 m² / 0.9 = 22.4 ml, in however many coats.
    for (const coats of [2, 5])
      expect(back({ coat: 'oil-varnish', film: 0.1, coats }).plan.faces[1]!.needMl).toBeCloseTo(22.38, 1)
  })
})
