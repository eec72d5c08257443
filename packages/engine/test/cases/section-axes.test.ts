import { describe, expect, it } from 'vitest'
import type { Mark } from '../../src/sheets/mark.ts'
import { coreModelOf } from '../../src/sheets/model.ts'
import { sectionPathOf } from '../../src/sheets/section-path.ts'
import { sheetViews } from '../../src/sheets/sheet-views.ts'
import { PLAIN } from '../findings/harness.ts'
import { worked } from './asked.ts'

const BORES = [
  { id: 'near', x: -90, y: 35, mm: 30 },
  { id: 'far', x: 80, y: -28, mm: 24 }
]
const work = worked({
  piece: {
    ...PLAIN,
    timbers: [],
    mould: {
      ...PLAIN.mould,
      formers: BORES.map(b => ({
        id: b.id,
        shape: { circle: b.mm, at: [b.x, b.y] as [number, number] },
        from: 0
      }))
    }
  }
})

function texts(value: unknown): string[] {
  if (Array.isArray(value)) return value.flatMap(texts)
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return []
  const mark = value as Mark
  return [...(mark.kind === 'text' ? [mark.text] : []), ...Object.values(value).flatMap(texts)]
}

describe('O14: sections', () => {
  it('O14 the line of the section steps through the axis of each hole', () => {
    const { along, legs } = sectionPathOf(work)
    for (const { id, x, y } of BORES) {
      const [on, across] = along === 'x' ? [x, y] : [y, x]
      const leg = legs.find(l => l.from <= on && on <= l.to)!
      expect(leg.at, id).toBeCloseTo(across, 2)
    }
    expect(legs.length).toBeGreaterThan(1)
  })

  it('O14 round things carry their diameter, and no chord is printed as a size', () => {
    const words = texts(sheetViews(work, coreModelOf(work)))
    for (const { mm } of BORES) expect(words).toContain(`Ø ${mm}`)
    // One straight line cannot go through both: it would cut a chord of one, or miss it.
    expect(words.filter(w => w.startsWith('Ø')).every(w => BORES.some(b => w === `Ø ${b.mm}`))).toBe(true)
  })
})
