import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { checkPiece, checkShop } from '../../src/piece/read.ts'
import { plan } from '../../src/plan.ts'
import { METRIC } from '../../src/quantity/shown-units.ts'
import { bowFacts, bowPhrase, orderLines } from '../../src/sheets/bow-words.ts'
import { runSheetMarkdown } from '../../src/sheets/run-sheet-md.ts'
import { stepFacts } from '../../src/sheets/step-facts.ts'
import { PLAIN } from '../findings/harness.ts'

const planned = (piece: PieceDocument) =>
  plan(
    { piece: checkPiece(piece, 'piece'), shop: checkShop({ castwright: 1 }, 'shop').value },
    { asOf: '2026-12-01T09:00:00Z', effort: 'preview' }
  )

/** A skin of resin over both boards, on four legs. */
const SKINNED: PieceDocument = {
  ...PLAIN,
  pours: [{ id: 'clear', resin: 'deep', depth: 23 }],
  supports: {
    legs: [
      [-100, -80],
      [100, -80],
      [100, 80],
      [-100, 80]
    ]
  }
}

describe('the bow in words', () => {
  it('stands at the steps that change it, with its band, on the sheet and on the card', () => {
    const made = planned(SKINNED)
    const { plan: p, work } = made
    const step = (kind: string) => work.steps.findIndex(s => s.kind === kind)
    const out = step('demould')
    const row = p.bow!.rows.find(r => r.when === 'demoulded')!
    expect(row.step).toBe(work.steps[out]!.number)
    expect(bowPhrase(work, out, METRIC)).toMatch(
      /^bows about 0\.\d, band 0\.\d to \d\.\d, hollow on the front$/
    )
    expect(stepFacts(p, work, out).join('; ')).toContain('bows about')
    const deliver = stepFacts(p, work, work.steps.length - 1).join('; ')
    expect(deliver).toMatch(/bows about .*; slots of ± /)
    const sheet = runSheetMarkdown(made)
    expect(sheet).toMatch(/Bows.* mm over 300; .* to .*, hollow on the front/)
    expect(sheet).toMatch(/Bows in the driest air/)
    expect(sheet).toMatch(/Slots for its screws/)
    // Less than a hair of sag is not said.
    expect(work.inUse!.sag!.bandMm[1]).toBeLessThan(0.05)
    expect(sheet).not.toMatch(/Sags/)
  })

  it('is silent where there is none', () => {
    const made = planned(PLAIN)
    const { plan: p, work } = made
    work.steps.forEach((_, i) => {
      expect(bowPhrase(work, i, METRIC)).toBeNull()
      expect(bowFacts(work, i, 'Bows')).toEqual([])
      expect(orderLines(work, i)).toEqual([])
    })
    expect(runSheetMarkdown(made)).not.toMatch(/[Bb]ows/)
    expect(p.inUse).toBeNull()
  })

  it('names what has to be lifted only where it is worth a word', () => {
    const heavy: PieceDocument = {
      ...PLAIN,
      outline: { rectangle: [900, 500] },
      timbers: [-1, 1].map(side => ({
        id: side < 0 ? 'left' : 'right',
        species: 'ash-white',
        outline: { rectangle: [400, 500], at: [side * 250, 0] },
        thickness: 40,
        moisture: 8.5,
        grain: 90
      })),
      pours: [
        { id: 'lower', resin: 'deep', depth: 20 },
        { id: 'upper', resin: 'deep', fill: 'timber' }
      ]
    }
    const { plan: p, work } = planned(heavy)
    expect(
      stepFacts(
        p,
        work,
        work.steps.findIndex(s => s.kind === 'turn over')
      ).join()
    ).toMatch(/about \d+ kg to lift/)
    expect(stepFacts(planned(PLAIN).plan, planned(PLAIN).work, 7).join()).not.toMatch(/to lift/)
  })
})
