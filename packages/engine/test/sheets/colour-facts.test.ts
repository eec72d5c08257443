import { describe, expect, it } from 'vitest'
import { runSheetMarkdown } from '../../src/sheets/run-sheet-md.ts'
import { stepFacts } from '../../src/sheets/step-facts.ts'
import { PANEL, planOf, TABLE } from './pieces.ts'

const panel = { ...PANEL, cuts: PANEL.cuts!.filter(c => c.id !== 'cable channel') }

describe('colour on paper', () => {
  it('says at an opaque pour from what depth it hides, and how well that is known', () => {
    const { plan, work } = planOf(panel)
    const md = runSheetMarkdown(planOf(panel))
    const { centralMm } = work.hiding[0]!.depth!
    expect(md).toContain('Hides from')
    expect(md).toMatch(/a hiding card says it more sharply/)
    const pour = work.steps.findIndex(s => s.kind === 'pour' && s.pour!.index === 0)
    expect(stepFacts(plan, work, pour)).toContain(`hides from ${centralMm.toFixed(1)}`)
    // The clear pour over it hides nothing.
    const clear = work.steps.findIndex(s => s.kind === 'pour' && s.pour!.index === 1)
    expect(stepFacts(plan, work, clear).join()).not.toContain('hides')
  })

  it('says how much light a tint lets through', () => {
    const { work } = planOf(TABLE)
    expect(runSheetMarkdown(planOf(TABLE))).toContain(`${Math.round(100 * work.hiding[1]!.light)} %`)
  })

  // One minute of arc: 1.4 mm at 4.8 m.
  it('says from how far a line is told apart', () => {
    const { plan, work } = planOf(panel)
    const mark = work.steps.findIndex(s => s.kind === 'mark')
    expect(stepFacts(plan, work, mark)).toContain('told apart up to 4.8 m')
  })
})
