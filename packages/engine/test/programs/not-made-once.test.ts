import { expect, test } from 'vitest'
import { cutsPlan } from '../../src/cuts-plan.ts'
import { checkPiece, checkShop } from '../../src/piece/read.ts'
import { plan, withFindings } from '../../src/plan.ts'
import { machinePiece, SHOP } from './machine-piece.ts'

test('a cut that no cutter makes is told once, with its fix', () => {
  const piece = {
    ...machinePiece(1),
    cuts: [
      {
        id: 'line',
        kind: 'groove' as const,
        face: 'front' as const,
        along: {
          points: [
            [-30, 0],
            [30, 0]
          ] as [number, number][]
        },
        profile: 'v' as const,
        angle: 90,
        depth: 2
      }
    ],
    markings: []
  }
  const shop = { ...SHOP, cutters: SHOP.cutters!.filter(c => c.id !== 'point 90') }
  const options = { asOf: '2026-01-01' }
  const planned = plan(
    { piece: checkPiece(piece, 'piece'), shop: checkShop(shop, 'shop').value, effort: 'preview' },
    options
  )
  expect(planned.plan.findings.filter(f => f.at === '/cuts/0').map(f => f.id)).toEqual(['line-over-cutter'])
  const cuts = cutsPlan(planned.work)!
  expect(cuts.findings.map(f => f.id)).toContain('cut-not-made')
  const both = withFindings(planned, cuts.findings, options).plan
  const said = both.findings.filter(f => f.at === '/cuts/0')
  expect(said.map(f => f.id)).toEqual(['cut-not-made'])
  expect(said[0]!.fix).not.toBeNull()
  expect(both.verdict).toBe('stop')
})
