import { describe, expect, it } from 'vitest'
import { CATALOGUE } from '../../src/catalogue/find.ts'
import { HAZARDS } from '../../src/catalogue/safety.ts'

describe('the table of hazards', () => {
  it('has every hazard that a step can bring', () => {
    expect(HAZARDS.map(h => h.id).sort()).toEqual(
      [
        ...['mixing-resin', 'pouring', 'leftover-in-cup', 'hot-piece', 'peroxide-catalyst'],
        ...['isocyanate', 'finish-vapour'],
        ...['sanding-cured-resin', 'sanding-timber', 'spray', 'oily-rags', 'charring'],
        ...['wet-sanding', 'sanding-finish'],
        ...['machine-cutting', 'router-by-hand', 'sawing', 'drilling', 'heavy-lift'],
        ...['mains-wiring', 'magnets-swallow', 'food-side', 'glass-mould', 'pressure-pot']
      ].sort()
    )
  })

  it('defers to somebody who knows better, in every row', () => {
    for (const h of HAZARDS) {
      expect(h.defersTo.length, h.id).toBeGreaterThan(0)
      expect(h.lines.length, h.id).toBeGreaterThan(0)
      for (const line of h.lines) {
        expect(line, h.id).toMatch(/^[A-Z].*\.$/)
        expect(line.length, line).toBeLessThanOrEqual(160)
      }
    }
    const defers = (id: string): string => HAZARDS.find(h => h.id === id)!.defersTo.join('; ')
    for (const id of [
      'mixing-resin',
      'pouring',
      'leftover-in-cup',
      'peroxide-catalyst',
      'sanding-cured-resin'
    ]) {
      expect(defers(id), id).toMatch(/safety data sheet/)
    }
    for (const id of [
      'machine-cutting',
      'router-by-hand',
      'sawing',
      'drilling',
      'pressure-pot',
      'charring'
    ]) {
      expect(defers(id), id).toMatch(/manual/)
    }
    expect(defers('mains-wiring')).toMatch(/licensed electrician/)
    expect(defers('mains-wiring')).toMatch(/codes/)
  })

  it('says of nothing, in any catalogue, that it is safe', () => {
    const words = JSON.stringify(CATALOGUE).toLowerCase()
    for (const claim of [
      /food[ -]?safe/,
      /safe to /,
      /is safe/,
      /are safe/,
      /harmless/,
      /non-?toxic/,
      /fire[- ]?proof/
    ]) {
      expect(words, String(claim)).not.toMatch(claim)
    }
  })
})
