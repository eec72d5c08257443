import { expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { findings, PLAIN } from '../findings/harness.ts'

// A socket 30 by 12, 20 deep, for a tang that closes it: as told, no vent and clamped tight.
const socket = (gap: number, relief: number): PieceDocument => ({
  ...PLAIN,
  cuts: [
    {
      id: 'socket',
      kind: 'inlay',
      face: 'front',
      shape: { rectangle: [30, 12], at: [100, 0] },
      finishedDepth: 10,
      plug: { gap, relief, thickness: 12 }
    }
  ]
})
const said = (gap: number, relief: number) =>
  findings({ piece: socket(gap, relief) }).find(f => f.id === 'glue-trapped')

it('C82: a close blind pocket wants a relief of at least what the glue displaces', () => {
  const found = said(0.05, 0)!
  // 30 × 12 mm less the corners, 0.15 mm of glue: 0.05 ml.
  expect(found.says).toContain('0.1 ml')
  expect(found.severity).toBe('caution')
  expect(found.fixSays).toContain('0.2 mm')
  expect(said(0.05, 0.2)).toBeUndefined()
})

it('C82: with a gap that the glue gets out of nothing is said', () => {
  expect(said(0.15, 0)).toBeUndefined()
})
