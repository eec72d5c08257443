import { describe, expect, test } from 'vitest'
import { KINDS, newPiece } from '../../src/piece/kind.ts'
import { checkPiece, usualShop } from '../../src/piece/read.ts'
import { startedPiece, usualStart } from '../../src/piece/started.ts'
import { check, plan } from '../../src/plan.ts'

const asOf = '2026-11-27T09:00:00Z'
const planned = (document: unknown) => ({ piece: checkPiece(document, 'started'), shop: usualShop() })

describe.each(KINDS.map(k => k.kind))('a %s started at a size', kind => {
  const usual = newPiece(kind)
  const start = usualStart(kind)
  const [w, h] = start.sizeMm
  const t = start.thicknessMm

  test('is the kind itself as it is usually begun', () => {
    expect(startedPiece(start)).toEqual(usual)
  })

  test('is of the timber and the resin asked for', () => {
    const piece = startedPiece({ ...start, species: 'cherry-black', resin: 'slow' })
    expect(new Set(piece.timbers!.map(x => x.species))).toEqual(new Set(['cherry-black']))
    expect(new Set(piece.pours.map(x => x.resin))).toEqual(new Set(['slow']))
  })

  test.each([
    [1, 1, 1],
    [1.3, 1.2, 1],
    [0.8, 0.9, 0.9],
    [1.6, 1.6, 1.2]
  ])('comes out at that size, without a stop: × %d, %d, %d', (fx, fy, fz) => {
    const sizeMm = [Math.round(w * fx), Math.round(h * fy)] as const
    const thicknessMm = Math.round(t * fz)
    const piece = startedPiece({ ...start, sizeMm, thicknessMm })
    const p = plan(planned(piece), { asOf, effort: 'preview' }).plan
    const round = usual.outline.circle !== undefined
    expect(p.totals.sizeMm[0]).toBeCloseTo(round ? Math.min(...sizeMm) : sizeMm[0], 1)
    expect(p.totals.sizeMm[1]).toBeCloseTo(round ? Math.min(...sizeMm) : sizeMm[1], 1)
    expect(p.totals.sizeMm[2]).toBeCloseTo(thicknessMm, 0)
    const { findings } = check(planned(piece), { asOf })
    expect(findings.filter(f => f.severity === 'stop').map(f => f.says)).toEqual([])
  })
})
