import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { stepDetail } from '../../src/sheets/run-step.ts'
import { stepFacts } from '../../src/sheets/step-facts.ts'
import { PLAIN } from '../findings/harness.ts'
import { planOf } from './pieces.ts'

type Cut = NonNullable<PieceDocument['cuts']>[number]

const shown = (cut: Cut) => {
  const { plan, work } = planOf({ ...PLAIN, cuts: [cut] })
  const i = work.steps.findIndex(s => s.kind === 'cut')
  const { does, facts } = stepDetail(plan, work, i)
  return {
    does,
    facts: facts.map(f => [f.label, f.value, f.unit].join(' ').trim()),
    phrases: stepFacts(plan, work, i)
  }
}
const trim: Cut = {
  id: 'trim',
  kind: 'outline',
  face: 'front',
  shape: { difference: [{ rectangle: [312, 212] }, { rectangle: [300, 200] }] },
  through: true
}

describe('what holds a part that is cut out, on its sheets', () => {
  it('tabs: their count and size, and that they are sawn through', () => {
    const { does, facts, phrases } = shown({ ...trim, tabs: { count: 6 } })
    expect(facts.some(f => /^Tabs 6 of 8 × 3 mm$/.test(f))).toBe(true)
    expect(does.some(d => /Saw the tabs through/.test(d))).toBe(true)
    expect(phrases).toContain('6 tabs')
    expect(shown({ ...trim, tabs: true }).phrases).toContain('4 tabs')
  })

  it('a skin; and nothing where nothing is asked for, or nothing is milled', () => {
    const skin = shown({ ...trim, skin: 0.5 })
    expect(skin.facts).toContain('Skin 0.5 mm left all round')
    expect(skin.phrases).toContain('a skin of 0.5 left')
    expect(skin.does.some(d => /Saw through the skin/.test(d))).toBe(true)
    for (const plain of [shown(trim), shown({ ...trim, tabs: true, way: 'saw' })])
      expect([...plain.does, ...plain.facts, ...plain.phrases].join(' ')).not.toMatch(/tabs?\b|skin/i)
  })

  it('of a pocket: islands, corners, last pass, direction, cutter', () => {
    const { facts } = shown({
      id: 'pocket',
      face: 'back',
      shape: { rectangle: [60, 60], at: [100, 0] },
      islands: [{ circle: 20, at: [100, 0] }],
      depth: 6,
      corners: 'relieved',
      allowance: 0.3,
      direction: 'conventional',
      cutter: 'flat-6'
    })
    expect(facts).toEqual(
      expect.arrayContaining([
        'Left standing 1 island',
        'Corners bored out so that a square part goes in',
        'Last pass 0.3 mm off the walls',
        'Direction conventional',
        'Cutter flat-6'
      ])
    )
  })
})
