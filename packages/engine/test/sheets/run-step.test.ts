import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import type { Planned } from '../../src/plan.ts'
import { page } from '../../src/sheets/page.ts'
import { runSheet } from '../../src/sheets/run-sheet.ts'
import { stepDetail } from '../../src/sheets/run-step.ts'
import { stepFacts } from '../../src/sheets/step-facts.ts'
import { BOARDS, PANEL, planOf, TABLE } from './pieces.ts'

/** A plan with every stop gone on despite, so that its sheets are written. */
function going(piece: PieceDocument): Planned {
  const despite = planOf(piece).plan.findings.map(f => ({ id: f.id, because: 'the test says so' }))
  return planOf(piece, { despite })
}

const ASSETS = { script: '', style: '', fonts: [] }
const table = going(TABLE)
const boards = going(BOARDS)
const panel = going(PANEL)

const stepAt = ({ work }: Planned, kind: string) => work.steps.findIndex(s => s.kind === kind)

describe('trimming on the sheets', () => {
  it('says the finished size and how much waste stands round it', () => {
    const i = stepAt(table, 'trim')
    // The table is 600 × 420 with corners of 30 mm in a mould 10 mm larger: its waste is widest in the corners.
    const reach = Math.hypot(10 + 30, 10 + 30) - 30
    expect(stepFacts(table.plan, table.work, i)).toEqual([
      '600 × 420 finished',
      `up to ${reach.toFixed(1)} of waste round it`
    ])
    expect(stepDetail(table.plan, table.work, i).facts.map(f => f.value)).toEqual([
      '600 × 420',
      `up to ${reach.toFixed(1)}`,
      'fine blade, along a rail or a line',
      'about 25 min'
    ])
    expect(table.plan.steps[i]!.safety.length).toBe(4)
  })

  it('is left out where a cut frees the piece', () => {
    expect(stepAt(panel, 'trim')).toBe(-1)
    expect(stepAt(panel, 'cut')).toBeGreaterThan(0)
  })
})

describe('sealing on the sheets', () => {
  const words = (p: Planned) => stepDetail(p.plan, p.work, stepAt(p, 'prepare timber')).does.join(' ')

  it('names the seal pour where there is one', () => {
    expect(words(table)).toContain('Its sides are sealed with seal, still tacky when the resin comes.')
  })

  it('else asks for a coat of the resin of the pour shortly before it, and promises none', () => {
    expect(words(panel)).toContain('Shortly before the pour brush a thin coat of its resin on the sides')
    expect(words(panel)).not.toMatch(/sealed/)
  })

  it('is not spoken of where nothing is cast', () => {
    expect(words(boards)).not.toMatch(/seal|tacky/i)
  })
})

describe('the sheets of boards that are not cast', () => {
  it('speak of no mould', () => {
    const text = page(boards, ASSETS)
    expect(text).not.toContain('id="mould-head"')
    expect(text).not.toMatch(/mould (once|is filled)|Make the mould|out of the mould/)
    expect(page(table, ASSETS)).toContain('id="mould-head"')
    const run = runSheet(boards)
    expect(run.quantity).not.toMatch(/mould/)
    expect(run.quantity).toMatch(/good pieces\. Amounts/)
    expect(run.steps.some(s => /mould/.test(s.face) || s.kind === 'make mould')).toBe(false)
    expect(run.steps[0]!.facts.map(f => f.label)).not.toContain('In the mould')
  })
})

describe('the day it is ready', () => {
  it('is the day that Deliver stands under', () => {
    for (const planned of [table, boards, panel]) {
      const text = page(planned, ASSETS)
      const ready = /<dt>Ready<\/dt><dd>day (\d+)/.exec(text)![1]
      const days = [...text.matchAll(/<li class="day">Day (\d+)/g)].map(m => m[1])
      expect(ready, planned.plan.name).toBe(days.at(-1))
    }
  })
})
