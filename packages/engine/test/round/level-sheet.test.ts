import { describe, expect, test } from 'vitest'
import { levelSheet } from '../../src/round/level-sheet.ts'
import { levelsOf } from '../../src/round/level-stack.ts'
import { roundModel } from '../../src/round/round-model.ts'
import { intersection } from '../../src/shape/combine.ts'
import { area } from '../../src/shape/measure.ts'
import type { Mark } from '../../src/sheets/mark.ts'
import { coreModelOf } from '../../src/sheets/model.ts'
import { svgBody } from '../../src/sheets/svg.ts'
import { levelCut } from '../../src/stack/level-cut.ts'
import { PIECES } from './round-pieces.ts'

const texts = (marks: readonly Mark[]): string[] =>
  marks.flatMap(m => (m.kind === 'text' ? [m.text] : m.kind === 'group' ? texts(m.marks) : []))

describe.each(PIECES)('%s level by level', (_name, make) => {
  const work = make()
  const model = roundModel(work, coreModelOf(work))

  test('levels lie on each other and leave nothing out', () => {
    for (const to of [model.thicknessMm, 0.6 * model.thicknessMm]) {
      const levels = levelsOf(model, 0, to)
      expect(levels[0]!.fromMm).toBe(0)
      expect(levels[levels.length - 1]!.toMm).toBe(to)
      expect(levels.slice(1).map(l => l.fromMm)).toEqual(levels.slice(0, -1).map(l => l.toMm))
    }
  })

  test('outlines have the area of the stack cut level there', () => {
    const { stack } = work
    const cutAt = (mm: number) => {
      const z = stack.piece.down === 'back' ? stack.finishedLow + mm : stack.finishedHigh - mm
      return levelCut(stack.geometry, stack.events, z)
    }
    for (const { fromMm, toMm, parts } of levelsOf(model, 0, model.thicknessMm).flatMap(l => l.slabs)) {
      const mid = (fromMm + toMm) / 2
      const cut = cutAt(mid)
      // Where sides lean a slab is drawn as its nearest step: between what is there half a step lower and higher.
      const near =
        model.stepMm === 0 ? [cut] : [cutAt(mid - model.stepMm / 2), cut, cutAt(mid + model.stepMm / 2)]
      for (const { body, rings } of parts) {
        const index = Number(body.at.split('/').pop())
        const areas = near.map(c => {
          const there = c.find(p => p.material.kind === body.kind && p.material.index === index)
          return there === undefined ? 0 : area(intersection(there.region, stack.geometry.outline))
        })
        const drawn = area({ rings })
        expect(drawn, `${body.name} at ${mid}`).toBeGreaterThan(0.995 * Math.min(...areas))
        expect(drawn, `${body.name} at ${mid}`).toBeLessThan(1.005 * Math.max(...areas))
      }
      expect(parts.length).toBe(cut.filter(c => c.material.kind !== 'marking').length)
    }
  })

  test.each([88, 190])('a sheet of %i mm holds finite marks and names every level', widthMm => {
    for (const face of ['front', 'back'] as const) {
      const o = { widthMm, fromMm: 0, toMm: model.thicknessMm, face }
      const sheet = levelSheet(model, o)
      expect(svgBody(sheet)).not.toMatch(/NaN|Infinity|undefined/)
      const said = texts(sheet.marks).join('\n')
      expect(said.match(/ to .* mm/g)).toHaveLength(levelsOf(model, 0, model.thicknessMm).length)
      for (const b of model.bodies)
        if (b.kind === 'timber' || b.kind === 'pour') expect(said).toContain(b.name)
      expect(sheet.heightMm).toBeLessThan(2000)
    }
  })
})
