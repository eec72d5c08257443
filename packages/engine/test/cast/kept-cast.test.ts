import { expect, test, vi } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { readPiece, readShop } from '../../src/piece/read.ts'
import type { ShopDocument } from '../../src/piece/shop-schema.ts'
import { workOf } from '../../src/work.ts'
import { soundPiece } from '../findings/sound-piece.ts'

type Change = (piece: PieceDocument, shop: ShopDocument) => void
const pour = (p: PieceDocument) => p.pours[0]! as Record<string, unknown>

// All that moves a column, one at a time, and some that move none.
const CHANGES: readonly Change[] = [
  () => {},
  p => Object.assign(pour(p), { depth: 11, fill: undefined }),
  p => Object.assign(pour(p), { resin: 'medium' }),
  p => Object.assign(pour(p), { startTemperature: 27 }),
  p => Object.assign(pour(p), { start: '2026-12-01T17:00:00+00:00' }),
  p => Object.assign(p, { mould: { margin: 9, base: 'plywood-birch-18' } }),
  (_, s) => Object.assign(s, { climate: { night: 14, day: 25, humidity: 50 } }),
  (_, s) => Object.assign(s, { climate: { doubt: 4 } }),
  (_, s) => Object.assign(s, { timeZone: 'America/New_York' }),
  (_, s) => Object.assign(s, { resins: [{ id: 'deep', like: 'medium' }] }),
  p =>
    Object.assign(pour(p), { stones: [{ kind: 'river-gravel', placed: [{ at: [0, 0], size: [6, 5, 4] }] }] }),
  p => Object.assign(p, { name: 'another' })
]

test('a cast that was kept is the cast made anew, whatever changed between', async () => {
  const of = (make: typeof workOf, change: Change) => {
    const piece = JSON.parse(JSON.stringify(soundPiece(3))) as PieceDocument
    const shop: ShopDocument = { castwright: 1 }
    change(piece, shop)
    const text = JSON.stringify(piece)
    const input = { piece: readPiece(text, 'p'), shop: readShop(JSON.stringify(shop), 's').value }
    return make({ ...input, effort: 'preview' }).casts
  }
  const forward = CHANGES.map(c => of(workOf, c))
  // Backward in modules that have kept nothing yet: a key that says too little would give what came before.
  vi.resetModules()
  const fresh = await import('../../src/work.ts')
  const backward = [...CHANGES].reverse().map(c => of(fresh.workOf, c))
  expect(backward.reverse()).toEqual(forward)
  // Changes that count do change it; a name does not, and costs no run.
  for (const k of [1, 2, 3, 4, 5, 6, 7, 9]) expect(forward[k], `change ${k}`).not.toEqual(forward[0])
  expect(of(workOf, CHANGES[11]!)[0]).toBe(of(workOf, CHANGES[0]!)[0])
})
