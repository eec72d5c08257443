import type { CutterShape } from '../../../src/catalogue/cutter-shape.ts'
import { Block } from '../../../src/proving/sweep/block.ts'
import { frameOf } from '../../../src/proving/sweep/frame.ts'
import { Hollows } from '../../../src/proving/sweep/hollow.ts'
import { profileOf } from '../../../src/proving/sweep/profile.ts'
import { Sweeper } from '../../../src/proving/sweep/sweeper.ts'
import { plainPiece, stackOf } from '../../stack/build.ts'

/** A plain slab of resin, its top at program z = 0, X0 Y0 in its middle. */
export function slab(cellMm: number, wide = 60, high = 40, thick = 20): Block {
  const stack = stackOf(
    plainPiece({ outline: { rectangle: [wide, high] }, pours: [{ resin: 'medium', depth: thick }] }),
    { levelFall: 0 }
  )
  return new Block({
    stack,
    frame: frameOf(stack.piece, 'front', { x0: 0, y0: 0, zeroMm: stack.castHeight, about: 'x' }),
    events: stack.events.length,
    wantedEvents: null,
    mask: null,
    cellMm,
    bedDeepMm: 100,
    guards: [],
    closed: []
  })
}

/** Sweeps a cutter along a way of places; answers the volume taken, mm³. */
export function swept(
  block: Block,
  c: CutterShape,
  way: readonly (readonly [number, number, number])[],
  hollows = new Hollows()
): number {
  const sweeper = new Sweeper(block, hollows)
  sweeper.take(profileOf(c))
  block.taken[0] = 0
  for (let k = 0; k + 1 < way.length; k++) {
    const [a, b] = [way[k]!, way[k + 1]!]
    sweeper.line(a[0], a[1], a[2], b[0], b[1], b[2])
  }
  sweeper.end()
  return block.taken[0]! * block.cellMm ** 2
}
