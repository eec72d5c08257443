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
    for (const level of levelsOf(model, 0, model.thicknessMm)) {
      const mid = (level.fromMm + level.toMm) / 2
      const { stack } = work
      const z = stack.piece.down === 'back' ? stack.finishedLow + mid : stack.finishedHigh - mid
      const cut = levelCut(stack.geometry, stack.events, z)
      for (const { body, rings } of level.parts) {
        if (body.kind !== 'timber') continue
        const index = Number(body.at.split('/').pop())
        const there = cut.find(c => c.material.kind === 'timber' && c.material.index === index)
        const left = area(intersection(there!.region, stack.geometry.outline))
        // 1.5 %: a level that leans is drawn as its nearest step.
        expect(Math.abs(area({ rings }) - left), body.name).toBeLessThan(0.015 * left)
      }
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
