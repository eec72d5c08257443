import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import type { Planned } from '../../src/plan.ts'
import { stepDetail } from '../../src/sheets/run-step.ts'
import { stepFacts } from '../../src/sheets/step-facts.ts'
import { PLAIN } from '../findings/harness.ts'
import { planOf } from './pieces.ts'

type Cut = NonNullable<PieceDocument['cuts']>[number]
type Part = NonNullable<PieceDocument['hardware']>[number]

// In the clear resin between the boards: no season there. Film of two coats 0.1 on each wall.
const fitted = (cut: Partial<Cut>, part: Partial<Part>, film = 0.1, more: Partial<PieceDocument> = {}) =>
  planOf({
    ...PLAIN,
    finish: { both: { coat: 'oil-varnish', coats: 2, film } },
    cuts: [
      { id: 'bore', kind: 'bore', face: 'back', shape: { circle: 60.4, at: [0, 0] }, depth: 12, ...cut }
    ],
    hardware: [{ id: 'part', kind: 'round-insert', in: 'bore', diameter: 60, depth: 11, ...part }],
    ...more
  })

const at = ({ work }: Planned, kind: string) => work.steps.findIndex(s => s.kind === kind)
const facts = (p: Planned, kind: string) =>
  stepDetail(p.plan, p.work, at(p, kind)).facts.map(f => `${f.label}: ${f.value} ${f.unit}`.trim())
const does = (p: Planned, kind: string) => stepDetail(p.plan, p.work, at(p, kind)).does

describe('sizes on the sheets', () => {
  // 60.4 less twice 0.1 of film; a touch less as the resin cures on.
  it('say at the cut what it ends at, and what to cut for the gap wanted', () => {
    const p = fitted({}, { clearance: 0.3 })
    const { size } = p.plan.cuts[0]!
    expect(size!.drawnMm).toBe(60.4)
    expect(size!.finalMm[1]).toBeCloseTo(60.2, 1)
    // Wanted 0.3 on each side of 60, two films of 0.1 and the cure.
    expect(size!.cutMm).toBeCloseTo(60.4 + 2 * (0.3 - p.work.fits[0]!.clearanceMm![1]), 9)
    expect(size!.cutMm).toBeGreaterThan(60.79)
    expect(size!.cutMm).toBeLessThan(60.95)
    const lines = facts(p, 'cut')
    expect(lines.find(l => l.startsWith('Ends at'))).toMatch(/^Ends at: Ø 60\.\d to 60\.\d mm, after 2 coats/)
    expect(lines.find(l => l.startsWith('For the gap wanted'))).toMatch(/Ø 60\.\d mm, 0\.\d more than drawn/)
    expect(stepFacts(p.plan, p.work, at(p, 'cut')).join(', ')).toMatch(/ends Ø 60\.\d to 60\.\d/)
  })

  it('say at the fit the gap in the end, and what to do when it is tight', () => {
    const p = fitted({}, { clearance: 0.1 })
    expect(facts(p, 'fit').find(l => l.startsWith('Gap'))).toMatch(
      /^Gap on each side: 0\.\d+ mm, \u2212?0\.\d+ to 0\.\d+; wanted 0\.1$/
    )
    expect(does(p, 'fit').join(' ')).toContain('do not press it: scrape the coat off the walls')
    expect(stepFacts(p.plan, p.work, at(p, 'fit')).join(', ')).toMatch(/gap 0\.2, in the end/)
  })

  it('say nothing of tightness where there is room', () => {
    expect(does(fitted({ shape: { circle: 64, at: [0, 0] } }, {}), 'fit')).toEqual([
      'Try it dry first, from the back.'
    ])
  })

  it('say what to mask, at the cut and before the coats', () => {
    const p = fitted({ mask: true }, {})
    expect(does(p, 'cut')).toContain('Plug or tape it before the face is coated.')
    expect(does(p, 'coat')[0]).toBe('Before the first coat plug or tape bore.')
    expect(stepFacts(p.plan, p.work, at(p, 'cut'))).toContain('masked when coated')
    expect(stepFacts(p.plan, p.work, at(p, 'coat'))).toContain('mask bore')
  })

  // ISO 286: Ø6 H7 +12/0, m6 +12/+4: −12 to +8 µm.
  it('say the class of a pin and its hole', () => {
    const p = fitted(
      { shape: { circle: 6, at: [100, 0] }, toleranceClass: 'H7', mask: true },
      { kind: 'dowel-pin-6', diameter: undefined, depth: undefined, fitting: 'press' }
    )
    expect(does(p, 'cut')[0]).toBe('Drill it smaller and ream it to 6 H7: 6 to 6.012 mm.')
    expect(facts(p, 'fit')).toContain('Class: 6 H7/m6 play \u22120.012 to 0.008 mm; below 0 it is tight')
    expect(does(p, 'fit').join(' ')).toContain('Press it in square')
  })

  it('say the pilot, the countersink and the bores of hands', () => {
    const screw = fitted(
      { shape: { circle: 2.8, at: [100, 0] } },
      { kind: 'wood-screw-4', diameter: undefined, depth: undefined }
    )
    expect(facts(screw, 'fit').find(l => l.startsWith('Hole for it'))).toMatch(
      /2\.\d to 3(\.\d)? mm in timber/
    )
    const head = fitted(
      { shape: { circle: 4.5, at: [100, 0] } },
      { kind: 'machine-screw-m4', diameter: undefined }
    )
    expect(facts(head, 'fit')).toContain('Countersink: Ø 8.4 mm, 90°: until the head lies flush')
    const clock = fitted(
      { kind: 'pocket', shape: { rectangle: [59, 59], at: [0, 0] } },
      { kind: 'quartz-movement', diameter: undefined, depth: undefined }
    )
    expect(facts(clock, 'fit')).toContain(
      'Bores of the hands: 5-5.1 hour, 3.3-3.6 minute, 1 second mm; push fit'
    )
  })
})
