import { describe, expect, it } from 'vitest'
import { KINDS, newPiece } from '../../src/piece/kind.ts'
import { area, bounds } from '../../src/shape/measure.ts'
import type { Mark, PathMark, RegionMark, TextMark } from '../../src/sheets/mark.ts'
import { coreModelOf } from '../../src/sheets/model.ts'
import { planParts } from '../../src/sheets/plan-parts.ts'
import { planView } from '../../src/sheets/plan-view.ts'
import { sectionPathOf } from '../../src/sheets/section-path.ts'
import { svgDocument } from '../../src/sheets/svg.ts'
import { BOARDS, PANEL, planOf, TABLE } from './pieces.ts'

const pieces = { PANEL, TABLE, BOARDS }
const flat = (marks: readonly Mark[]): Mark[] =>
  marks.flatMap(m => (m.kind === 'group' ? flat(m.marks) : [m]))

describe('the parts of a face', () => {
  it('cover the outline once: their areas add up to it, for the examples and every kind', () => {
    const kinds = Object.fromEntries(KINDS.map(k => [k.kind, newPiece(k.kind)]))
    for (const [name, piece] of Object.entries({ ...pieces, ...kinds })) {
      const { work } = planOf(piece)
      const model = coreModelOf(work)
      for (const face of ['front', 'back'] as const) {
        const parts = planParts(work, model, face)
        const sum = parts.reduce((s, p) => s + area(p.region), 0)
        expect(sum / area(work.stack.geometry.outline), `${name} ${face}`).toBeCloseTo(1, 4)
      }
    }
  })

  it('show timber where timber lies at the face, resin where resin does', () => {
    const { work } = planOf(PANEL)
    const parts = planParts(work, coreModelOf(work), 'front')
    const kinds = new Set(parts.map(p => (p.top === null ? 'void' : `${p.top.kind} ${p.top.index}`)))
    // Ash on both banks, clear in the creek, the floor of the plate pocket in ash, the compass hole open.
    expect(kinds).toEqual(new Set(['timber 0', 'timber 1', 'pour 1', 'void']))
  })
})

describe('a plan', () => {
  for (const [name, piece] of Object.entries(pieces)) {
    const { work, plan } = planOf(piece)
    const model = coreModelOf(work)
    const draw = (face: 'front' | 'back') =>
      planView(work, model, {
        face,
        widthMm: 166,
        sideMm: 17,
        mostHeightMm: 104,
        path: sectionPathOf(work)
      })

    it(`of ${name} is to scale: the outline drawn is the finished size`, () => {
      for (const face of ['front', 'back'] as const) {
        const { sheet, view } = draw(face)
        const outline = flat(sheet.marks).filter(
          (m): m is RegionMark => m.kind === 'region' && m.edge === 'outline' && m.paint === null
        )
        const b = bounds({ rings: outline[outline.length - 1]!.rings })
        // Curves are thinned by at most 0.018 mm on the sheet, at both ends.
        expect(Math.abs(b.maxX - b.minX - plan.totals.sizeMm[0] * view.scale)).toBeLessThan(0.036)
        expect(Math.abs(b.maxY - b.minY - plan.totals.sizeMm[1] * view.scale)).toBeLessThan(0.036)
        expect(b.minX).toBeGreaterThan(0)
        expect(b.maxX).toBeLessThan(sheet.widthMm)
        expect(b.maxY).toBeLessThan(sheet.heightMm)
      }
    })

    it(`of ${name} writes its whole sizes, is the same on every run, and holds finite numbers only`, () => {
      const { sheet } = draw('front')
      const words = flat(sheet.marks).flatMap(m => (m.kind === 'text' ? [m.text] : []))
      for (const mm of plan.totals.sizeMm.slice(0, 2)) expect(words).toContain(String(Number(mm.toFixed(1))))
      const once = svgDocument(sheet, name)
      expect(svgDocument(draw('front').sheet, name)).toBe(once)
      expect(once).not.toMatch(/NaN|Infinity|undefined/)
    })
  }

  it('closes every region it fills', () => {
    const { work } = planOf(TABLE)
    const { sheet } = planView(work, coreModelOf(work), {
      face: 'front',
      widthMm: 166,
      sideMm: 17,
      mostHeightMm: 104,
      path: null
    })
    const svg = svgDocument(sheet, 'table')
    for (const [, d] of svg.matchAll(/class="area[^"]*"[^>]* d="([^"]+)"/g)) {
      expect(
        d!
          .split('M')
          .slice(1)
          .every(ring => ring.endsWith('z'))
      ).toBe(true)
    }
  })

  it('turned over puts left to the right, and dashes what is cut from the other face', () => {
    const { work } = planOf(PANEL)
    const model = coreModelOf(work)
    const both = (['front', 'back'] as const).map(face =>
      planView(work, model, { face, widthMm: 166, sideMm: 17, mostHeightMm: 104, path: null })
    )
    const hidden = both.map(v =>
      flat(v.sheet.marks).filter((m): m is PathMark => m.kind === 'path' && m.ink === 'hidden')
    )
    // From the front: channel and two hanger pockets, with two hangers; from behind: plate pocket, with two (the hole goes right through).
    expect(hidden[0]!.length).toBe(5)
    expect(hidden[1]!.length).toBe(3)
    const middle = (m: PathMark) => {
      const b = bounds({ rings: m.lines })
      return (b.minX + b.maxX) / 2
    }
    const channel = middle(hidden[0]![0]!)
    const pocket = middle(hidden[1]![0]!)
    expect(channel).toBeLessThan(83)
    expect(pocket).toBeGreaterThan(83)
  })

  it('draws the figures of a scale as the lines they are cut along', () => {
    const { work } = planOf(PANEL)
    const { sheet, view } = planView(work, coreModelOf(work), SIZES)
    const scale = flat(sheet.marks).find(
      m =>
        m.kind === 'path' &&
        m.ink === 'outline' &&
        m.widthMm !== undefined &&
        m.lines.length > work.stack.geometry.markingLines[0]!.length
    )
    if (scale?.kind !== 'path') throw new Error('no scale')
    // Of the data: each of these digits is one stroke, the 4 two; 0 2 4 6 8 10 12.
    const figures = scale.lines.slice(work.stack.geometry.markingLines[0]!.length)
    expect(figures).toHaveLength(10)
    const middle = (line: Float64Array) => {
      const xs = line.filter((_, k) => k % 2 === 0)
      return (Math.min(...xs) + Math.max(...xs)) / 2
    }
    // 0, 2, 6 and 8 stand about middles as far apart as on the plan.
    const xs = [0, 1, 4, 5].map(k => middle(figures[k]!))
    for (const [k, far] of [72, 144, 72].entries())
      expect(xs[k + 1]! - xs[k]!).toBeCloseTo(far * view.scale, 1)
  })

  it('writes the figures of outlines upright on either face', () => {
    const { work } = planOf({
      ...PANEL,
      markings: [{ ...PANEL.markings![0]!, figures: 'outline' }]
    })
    const { sheet } = planView(work, coreModelOf(work), SIZES)
    const numerals = flat(sheet.marks).filter(
      (m): m is TextMark => m.kind === 'text' && m.lettering === 'numeral'
    )
    expect(numerals.map(n => n.text)).toEqual(['0', '2', '4', '6', '8', '10', '12'])
    const xs = numerals.map(n => n.at[0])
    for (let k = 1; k < xs.length; k++) expect(xs[k]! - xs[k - 1]!).toBeCloseTo(xs[1]! - xs[0]!, 6)
  })
})

const SIZES = { face: 'front', widthMm: 166, sideMm: 17, mostHeightMm: 104, path: null } as const
