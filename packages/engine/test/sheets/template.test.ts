import { describe, expect, it } from 'vitest'
import { templatesOf } from '../../src/cuts/hand/template.ts'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { checkPiece, checkShop } from '../../src/piece/read.ts'
import type { ShopDocument } from '../../src/piece/shop-schema.ts'
import { plan } from '../../src/plan.ts'
import { bounds } from '../../src/shape/measure.ts'
import type { Sheet } from '../../src/sheets/mark.ts'
import { pinTemplate } from '../../src/sheets/pin-template.ts'
import { paperTemplates, templateFiles } from '../../src/sheets/template-files.ts'
import { templateSheets } from '../../src/sheets/template-sheet.ts'
import { tilingOf } from '../../src/sheets/tile.ts'
import { PLAIN } from '../findings/harness.ts'
import { SHOP } from '../programs/machine-piece.ts'

type Cut = NonNullable<PieceDocument['cuts']>[number]
const planned = (cuts: readonly Cut[], shop: ShopDocument = { castwright: 1 }) =>
  plan(
    { piece: checkPiece({ ...PLAIN, cuts: [...cuts] }, 'piece'), shop: checkShop(shop, 'shop').value },
    { asOf: '2026-01-05T08:00:00Z', effort: 'preview' }
  )
const templates = (cuts: readonly Cut[], shop?: ShopDocument) => {
  const { work } = planned(cuts, shop)
  return templatesOf({ ...work, timbers: work.materials.timbers }, work.hand)
}
const pocket: Cut = {
  id: 'pocket', face: 'back', shape: { rectangle: [60, 36], corner: 4, at: [100, 40] }, depth: 8, way: 'router'
} // biome-ignore format: one cut
const shop: ShopDocument = { castwright: 1, hand: { bushes: [14], bits: [{ diameter: 8, length: 20 }] } }

describe('templates', () => {
  it('an opening 66 × 42 for a pocket 60 × 36, seen from the back: what is far on the plan is near', () => {
    const [t] = templates([pocket], shop)
    const [o, d] = [bounds(t!.cutOut), bounds(t!.drawn)]
    expect(o.maxX - o.minX).toBeCloseTo(66, 2)
    expect(o.maxY - o.minY).toBeCloseTo(42, 2)
    expect((d.minX + d.maxX) / 2).toBeCloseTo(100, 6)
    expect((d.minY + d.maxY) / 2).toBeCloseTo(-40, 6)
    expect(t!.says.join(' ')).toContain('Opening 66 × 42, cut 60 × 36: 3 on each side')
    // The piece is 300 × 200 about the origin: 250 from its left, 60 from its near edge.
    expect(t!.says.join(' ')).toContain('middle 250 from the left, 60 from the near edge')
  })

  it('turned over about y, what is right on the plan is left', () => {
    const { work } = plan(
      {
        piece: checkPiece({ ...PLAIN, pins: { about: 'y' }, cuts: [pocket] }, 'piece'),
        shop: checkShop(shop, 'shop').value
      },
      { asOf: '2026-01-05T08:00:00Z', effort: 'preview' }
    )
    const [t] = templatesOf({ ...work, timbers: work.materials.timbers }, work.hand)
    const d = bounds(t!.drawn)
    expect([(d.minX + d.maxX) / 2, (d.minY + d.maxY) / 2].map(Math.round)).toEqual([-100, 40])
  })

  it('two pockets alike share one opening', () => {
    const list = templates(
      [pocket, { ...pocket, id: 'other', shape: { ...pocket.shape!, at: [100, -40] } }],
      shop
    )
    expect(list).toHaveLength(1)
    expect(list[0]!.name).toBe('pocket, other')
  })

  it('holes of a face stand on one sheet, with what a wrong turn does', () => {
    const hole = (id: string, x: number): Cut => ({
      id, kind: 'bore', face: 'front', shape: { circle: 8, at: [x, 60] }, depth: 6, way: 'drill'
    }) // biome-ignore format: one cut
    const [t] = templates([hole('a', 80), hole('b', 120)])
    expect(t!.kind).toBe('centres')
    expect(t!.holes.map(h => h.x)).toEqual([80, 120])
    expect(t!.says.join(' ')).toContain('one stop off the middle')
  })

  it('what is sent out has a drawing in its true size; a straight outline has none', () => {
    const list = templates([{ ...pocket, way: 'sent out' }])
    expect(list.map(t => t.kind)).toEqual(['drawing'])
    const piece: PieceDocument = {
      ...PLAIN,
      markings: [
        {
          linear: { from: [70, -80], to: [130, -80], length: 8, at: [0, 1] },
          numerals: [{ text: '12', at: [70, -60] }],
          way: 'sent out'
        }
      ]
    }
    const { work } = plan(
      { piece: checkPiece(piece, 'piece'), shop: checkShop({ castwright: 1 }, 'shop').value },
      { asOf: '2026-01-05T08:00:00Z', effort: 'preview' }
    )
    const [scale] = templatesOf({ ...work, timbers: work.materials.timbers }, work.hand)
    expect(scale!.lines).toHaveLength(2)
    const marks = templateSheets(scale!, 'a panel', 'letter')[0]!.marks
    const figure = marks.find(m => m.kind === 'text' && m.text === '12')
    const line = marks.find(m => m.kind === 'path' && m.ink === 'outline')
    if (figure?.kind !== 'text' || line?.kind !== 'path') throw new Error('no figure or no line')
    // As far apart on paper as in the piece: 20 from the foot of the line to the middle of the figure.
    expect(figure.at[0] - line.lines[0]![0]!).toBeCloseTo(0, 9)
    expect(figure.at[1] + 0.36 * 8 - line.lines[0]![1]!).toBeCloseTo(20, 9)
  })
})

const lines = (sheet: Sheet) => sheet.marks.flatMap(m => (m.kind === 'line' ? [m] : []))
const long = (m: { from: readonly number[]; to: readonly number[] }) =>
  Math.hypot(m.to[0]! - m.from[0]!, m.to[1]! - m.from[1]!)

describe('sheets in true size', () => {
  it('every sheet carries a bar of 100 mm along both axes and its number', () => {
    const [t] = templates(
      [
        {
          id: 'channel',
          kind: 'groove',
          face: 'front',
          along: {
            points: [
              [-130, 0],
              [130, 0]
            ]
          },
          width: 8,
          depth: 5,
          way: 'router'
        }
      ],
      shop
    )
    const sheets = templateSheets(t!, 'a panel', 'A4')
    expect(sheets.length).toBeGreaterThan(1)
    for (const [k, sheet] of sheets.entries()) {
      const bars = lines(sheet).filter(m => m.ink === 'outline' && Math.abs(long(m) - 100) < 1e-9)
      expect(bars.map(m => (m.from[1] === m.to[1] ? 'x' : 'y')).sort()).toEqual(['x', 'y'])
      const words = sheet.marks.flatMap(m => (m.kind === 'text' ? [m.text] : []))
      expect(words).toContain(`sheet ${k + 1} of ${sheets.length}`)
    }
    expect(sheets[0]!.marks.flatMap(m => (m.kind === 'text' ? [m.text] : [])).join(' ')).toContain(
      'Joins 2 on its right'
    )
    expect(sheets[1]!.marks.flatMap(m => (m.kind === 'text' ? [m.text] : [])).join(' ')).toContain(
      'on its left'
    )
  })

  it('sheets laid at their joins cover the drawing, whatever its size', () => {
    for (const [w, h] of [
      [100, 50],
      [250, 180],
      [700, 300],
      [1200, 900]
    ] as const)
      for (const paper of ['A4', 'letter'] as const) {
        const scope = { minX: -w / 3, minY: 10, maxX: (2 * w) / 3, maxY: 10 + h }
        const { tiles } = tilingOf(scope, paper, () => true)
        for (let x = 0; x <= 20; x++)
          for (let y = 0; y <= 20; y++) {
            const [px, py] = [scope.minX + (w * x) / 20, scope.minY + (h * y) / 20]
            expect(
              tiles.some(
                ({ window: b }) =>
                  px >= b.minX - 1e-6 && px <= b.maxX + 1e-6 && py >= b.minY - 1e-6 && py <= b.maxY + 1e-6
              )
            ).toBe(true)
          }
        // Neighbours overlap by 12 mm, and name each other.
        for (const t of tiles) {
          const r = tiles.find(o => o.number === t.right)
          if (r !== undefined) {
            expect(t.window.maxX - r.window.minX).toBeCloseTo(12, 9)
            expect(r.left).toBe(t.number)
          }
          const f = tiles.find(o => o.number === t.far)
          if (f !== undefined) {
            expect(t.window.maxY - f.window.minY).toBeCloseTo(12, 9)
            expect(f.near).toBe(t.number)
          }
        }
      }
  })
})

describe('the bed for pins', () => {
  // Cut on both faces by machine, pins at ± 165: 330 apart on the middle line (document); 8 less 0.05 of press.
  const both: PieceDocument = {
    ...PLAIN,
    mould: { margin: 40 },
    pins: {
      at: [
        [-165, 0],
        [165, 0]
      ],
      diameter: 8,
      depth: 12
    },
    cuts: [
      { id: 'a', face: 'back', shape: { rectangle: [60, 36], corner: 4, at: [60, 40] }, depth: 5 },
      { id: 'b', face: 'front', shape: { rectangle: [60, 36], corner: 4, at: [-60, 40] }, depth: 5 }
    ]
  }
  const at = (shop: ShopDocument) =>
    plan(
      { piece: checkPiece(both, 'piece'), shop: checkShop(shop, 'shop').value },
      { asOf: '2026-01-05T08:00:00Z', effort: 'preview' }
    )

  it('prints holes and zero 1 : 1 over joined sheets, with a bar each; without a machine nothing of it', () => {
    const with_ = at(SHOP)
    expect(with_.plan.verdict).not.toBe('stop')
    const { sheets } = paperTemplates(with_).find(t => t.name === 'holes in the bed')!
    const circles = sheets.flatMap((s, sheet) =>
      s.marks.flatMap(m => (m.kind === 'circle' ? [{ sheet, x: m.at[0], r: m.radiusMm }] : []))
    )
    for (const c of circles) expect(c.r).toBeCloseTo(7.95 / 2, 6)
    expect(new Set(circles.map(c => c.sheet)).size).toBeGreaterThanOrEqual(2)
    const words = sheets.map(s => s.marks.flatMap(m => (m.kind === 'text' ? [m.text] : [])).join(' '))
    for (const w of words) expect(w).toMatch(/this bar is 100 mm/)
    expect(words[0]).toMatch(/Middles of pins 330 apart/)
    expect(words.join(' ')).toMatch(/Ø 7\.95: -165 \/ 0/)
    // Laid together by their windows the sheets carry the distance.
    const t = pinTemplate(with_.work)!
    const { tiles } = tilingOf(t.scope, 'A4', () => true)
    const xs = circles.map(c => c.x + tiles[c.sheet]!.window.minX)
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(330, 6)
    expect(paperTemplates(at({ castwright: 1 })).map(p => p.name)).not.toContain('holes in the bed')
  })
})

describe('files', () => {
  it('each sheet is an SVG; none while a stop stands or where nothing wants one', () => {
    const files = templateFiles(planned([pocket], shop))
    const sheets = paperTemplates(planned([pocket], shop)).flatMap(t => t.sheets)
    expect(files.size).toBe(sheets.length)
    expect([...files.values()][0]).toContain('mm" viewBox="0 0 ')
    expect(templateFiles(planned([{ ...pocket, depth: 19 }], shop)).size).toBe(0)
    expect(templateFiles(planned([])).size).toBe(0)
  })
})
