import { describe, expect, it } from 'vitest'
import { curveSheet } from '../../src/sheets/curve.ts'
import { lanesOf } from '../../src/sheets/curve-lanes.ts'
import type { Mark } from '../../src/sheets/mark.ts'
import { textWidthMm } from '../../src/sheets/mark.ts'
import { curveWords, rowsOf } from '../../src/sheets/page-card.ts'
import { windowRows } from '../../src/sheets/window-rows.ts'
import { PANEL, planOf, TABLE } from './pieces.ts'

const plans = [planOf(PANEL), planOf(TABLE)]
const casts = plans.flatMap(({ plan }) =>
  plan.pours.flatMap((p, i) => (p.cast === null ? [] : [{ cast: p.cast, rows: rowsOf(plan, i) }]))
)
const texts = (marks: readonly Mark[]): { text: string; x: number; y: number }[] =>
  marks.flatMap(m =>
    m.kind === 'group' ? texts(m.marks) : m.kind === 'text' ? [{ text: m.text, x: m.at[0], y: m.at[1] }] : []
  )

describe('the band of a curve', () => {
  it('holds the curve at every moment and ends at the band of the peak', () => {
    expect(casts.length).toBeGreaterThan(1)
    for (const { cast } of casts) {
      const { curve } = cast
      curve.hottestC.forEach((c, i) => {
        expect(curve.lowC[i]!).toBeLessThanOrEqual(c)
        expect(curve.highC[i]!).toBeGreaterThanOrEqual(c)
        expect(curve.lowPaS[i]!).toBeLessThanOrEqual(curve.viscosityPaS[i]!)
        expect(curve.highPaS[i]!).toBeGreaterThanOrEqual(curve.viscosityPaS[i]!)
      })
      // Samples of the hottest corner lie between the moments of the curve: a kelvin and a twentieth of its rise.
      const rise = cast.peakBandC[1] - cast.startC
      expect(Math.abs(Math.max(...curve.highC) - cast.peakBandC[1])).toBeLessThan(1 + rise / 20)
    }
  })
})

describe('the sheet of a curve', () => {
  it('lays equal ratios of time at equal distances', () => {
    for (const { cast, rows } of casts) {
      const { marks } = curveSheet(cast, { widthMm: 86, rows })
      const at = (words: string) => texts(marks).find(t => t.text === words)!.x
      // 1 h, 6 h and 36 h would be even steps; of the ticks 3, 6 and 12 h are, and 1 d and 2 d go on.
      const double = at('6') - at('3')
      for (const [a, b] of [
        ['6', '12'],
        ['12', '1 d'],
        ['1 d', '2']
      ] as const)
        expect(at(b) - at(a)).toBeCloseTo(double, 6)
    }
  })

  it('keeps windows and their names apart in a lane, and the sure part within the doubt', () => {
    const axis = {
      x: (min: number) => 8 + 20 * Math.log10(Math.max(5, min) / 5),
      fromMm: 8,
      toMm: 72,
      widthMm: 86
    }
    for (const { rows } of casts) {
      const laid = lanesOf(rows, axis)
      expect(laid.length).toBeGreaterThan(3)
      const spans = laid.map(({ row, lane, labelAt, anchor }) => {
        const wide = textWidthMm(row.short, 3.25)
        const [from, to] = anchor === 'start' ? [labelAt, labelAt + wide] : [labelAt - wide, labelAt]
        expect(from).toBeGreaterThanOrEqual(0)
        expect(to).toBeLessThanOrEqual(axis.widthMm)
        return {
          lane,
          from: Math.min(from, axis.x(row.window.band[0])),
          to: Math.max(to, axis.x(row.window.close ?? 1e4))
        }
      })
      for (const [i, a] of spans.entries())
        for (const b of spans.slice(i + 1))
          if (a.lane === b.lane) expect(a.to <= b.from || b.to <= a.from).toBe(true)
      for (const { window: w } of rows) {
        expect(w.openBand[0]).toBeGreaterThanOrEqual(w.band[0] - 1e-9)
        if (w.openBand[1] !== null) expect(w.openBand[1]).toBeGreaterThanOrEqual(w.open - 1e-9)
      }
    }
  })

  it('says every figure it draws, and fits its paper', () => {
    for (const { cast, rows } of casts) {
      const sheet = curveSheet(cast, { widthMm: 86, rows })
      const words = curveWords(cast, 'green', rows)
      for (const r of rows) expect(words).toContain(r.says)
      expect(words).toContain(`peak ${cast.peakC.toFixed(0)} °C`)
      expect(words).not.toMatch(/NaN|undefined|Infinity/)
      for (const t of texts(sheet.marks)) {
        expect(t.y, t.text).toBeGreaterThanOrEqual(0)
        expect(t.y + 3.25, t.text).toBeLessThanOrEqual(sheet.heightMm)
      }
    }
  })

  it('names windows only where they matter, and none for a pour that runs away', () => {
    const { cast } = casts[0]!
    const labels = (next: boolean, inMould: boolean) => windowRows(cast, { next, inMould }).map(r => r.short)
    expect(labels(true, true)).toContain('next pour')
    expect(labels(false, true)).not.toContain('next pour')
    expect(labels(false, false)).not.toContain('out of the mould')
    expect(windowRows({ ...cast, runaway: true }, { next: true, inMould: true })).toEqual([])
    for (const r of windowRows(cast, { next: true, inMould: true }))
      expect(r.sharper.length).toBeGreaterThan(10)
  })
})
