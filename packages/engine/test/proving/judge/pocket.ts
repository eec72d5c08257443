import type { CutterShape } from '../../../src/catalogue/cutter-shape.ts'
import type { PieceDocument } from '../../../src/piece/piece-schema.ts'
import type { Guards } from '../../../src/proving/judge/guards.ts'
import { type Proof, type ProveAsk, proveProgram } from '../../../src/proving/judge/prove.ts'
import type { Stack } from '../../../src/stack/stack.ts'
import { plainPiece, stackOf } from '../../stack/build.ts'
import { cutter, Program } from '../program.ts'

/** 80 × 50 mm of resin, 20 thick, in a mould with 15 mm of waste round it; a pocket of 30 × 20 mm, 6 deep, from the front. */
export function pocketStack(corner = 3, more: Partial<PieceDocument> = {}): Stack {
  return stackOf(
    plainPiece({
      outline: { rectangle: [80, 50] },
      mould: { margin: 15 },
      pours: [{ resin: 'medium', depth: 20 }],
      cuts: [
        {
          id: 'pocket',
          face: 'front',
          kind: 'pocket',
          shape: { rectangle: [30, 20], ...(corner > 0 ? { corner } : {}) },
          depth: 6
        }
      ],
      ...more
    }),
    { levelFall: 0 }
  )
}

/** Nothing in the way, the waste holds, 1 mm into the bed. */
export const GUARDS: Guards = {
  things: [],
  envelope: null,
  bedDeepMm: 1,
  closed: [],
  mostMm3Min: null,
  held: 'waste',
  tolMm: 0.05
}

export function proofOf(stack: Stack, program: Program, more: Partial<ProveAsk> = {}): Proof {
  const cut = stack.events.findIndex(e => e.kind === 'cut')
  const running = proveProgram({
    stack,
    up: 'front',
    datum: { x0: 0, y0: 0, zeroMm: stack.castHeight, about: 'x' },
    events: cut,
    wantedEvents: cut + 1,
    mask: null,
    cutterByTool: new Map<number, CutterShape>([[1, cutter()]]),
    motions: program.motions(),
    cellMm: 0.2,
    guards: GUARDS,
    ...more
  })
  for (;;) {
    const step = running.next()
    if (step.done) return step.value
  }
}

/** The pocket in rings from the middle outwards, two passes; moved, turned, deeper as a test wants. */
export function pocket(dx = 0, dy = 0, dz = 0, half: [number, number] = [15, 10]): Program {
  const p = new Program()
  p.rapid(dx, dy, 5 + dz)
  p.rapid(dx, dy, 1 + dz)
  for (const z of [-3, -6]) {
    p.line(dx, dy, z + dz, 300)
    for (let r = 1; r <= 12; r++) {
      const a = Math.min(half[0] - 3, r * 2)
      const b = Math.min(half[1] - 3, r * 2)
      p.line(dx - a, dy - b, z + dz)
      p.line(dx + a, dy - b, z + dz)
      p.line(dx + a, dy + b, z + dz)
      p.line(dx - a, dy + b, z + dz)
      p.line(dx - a, dy - b, z + dz)
    }
    p.line(dx, dy, z + dz)
  }
  p.rapid(dx, dy, 5 + dz)
  return p
}
