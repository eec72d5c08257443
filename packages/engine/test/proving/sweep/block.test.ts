import { describe, expect, it } from 'vitest'
import { BLOCK_STEP_MM, Block } from '../../../src/proving/sweep/block.ts'
import type { BlockAsk } from '../../../src/proving/sweep/block-ask.ts'
import { frameOf } from '../../../src/proving/sweep/frame.ts'
import { bounds, inside } from '../../../src/shape/measure.ts'
import { coreAt } from '../../../src/stack/core.ts'
import { stackOf } from '../../stack/build.ts'
import { chance } from '../../stack/random.ts'
import { seededPiece } from '../../stack/seeded-piece.ts'

function blockOf(ask: Pick<BlockAsk, 'stack' | 'frame' | 'events' | 'cellMm'>): Block {
  return new Block({ wantedEvents: null, mask: null, bedDeepMm: 1, guards: [], closed: [], ...ask })
}

describe('a block in program coordinates', () => {
  it('stands as the cores of the stack do, either face up, turned about either line, on 14 seeded pieces', () => {
    let looked = 0
    let waste = 0
    for (let seed = 1; seed <= 14; seed++) {
      const stack = stackOf(seededPiece(seed))
      const { next, whole } = chance(seed)
      const up = seed % 2 === 0 ? 'back' : 'front'
      const about = seed % 3 === 0 ? 'y' : 'x'
      const [x0, y0, zeroMm] = [7.3 * next(), -4.1 * next(), 11 * next()]
      // Out of the mould, as whatever is machined.
      const events = whole(stack.events.findIndex(e => e.kind === 'demould') + 1, stack.events.length)
      const m = bounds(stack.geometry.mould)
      const cellMm = Math.max(m.maxX - m.minX, m.maxY - m.minY) / 90
      const block = blockOf({
        stack,
        frame: frameOf(stack.piece, up, { x0, y0, zeroMm, about }),
        events,
        cellMm
      })
      block.ensure(0, 0, block.nx - 1, block.ny - 1)
      // Written anew from the contract: seen from above as it lies, left stays left about the x-parallel line.
      const plan = (X: number, Y: number): [number, number] =>
        up === 'front' ? [x0 + X, y0 + Y] : about === 'x' ? [x0 + X, y0 - Y] : [x0 - X, y0 + Y]
      const upward = (up === 'front') === (stack.piece.down === 'back')
      const program = (z: number) => (upward ? z - zeroMm : zeroMm - z)
      const played = stack.events.slice(0, events)
      for (let k = 0; k < 150; k++) {
        const [i, j] = [whole(0, block.nx - 1), whole(0, block.ny - 1)]
        const [x, y] = plan(block.xOf(i), block.yOf(j))
        const core = inside(stack.geometry.mould, x, y) ? coreAt(stack.geometry, played, x, y) : []
        const ends = core.flatMap(p => [program(p.from), program(p.to)])
        const top = ends.length === 0 ? block.bedMm : Math.max(...ends)
        const at = `seed ${seed}, ${up} up about ${about}, cell ${i}, ${j}`
        expect(Math.abs(block.top[j * block.nx + i]! - top), at).toBeLessThan(BLOCK_STEP_MM + 1e-4)
        const solid = core.reduce((sum, p) => sum + p.to - p.from, 0)
        const ours = block.columns.spans(block.columnAt(i, j)).reduce((sum, s) => sum + s.to - s.from, 0)
        expect(Math.abs(ours - solid), at).toBeLessThan(2 * BLOCK_STEP_MM + 1e-4)
        looked++
        if (core.length > 0 && !inside(stack.geometry.outline, x, y)) waste++
      }
    }
    expect(looked).toBe(14 * 150)
    // The waste round the piece is there too.
    expect(waste).toBeGreaterThan(100)
  })

  it('is refused where it would not fit in memory', () => {
    const stack = stackOf(seededPiece(1))
    const frame = frameOf(stack.piece, 'front', { x0: 0, y0: 0, zeroMm: 0, about: 'x' })
    expect(() => blockOf({ stack, frame, events: 1, cellMm: 0.001 })).toThrow(/allowed 1 to 60000000/)
  })
})
