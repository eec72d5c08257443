import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { checkPiece, checkShop, usualShop } from '../../src/piece/read.ts'
import { plan } from '../../src/plan.ts'
import { bounds } from '../../src/shape/measure.ts'
import { cupLabels } from '../../src/sheets/cup-label.ts'
import type { Mark, Sheet } from '../../src/sheets/mark.ts'
import { runSheet } from '../../src/sheets/run-sheet.ts'
import { sectionDrawing } from '../../src/sheets/section-sheet.ts'
import { PLAIN } from '../findings/harness.ts'
import { PANEL } from './pieces.ts'

const EXAMPLE = JSON.parse(
  readFileSync(join(import.meta.dirname, '../../../../examples/saltmarsh-panel.piece.json'), 'utf8')
) as object

const planned = (piece: object, more: object = {}) =>
  plan(
    { piece: checkPiece({ ...piece, ...more }, 'piece'), shop: usualShop() },
    { asOf: '2026-01-05T08:00:00Z', effort: 'preview' }
  )

function flat(marks: readonly Mark[]): Mark[] {
  return marks.flatMap(m => (m.kind === 'group' ? flat(m.marks) : [m]))
}

function spots(m: Mark): readonly (readonly [number, number])[] {
  const pairs = (a: Float64Array) =>
    Array.from({ length: a.length / 2 }, (_, k) => [a[2 * k]!, a[2 * k + 1]!] as const)
  switch (m.kind) {
    case 'line':
      return [m.from, m.to]
    case 'path':
      return m.lines.flatMap(pairs)
    case 'region':
      return m.rings.flatMap(pairs)
    case 'group':
      return []
    default:
      return [m.at]
  }
}

const words = (s: Sheet) => flat(s.marks).flatMap(m => (m.kind === 'text' ? [m.text] : []))

describe('the workshop drawing', () => {
  it.each([
    ['a panel', PANEL, 'A4'],
    ['a panel', PANEL, 'letter'],
    ['a large one', { ...PLAIN, outline: { rectangle: [2400, 900] }, mould: {}, timbers: [] }, 'A4'],
    ['a small one', { ...PLAIN, outline: { rectangle: [40, 30] }, timbers: [] }, 'A4']
  ] as const)('%s lies to a scale of ISO 5455 within the frame of ISO 5457: %#', (_name, piece, paper) => {
    const p = planned(piece)
    const sheet = sectionDrawing(p, paper)
    const said = words(sheet)
    const scale = said.find(w => /^\d+:\d+$/.test(w))!
    // The scales of ISO 5455 (memory).
    expect(['10:1', '5:1', '2:1', '1:1', '1:2', '1:5', '1:10', '1:20', '1:50']).toContain(scale)
    const [a, b] = scale.split(':').map(Number)
    for (const m of flat(sheet.marks))
      for (const [x, y] of spots(m)) {
        expect(x).toBeGreaterThan(20 - 0.01)
        expect(x).toBeLessThan(sheet.widthMm - 10 + 0.01)
        expect(y).toBeGreaterThan(10 - 0.01)
        expect(y).toBeLessThan(sheet.heightMm - 10 + 0.01)
      }
    // The outline of the plan is as long on paper as the scale says.
    const box = bounds(p.work.stack.geometry.outline)
    const long = ((box.maxX - box.minX) * a!) / b!
    const widths = flat(sheet.marks).flatMap(m =>
      m.kind === 'region' && m.edge === 'outline'
        ? [Math.max(...spots(m).map(s => s[0])) - Math.min(...spots(m).map(s => s[0]))]
        : []
    )
    expect(widths.some(w => Math.abs(w - long) < 0.05)).toBe(true)
    expect(said).toContain(p.plan.name)
    expect(said).toContain('A–A')
  })

  it('in inches says so in the title block and in every size', () => {
    const said = words(
      sectionDrawing(planned(PANEL), 'letter', { length: 'in', temperature: '°F', mass: 'oz' })
    )
    expect(said).toContain('finished size, in')
    expect(said.join(' ')).not.toContain('finished size, mm')
  })
})

describe('labels for cups', () => {
  it('there is one for each batch, with all its shares and their sum', () => {
    const sheet = runSheet(planned(EXAMPLE))
    const labels = cupLabels(sheet, 'A4')
    const cups = sheet.steps.reduce((sum, s) => sum + (s.amounts?.batches ?? 0), 0)
    const said = labels.flatMap(words)
    expect(cups).toBeGreaterThan(0)
    expect(said.filter(w => w === 'Total')).toHaveLength(cups)
    for (const s of sheet.steps)
      for (const share of s.amounts?.shares ?? [])
        expect(
          said.some(w => w.startsWith(`${share.words} g`)),
          share.name
        ).toBe(true)
    for (const l of labels)
      for (const m of flat(l.marks))
        for (const [x, y] of spots(m)) {
          expect(Math.min(x, y)).toBeGreaterThan(7.9)
          expect(x).toBeLessThan(l.widthMm - 7.9)
          expect(y).toBeLessThan(l.heightMm - 7.9)
        }
  })

  const ONE_RESIN = {
    ...EXAMPLE,
    pours: (EXAMPLE as { pours: object[] }).pours.map(p => ({ ...p, resin: 'deep' })),
    markings: (EXAMPLE as { markings: object[] }).markings.map(m => ({ ...m, resin: 'deep' }))
  }

  it('say the lot where all of a cup comes from one of the shelf, and leave a line for it elsewhere', () => {
    const at = (lots: object[]) => {
      const shop = checkShop(
        { castwright: 1, prices: [{ item: 'deep', unit: 'g', pack: 1000, price: 20, lots }] } as never,
        'shop'
      ).value
      const sheet = runSheet(
        plan(
          { piece: checkPiece(ONE_RESIN, 'piece'), shop },
          { asOf: '2026-01-05T08:00:00Z', effort: 'preview' }
        )
      )
      const deep = sheet.steps.filter(s => s.amounts !== null)
      const labels = cupLabels(sheet, 'A4').flatMap(l => flat(l.marks))
      const said = labels.filter(m => m.kind === 'text').map(m => m.text)
      return {
        cups: deep.reduce((sum, s) => sum + s.amounts!.batches, 0),
        said,
        lines: labels.filter(m => m.kind === 'line').length
      }
    }
    const one = at([{ amount: 90_000, lot: 'K2' }])
    const none = at([])
    const several = at([
      { amount: 1, lot: 'K2', expires: '2026-06-01' },
      { amount: 90_000, lot: 'L3' }
    ])
    expect(one.cups).toBeGreaterThan(1)
    expect(one.said.filter(w => w === 'K2')).toHaveLength(one.cups)
    // A cup without a known lot has the lines of lot and moment, one with it that of the moment alone.
    expect([one.lines, none.lines]).toEqual([one.cups, 2 * one.cups])
    expect(none.said).not.toContain('K2')
    // The first pour takes the last gram of K2 and goes on with L3: nothing is printed for it, L3 for those after it.
    expect(several.said).not.toContain('K2')
    expect(several.said.filter(w => w === 'L3').length).toBeGreaterThan(0)
    expect(several.lines).toBeGreaterThan(one.lines)
  })

  it('there is none while a stop stands', () => {
    const stopped = planned(PANEL, { timbers: [] })
    const sheet = runSheet(stopped)
    expect(cupLabels({ ...sheet, written: false }, 'A4')).toEqual([])
  })
})
