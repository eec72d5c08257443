import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { checkPiece, usualShop } from '../../src/piece/read.ts'
import { plan } from '../../src/plan.ts'
import { runSheetMarkdown } from '../../src/sheets/run-sheet-md.ts'
import { PLAIN } from '../findings/harness.ts'

const cast = (tint: object[], depth: number) => {
  const document = {
    ...PLAIN,
    pours: [
      { id: 'layer', resin: 'deep', depth, tint },
      { id: 'clear', resin: 'deep', height: 20 }
    ],
    hardware: [{ id: 'magnet', kind: 'magnet-disc', at: [0, 0], castIn: 'layer' }]
  } as PieceDocument
  return plan(
    { piece: checkPiece(document, 'piece'), shop: usualShop() },
    { asOf: '2026-11-20T09:00+01:00', effort: 'preview' }
  )
}

describe('a part that is cast in', () => {
  it('is seen plainly through clear resin and less the deeper it lies under a tint, until it is hidden', () => {
    const clear = cast([], 8).work.partsSeen[0]!
    expect(clear.seen.shows).toBe('yes')
    const green = [{ pigment: 'green-paste', percent: 0.5 }]
    const seen = [4, 6, 8, 12].map(depth => cast(green, depth).work.partsSeen[0]!)
    seen.forEach((s, i) => {
      if (i > 0) expect(s.seen.difference).toBeLessThanOrEqual(seen[i - 1]!.seen.difference)
      // The disc is 3 mm thick and lies on the floor of its pour, of which flattening the back takes 1 mm.
      expect(s.coverMm).toBeCloseTo(cast(green, [4, 6, 8, 12][i]!).work.stack.pours[0]!.depth - 4, 6)
    })
    expect(seen[0]!.seen.difference).toBeGreaterThan(2)
    expect(seen.at(-1)!.seen.shows).toBe('no')
  })

  it('is told at its pour and in the plan', () => {
    const planned = cast([], 8)
    expect(planned.plan.hardware[0]!.seen!.shows).toBe('yes')
    expect(runSheetMarkdown(planned)).toMatch(/Magnet from the front \*\*shows: yes\*\*/)
  })
})
