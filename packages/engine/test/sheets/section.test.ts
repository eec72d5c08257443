import { describe, expect, it } from 'vitest'
import { area, bounds, inside } from '../../src/shape/measure.ts'
import type { CoreModel } from '../../src/sheets/core-model.ts'
import { corePartsAt } from '../../src/sheets/core-model.ts'
import type { ArrowMark, Mark, TextMark } from '../../src/sheets/mark.ts'
import { coreModelOf } from '../../src/sheets/model.ts'
import { sectionSheet } from '../../src/sheets/section.ts'
import type { Section } from '../../src/sheets/section-cut.ts'
import { sectionOf } from '../../src/sheets/section-cut.ts'
import { sectionPathOf } from '../../src/sheets/section-path.ts'
import { seeded } from '../../src/sheets/seeded.ts'
import { sheetViews } from '../../src/sheets/sheet-views.ts'
import { BOARDS, PANEL, planOf, TABLE } from './pieces.ts'

const planned = { PANEL: planOf(PANEL), TABLE: planOf(TABLE), BOARDS: planOf(BOARDS) }
const models = Object.fromEntries(
  Object.entries(planned).map(([k, p]) => [k, coreModelOf(p.work)])
) as Record<keyof typeof planned, CoreModel>

/** Area of each material in a section, mm². */
function areas(section: Section): Map<string, number> {
  const out = new Map<string, number>()
  for (const a of section.areas) {
    const key = a.material === null ? 'void' : `${a.material.kind} ${a.material.index}`
    out.set(key, (out.get(key) ?? 0) + Math.abs(area({ rings: [a.ring] })))
  }
  return out
}

describe('a section', () => {
  it('fills the piece between its faces: areas and voids together are width times thickness', () => {
    for (const [name, model] of Object.entries(models)) {
      const b = bounds(model.geometry.outline)
      // Away from the rounded corners of the outline.
      for (const at of [b.minY + 40, 0, b.maxY - 40]) {
        const section = sectionOf(model, { along: 'x', legs: [{ from: b.minX, to: b.maxX, at }] }, 2)
        const sum = [...areas(section).values()].reduce((p, q) => p + q, 0)
        const whole = (b.maxX - b.minX) * (model.finishedHigh - model.finishedLow)
        expect(sum / whole, `${name} at ${at}`).toBeCloseTo(1, 6)
      }
    }
  })

  // Where the side of a timber slants, timber and resin change places at half its height: however finely it is cut.
  it('finds the same widths in coarse steps and in fine ones', () => {
    const b = bounds(models.TABLE.geometry.outline)
    for (const at of [b.minX + 90, -20, 0, 133]) {
      const path = { along: 'y', legs: [{ from: b.minY, to: b.maxY, at }] } as const
      const [coarse, fine] = [2.4, 0.05].map(step => sectionOf(models.TABLE, path, step).columns)
      expect(coarse!.map(c => c.main)).toEqual(fine!.map(c => c.main))
      expect(coarse!.length).toBeGreaterThan(2)
      coarse!.forEach((c, i) => {
        expect(c.from).toBeCloseTo(fine![i]!.from, 2)
        expect(c.to).toBeCloseTo(fine![i]!.to, 2)
      })
    }
  })

  // Cavalieri again: sections at even steps, added up, are the volumes that level cuts integrate to.
  it('adds up to the volumes of the stack, material by material', () => {
    for (const name of ['PANEL', 'TABLE'] as const) {
      const model = models[name]
      const b = bounds(model.geometry.outline)
      const steps = 90
      const dy = (b.maxY - b.minY) / steps
      const sums = new Map<string, number>()
      for (let k = 0; k < steps; k++) {
        const at = b.minY + (k + 0.5) * dy
        for (const [key, mm2] of areas(
          sectionOf(model, { along: 'x', legs: [{ from: b.minX, to: b.maxX, at }] }, 8)
        ))
          sums.set(key, (sums.get(key) ?? 0) + (mm2 * dy) / 1000)
      }
      for (const [key, ml] of planned[name].volumes) {
        if (ml < 5) continue
        expect(
          Math.abs(sums.get(key)! / ml - 1),
          `${name} ${key}: ${sums.get(key)} against ${ml} ml`
        ).toBeLessThan(0.012)
      }
    }
  }, 20_000)

  it('shows at every place what a core there shows', () => {
    const random = seeded(41)
    for (const [name, model] of Object.entries(models)) {
      const path = sectionPathOf(planned[name as keyof typeof planned].work)
      const section = sectionOf(model, path, 1)
      for (let k = 0; k < 60; k++) {
        const leg = path.legs[Math.floor(random() * path.legs.length)]!
        const s = leg.from + (leg.to - leg.from) * random()
        const [x, y] = path.along === 'x' ? [s, leg.at] : [leg.at, s]
        const z = model.finishedLow + (model.finishedHigh - model.finishedLow) * random()
        const part = corePartsAt(model, x, y).find(p => z > p.from + 0.05 && z < p.to - 0.05)
        if (part === undefined) continue
        const at = section.areas.filter(
          a => path.legs[a.leg] === leg && inside({ rings: [counterClockwise(a.ring)] }, s, z)
        )
        const found = at.map(a => (a.material === null ? 'void' : `${a.material.kind} ${a.material.index}`))
        const wanted = part.material === null ? 'void' : `${part.material.kind} ${part.material.index}`
        expect(found, `${name} at ${x}, ${y}, ${z}`).toContain(wanted)
      }
    }
  })

  // The line through the middle of a river meets the river alone.
  it('cuts a river table across, so that both slabs and their slanted edges are seen', () => {
    const { work } = planOf({ ...TABLE, cuts: [] })
    const model = coreModelOf(work)
    const path = sectionPathOf(work)
    expect(path.along).toBe('y')
    const leg = path.legs[0]!
    expect([leg.from, leg.to]).toEqual([-210, 210])
    const section = sectionOf(model, path, 1)
    const main = section.columns.map(c => (c.main === null ? 'void' : `${c.main.kind} ${c.main.index}`))
    expect(main[0]).toBe('timber 0')
    expect(main[main.length - 1]).toBe('timber 1')
    expect(main.some(m => m.startsWith('pour'))).toBe(true)
    // From the document: the front slab's underside reaches 16 mm further than its top, over 38 mm of thickness.
    const slab = section.areas.filter(a => a.material?.kind === 'timber' && a.material.index === 0)
    const ends = slab.flatMap(a => [...a.ring].filter((_, k) => k % 2 === 0))
    const edge = Math.max(...ends)
    const thick = model.finishedHigh - model.finishedLow
    const upper = Math.max(
      ...slab.flatMap(a =>
        [...a.high].flatMap((z, k) => (k % 2 === 1 && z > model.finishedHigh - 0.05 ? [a.high[k - 1]!] : []))
      )
    )
    expect(Math.abs(edge - upper - (16 * thick) / 38)).toBeLessThan(1)

    // On the plan: a line from edge to edge at that x, two arrows that look to smaller x, two letters.
    const { front, sectionTrue, across, enlarged } = sheetViews(work, model)[0]!
    expect(across).toBe(true)
    const view = sheetViews(work, model)[0]!.views[0]!
    const flat = (marks: readonly Mark[]): Mark[] =>
      marks.flatMap(m => (m.kind === 'group' ? flat(m.marks) : [m]))
    const arrows = flat(front.marks).filter(
      (m): m is ArrowMark => m.kind === 'arrow' && m.ink === 'cutting-plane'
    )
    expect(arrows.map(a => a.directionDeg)).toEqual([180, 180])
    const line = flat(front.marks).find(m => m.kind === 'path' && m.ink === 'cutting-plane')
    expect(line?.kind === 'path' && line.lines[0]![0]).toBeCloseTo(view.originX + leg.at * view.scale, 6)
    const words = flat(front.marks).filter((m): m is TextMark => m.kind === 'text' && m.text === 'A')
    expect(words).toHaveLength(2)
    // Under it the figures of timber, resin, timber together are the width of the table.
    const figures = flat(sectionTrue.marks)
      .filter((m): m is TextMark => m.kind === 'text')
      .flatMap(m => (/^\d+( walnut)?$/.test(m.text) ? [Number.parseInt(m.text, 10)] : []))
    expect(figures.reduce((a, b) => a + b, 0)).toBeGreaterThanOrEqual(419)
    expect(enlarged * view.scale * 420).toBeLessThanOrEqual(132)
  })

  it('finds upright edges to a thousandth', () => {
    const section = sectionOf(models.PANEL, { along: 'x', legs: [{ from: -260, to: 260, at: 72 }] }, 5)
    const walls = section.walls.map(w => w.at)
    // The plate pocket: 62 wide about -205.
    for (const x of [-236, -174]) expect(Math.min(...walls.map(w => Math.abs(w - x)))).toBeLessThan(1e-3)
  })

  it('runs through what is worth seeing, one leg after the other across the whole piece', () => {
    const { work } = planned.PANEL
    const { legs } = sectionPathOf(work)
    expect(legs[0]!.from).toBeCloseTo(-260, 6)
    expect(legs[legs.length - 1]!.to).toBeCloseTo(260, 6)
    for (let k = 1; k < legs.length; k++) expect(legs[k]!.from).toBe(legs[k - 1]!.to)
    const compass = work.fits[0]!
    const leg = legs.find(l => compass.x >= l.from && compass.x <= l.to)!
    expect(leg.at).toBeCloseTo(compass.y, 6)
  })
})

describe('the section as a sheet', () => {
  const model = models.PANEL
  const path = sectionPathOf(planned.PANEL.work)
  const section = sectionOf(model, path, 1)
  const draw = (stretch: number) =>
    sectionSheet(model, section, {
      scale: 0.25,
      stretch,
      originX: 80,
      widthMm: 166,
      parts: [],
      rounds: [{ at: 92, diameterMm: 68 }]
    })
  const flat = (marks: readonly Mark[]): Mark[] =>
    marks.flatMap(m => (m.kind === 'group' ? flat(m.marks) : [m]))

  it('stretches heights and nothing else', () => {
    const [one, three] = [draw(1), draw(3)]
    expect(three.heightMm - one.heightMm).toBeCloseTo(2 * 28 * 0.25, 6)
    expect(three.widthMm).toBe(one.widthMm)
  })

  it('dimensions the geometry: figures below are the distances of their arrowheads', () => {
    const marks = flat(draw(1).marks)
    const arrows = marks.filter((m): m is ArrowMark => m.kind === 'arrow')
    const words = marks.filter((m): m is TextMark => m.kind === 'text').map(t => t.text)
    expect(words).toContain('28')
    expect(words).toContain('Ø 68')
    expect(words.filter(w => w === '15.4' || w === '12.6')).toHaveLength(2)
    // The hole: two arrowheads 68 mm apart at 1 : 4.
    const xs = arrows.map(a => a.at[0])
    const left = 80 + (92 - 34) * 0.25
    expect(xs.some(x => Math.abs(x - left) < 0.01)).toBe(true)
    expect(xs.some(x => Math.abs(x - (left + 68 * 0.25)) < 0.01)).toBe(true)
  })
})

function counterClockwise(ring: Float64Array): Float64Array {
  if (area({ rings: [ring] }) > 0) return ring
  const out = new Float64Array(ring.length)
  for (let k = 0; k < ring.length; k += 2) {
    out[k] = ring[ring.length - 2 - k]!
    out[k + 1] = ring[ring.length - 1 - k]!
  }
  return out
}
