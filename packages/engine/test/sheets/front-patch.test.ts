import { expect, it } from 'vitest'
import { checkPiece, usualShop } from '../../src/piece/read.ts'
import { plan } from '../../src/plan.ts'
import { frontPatch } from '../../src/sheets/front-patch.ts'
import { textWidthMm } from '../../src/sheets/mark.ts'
import { coreModelOf } from '../../src/sheets/model.ts'
import { PLAIN } from '../findings/harness.ts'

it('what the eye meets is said within the drawing, however long the word', () => {
  // A socket under a thin green layer: it shows only with the weakest pigment (invented).
  const piece = {
    ...PLAIN,
    timbers: PLAIN.timbers!.map(t => ({ ...t, thickness: 30 })),
    pours: [
      { id: 'sea', resin: 'deep', depth: 14, tint: [{ pigment: 'green-paste', percent: 2 }], opaque: true },
      { id: 'clear', resin: 'deep', height: 30 }
    ],
    cuts: [{ id: 'socket', face: 'back' as const, shape: { circle: 20.3 }, depth: 11.4 }]
  }
  const { work } = plan(
    { piece: checkPiece(piece, 'piece'), shop: usualShop() },
    { asOf: '2026-11-20T09:00+01:00', effort: 'preview' }
  )
  const sheet = frontPatch(coreModelOf(work), 0, 0, 58)
  const texts = sheet.marks.flatMap(m => (m.kind === 'text' ? [m] : []))
  expect(texts.map(t => t.text).join(' ')).toContain('the void shows: no, perhaps')
  for (const t of texts) {
    expect(t.at[0] + textWidthMm(t.text, t.heightMm, t.strong ?? false), t.text).toBeLessThanOrEqual(58)
    expect(t.at[1], t.text).toBeGreaterThan(0)
    expect(t.at[1] + t.heightMm * 0.7, t.text).toBeLessThan(sheet.heightMm)
  }
})
